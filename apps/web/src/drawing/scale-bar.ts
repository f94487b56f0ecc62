const metre = 1, foot = 0.3048

export interface ScaleBar {
  /** What the whole bar stands for, in the unit. */
  readonly length: number
  readonly unit: 'm' | 'ft'
  /** How many equal parts it is divided into. */
  readonly parts: number
  readonly pixels: number
}

/** The longest bar of 1, 2 or 5 times a power of ten that is no wider than `room` pixels at `k` pixels a metre. */
export function scaleBar(k: number, room: number, unit: 'm' | 'ft' = 'm'): ScaleBar {
  const perUnit = k * (unit === 'm' ? metre : foot)
  const most = room / perUnit
  const power = 10 ** Math.floor(Math.log10(most))
  const lead = most / power >= 5 ? 5 : most / power >= 2 ? 2 : 1
  return { length: lead * power, unit, parts: lead === 2 ? 4 : 5, pixels: lead * power * perUnit }
}

/** Even steps for grid crosses and ticks: 1, 2 or 5 times a power of ten metres, at least `room` pixels apart. */
export function gridStep(k: number, room: number): number {
  const least = room / k
  const power = 10 ** Math.floor(Math.log10(least))
  const lead = least / power <= 1 ? 1 : least / power <= 2 ? 2 : least / power <= 5 ? 5 : 10
  return lead * power
}

/** Multiples of the step from low to high. */
export function steps(low: number, high: number, step: number): readonly number[] {
  const first = Math.ceil(low / step), count = Math.floor(high / step) - first + 1
  return Array.from({ length: Math.max(0, count) }, (_, i) => (first + i) * step)
}

const drafting = [50, 100, 200, 250, 500, 1000, 1250, 2000, 2500, 5000, 10_000, 25_000, 50_000]
/** The largest drafting scale (1 to so many) at which a drawing so many metres wide and high goes on paper of so many millimetres. */
export const paperScale = (wide: number, high: number, paperWide: number, paperHigh: number): number =>
  drafting.find(s => wide * 1000 / s <= paperWide && high * 1000 / s <= paperHigh) ?? drafting.at(-1)!
