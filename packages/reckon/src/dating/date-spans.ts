import { finite, InputError, positive } from '../core/index.ts'
import { fewestVisits, type Visit } from './fewest-visits.ts'

/** When something could have been made, years; without `to` it may be any time from `from` on. Old stock was used for years after. */
export interface DateSpan {
  readonly from: number
  readonly to?: number
  /** How many things it stands for; 1 when left out. */
  readonly weight?: number
}
/** `count` steps of `width` years from `start`; each holds its first year and not its last. */
export interface YearBins { readonly start: number, readonly width: number, readonly count: number }

export interface DatedSpans {
  /** How many spans touch each step. */
  readonly counts: readonly number[]
  /** Each span spread evenly over its years, its weight shared by overlap: the aoristic sum. Open spans are not in it. */
  readonly sums: readonly number[]
  /** Weight that falls outside the steps; sums and this together are the weight of all closed spans. */
  readonly outside: number
  /** The latest first year: if everything was left at one time, it was not before this. */
  readonly notBefore: number
  /** The fewest visits that could account for everything, earliest first. */
  readonly visits: readonly Visit[]
}

const mostSteps = 100_000

/**
 * What dated finds say together about when a place was worked.
 *
 * A span of no length (from = to) lies wholly in the step that holds it.
 * @param spans  one or more; not modified
 * @throws InputError for no spans, a span that ends before it begins, a negative weight, or steps of no width
 * Source: aoristic sum p = overlap / (to - from), after the example of Palmisano et al. 2017 (published sums 0.25, 1.0833, 1.0833, 1.5833).
 */
export function dateSpans(spans: readonly DateSpan[], bins: YearBins): DatedSpans {
  check(spans, bins)
  const edges = Array.from({ length: bins.count + 1 }, (_, i) => bins.start + i * bins.width)
  const steps = edges.slice(1).map((high, i) => ({ low: edges[i] ?? bins.start, high }))
  const closed = spans.filter((span): span is DateSpan & { to: number } => span.to !== undefined)
  const sums = steps.map(({ low, high }) => closed.reduce((sum, { from, to, weight = 1 }) => sum + weight * share(from, to, low, high), 0))
  const whole = closed.reduce((sum, { weight = 1 }) => sum + weight, 0)
  const placed = sums.reduce((sum, value) => sum + value, 0)
  return {
    counts: steps.map(({ low, high }) => spans.filter(({ from, to = Infinity }) => from === to ? from >= low && from < high : from < high && to > low).length),
    sums,
    // What rounding leaves of the whole is not weight outside the steps.
    outside: Math.abs(whole - placed) <= 8 * spans.length * bins.count * Number.EPSILON * whole ? 0 : whole - placed,
    notBefore: Math.max(...spans.map(({ from }) => from)),
    visits: fewestVisits(spans),
  }
}

const share = (from: number, to: number, low: number, high: number): number =>
  from === to ? Number(from >= low && from < high) : Math.max(0, Math.min(to, high) - Math.max(from, low)) / (to - from)

function check(spans: readonly DateSpan[], { start, width, count }: YearBins): void {
  if (spans.length === 0) throw new InputError('items', spans, 'at least one dated item')
  for (const [i, { from, to, weight = 1 }] of spans.entries()) {
    finite(from, `items[${i}].from`, 'a year')
    if (to !== undefined && finite(to, `items[${i}].to`, 'a year') < from) throw new InputError(`items[${i}].to`, to, `a year no earlier than from, ${from}`)
    if (finite(weight, `items[${i}].weight`) < 0) throw new InputError(`items[${i}].weight`, weight, 'zero or more')
  }
  finite(start, 'bins.start', 'a year')
  positive(width, 'bins.width', 'a number of years above zero')
  if (!(Number.isInteger(count) && count >= 1 && count <= mostSteps)) throw new InputError('bins.count', count, `a whole number from 1 to ${mostSteps}`)
}
