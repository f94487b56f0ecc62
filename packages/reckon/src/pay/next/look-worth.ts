/**
 * What is thought of the ground, on logs: blocks (panels, heaps) whose logs are jointly normal, and what the choice between options rests on.
 * An option is worth `fixed` + Σ weight × value over the blocks, a value being exp(log).
 */
export interface GroundChoice {
  /** Expected value of each block, in its own unit. */
  readonly expected: Float64Array
  readonly options: readonly { readonly fixed: number, readonly weights: Float64Array }[]
}

/** A look to be taken: how its outcome moves with the log of each block, and the variance of what it would read. */
export interface Look {
  /** Covariance of the look's reading (a log) with the log of each block. */
  readonly covariance: Float64Array
  /** Variance of the reading: the ground where it is taken and the look's own error. */
  readonly variance: number
}

/** Points of a standard normal and their weights, evenly spread over five standard deviations either side. */
function normalPoints(count: number): { readonly at: Float64Array, readonly weight: Float64Array } {
  const at = Float64Array.from({ length: count }, (_, i) => -5 + 10 * (i + 0.5) / count)
  const weight = at.map(u => Math.exp(-u * u / 2))
  const total = weight.reduce((sum, w) => sum + w, 0)
  return { at, weight: weight.map(w => w / total) }
}

const worthOf = ({ fixed, weights }: GroundChoice['options'][number], values: Float64Array): number => {
  let sum = fixed
  for (let p = 0; p < values.length; p++) sum += weights[p]! * values[p]!
  return sum
}

/** Expected worth of the best option when nothing more is learnt. */
export const worthNow = ({ expected, options }: GroundChoice): number => Math.max(...options.map(o => worthOf(o, expected)))

/** How far each block's log moves when the reading comes out one standard deviation high. */
const lifts = ({ covariance, variance }: Look): Float64Array => covariance.map(c => variance > 0 ? c / Math.sqrt(variance) : 0)

/** Points over a reading: a kink at each change of option is met to about a thousandth. */
const points = normalPoints(121)

/**
 * What a look is worth to the choice: expected worth of the best option after it, less that of the best before it.
 *
 * After a reading u standard deviations from what was expected, a block's expected value is its former one × exp(b u − b²/2), b = covariance / √variance: the
 * normal update in closed form. The average over u is taken at 121 points.
 * @returns money, zero or more
 * Source: preposterior analysis, Raiffa and Schlaifer, Applied Statistical Decision Theory, 1961 (from memory); for one block and a straight-line payoff it is
 * the unit normal linear loss integral, checks/grade-and-pay.md 8.7.
 */
export function lookWorth(choice: GroundChoice, look: Look): number {
  const b = lifts(look)
  const values = new Float64Array(b.length)
  let informed = 0
  for (let j = 0; j < points.at.length; j++) {
    for (let p = 0; p < b.length; p++) values[p] = choice.expected[p]! * Math.exp(b[p]! * points.at[j]! - b[p]! * b[p]! / 2)
    informed += points.weight[j]! * worthNow({ ...choice, expected: values })
  }
  return Math.max(0, informed - worthNow(choice))
}

/** What knowing the blocks for certain would be worth: the ceiling of every look. One row an equally likely outcome, values by block. */
export function certaintyWorth(choice: GroundChoice, outcomes: readonly Float64Array[]): number {
  const informed = outcomes.reduce((sum, values) => sum + worthNow({ ...choice, expected: values }), 0) / outcomes.length
  const now = Math.max(...choice.options.map(o => outcomes.reduce((sum, values) => sum + worthOf(o, values), 0) / outcomes.length))
  return Math.max(0, informed - now)
}
