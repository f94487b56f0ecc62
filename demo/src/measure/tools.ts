/**
 * How well the crew's tools read, one standard deviation. A fair hand with a hand compass, a clinometer and a cloth tape; common practice,
 * no source.
 */
export const tools = {
  /** Degrees; a steep sight is worse. */
  compass: 0.7,
  steepCompass: 1.2,
  clinometer: 0.6,
  /** Metres, with a part of the length added. */
  tape: 0.015,
  tapeShare: 0.001,
  /** The second compass reads this much low; the crew has found out and says so. */
  secondCompassLow: 1,
  /** Along a heading and above the sill, metres. */
  placing: 0.06,
  /** Across a vein with rough walls, metres. */
  width: 0.015,
  /** Strike and dip of a rough plane, degrees. */
  plane: 4,
  /** A bag on the spring scale, share of its mass; the jeweller's scale, milligrams. */
  bagScale: 0.01,
  goldScale: 0.7,
  /** How unevenly a channel is cut, share. */
  cutting: 0.06,
} as const

export const firstCompass = 'brass compass'
export const secondCompass = 'small compass'
export const clothTape = 'cloth tape'
export const steelTape = 'steel tape'
