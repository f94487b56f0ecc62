/**
 * What can be written down with a unit, and the one unit it is kept in. A written value is converted to its base unit once;
 * everything downstream speaks base units.
 */
export const baseUnit = {
  length: 'm',
  area: 'm2',
  volume: 'm3',
  mass: 'g',
  grade: 'g/t',
  density: 't/m3',
  azimuth: 'deg', // clockwise from north, [0, 360)
  inclination: 'deg', // [-90, 90], up positive
  angle: 'deg',
  pressure: 'Pa',
  temperature: 'C',
  speed: 'm/s',
  flow: 'm3/s',
  duration: 'h',
  percent: '%',
  concentration: 'ppm',
  radon: 'Bq/m3',
} as const

export type Dimension = keyof typeof baseUnit
export type BaseUnit = typeof baseUnit[Dimension]

/** Why a written value is not a plain number: under or over a limit, seen but not measured, looked for and not there, or judged by eye. */
export type Mark = 'below' | 'above' | 'trace' | 'nil' | 'about'

/** A value as written beside its exact value in the base unit. */
export interface Quantity {
  /** Exactly what was written, trimmed. */
  readonly text: string
  /** In the base unit. For 'below' and 'above' it is the limit; for 'trace' null (seen, not measured); for 'nil' 0. */
  readonly value: number | null
  readonly unit: BaseUnit
  /** The unit assumed when the text carries none, such as a column heading's or the crew's usual one. */
  readonly from?: string
  readonly mark?: Mark
}
