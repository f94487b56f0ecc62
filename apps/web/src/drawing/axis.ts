import { gridStep, steps } from './scale-bar.ts'

/** One axis of a chart: what it carries, and how far it goes. */
export interface Axis {
  /** What it shows, with its unit. */
  readonly label: string
  readonly low: number
  readonly high: number
  readonly log?: boolean
  /** Where it is marked, and with what; worked out when left out. */
  readonly marks?: readonly { readonly at: number, readonly text: string }[]
}

/** A value's place between two pixels. */
export function placeOn({ low, high, log }: Axis, from: number, to: number): (value: number) => number {
  const [a, b] = log ? [Math.log(low), Math.log(high)] : [low, high]
  return value => from + ((log ? Math.log(Math.max(value, Number.MIN_VALUE)) : value) - a) / (b - a || 1) * (to - from)
}

/** Even marks from 1, 2 or 5 times a power of ten; on a logarithmic axis every power of ten, with 2 and 5 between when it is short. */
export function marksOf(axis: Axis, room: number): readonly { readonly at: number, readonly text: string }[] {
  if (axis.marks) return axis.marks
  const { low, high } = axis
  const within = (values: readonly number[]) => values.filter(v => v >= low && v <= high).map(at => ({ at, text: numeral(at) }))
  if (axis.log) {
    const powers = Array.from({ length: Math.ceil(Math.log10(high)) - Math.floor(Math.log10(low)) + 1 }, (_, i) => Math.floor(Math.log10(low)) + i)
    const leads = powers.length > Math.max(3, room / 90) ? [1] : [1, 2, 5]
    return within(powers.flatMap(p => leads.map(l => l * 10 ** p)))
  }
  const step = gridStep(1, (high - low) / Math.max(2, room / 70))
  return steps(low, high, step).map(at => ({ at, text: numeral(Number(at.toPrecision(12))) }))
}

const numeral = (value: number): string => {
  const text = Math.abs(value) >= 1000 ? Math.round(Math.abs(value)).toLocaleString('en-US') : String(Number(Math.abs(value).toPrecision(3)))
  return value < 0 ? `\u2212${text}` : text
}

/** From a little under the least value to a little over the greatest, for a logarithmic axis; a decade when there is nothing to show. */
export function logRoom(values: readonly number[]): { readonly low: number, readonly high: number } {
  const kept = values.filter(v => v > 0 && Number.isFinite(v))
  if (kept.length === 0) return { low: 0.1, high: 10 }
  const low = Math.min(...kept), high = Math.max(...kept)
  return { low: low / 1.4, high: Math.max(high * 1.4, low * 4) }
}
