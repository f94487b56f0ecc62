import type { Degrees, Enu } from '@lodebook/reckon'

/**
 * What is stated about the mine, the same for every seed. The mine, the district and the people are invented. The latitude and longitude lie on an
 * empty salt flat with no hill and no rock, so that nobody takes them for a mine; they only give the compass a declination.
 *
 * Frame: metres east and north (true north) of that point on the ground, up from the level of the sea.
 */
export const stated = {
  latitude: 40.6,
  longitude: -113.6,
  /** World Magnetic Model 2025 at the mine on 15 July 2026, east positive; the needle there also feels the rocks (see Truth.declination). */
  modelDeclination: 11.28,
  /** The sill at the portal. */
  portal: [3, -2, 1880] as Enu,
  adit: { azimuth: 306 as Degrees, length: 66, grade: 0.007 },
  vein: { strike: 38 as Degrees, dip: 64 as Degrees },
  /** Of the vein's material, t/m³. */
  density: 2.62,
  wallDensity: 2.74,
  /** How far each working goes along the vein from the adit, metres; left is against the strike direction. */
  leftDrift: -44,
  rightDrift: 37,
  /** Where the fault cuts the middle of the right drift. */
  faultAlong: 27,
  fault: { strike: 105 as Degrees, dip: 72 as Degrees, rake: 120 as Degrees },
  dyke: { strike: 352 as Degrees, dip: 80 as Degrees, along: 23.5, thickness: 1.3 },
  /** Ends of the sublevel along the vein and its height above the drift, metres. */
  sublevel: { from: -40, to: -14, height: 10.4 },
  raises: { first: -26, second: -39 },
  winze: { along: -18.5, depth: 3.4 },
} as const
