import { DegenerateError, finite, InputError } from '../core/index.ts'

/** Refuses lists that hold too few or not finite numbers; returns the list. */
export function checkedValues(values: readonly number[], field: string, atLeast = 1): readonly number[] {
  if (values.length < atLeast) throw new DegenerateError('too few', field, values.length, atLeast === 1 ? 'one or more values' : `${atLeast} or more values`)
  values.forEach((value, i) => finite(value, `${field}[${i}]`))
  return values
}

const total = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0)

/** Arithmetic mean of one or more values. */
export function mean(values: readonly number[]): number {
  checkedValues(values, 'values')
  const first = total(values) / values.length
  return first + total(values.map(value => value - first)) / values.length // the second pass mends the rounding of the first
}

/** Sample variance, n - 1 below; two or more values. */
export function variance(values: readonly number[]): number {
  checkedValues(values, 'values', 2)
  const middle = mean(values)
  return total(values.map(value => (value - middle) ** 2)) / (values.length - 1)
}

export const standardDeviation = (values: readonly number[]): number => Math.sqrt(variance(values))

/** Skewness as the third moment over the cube of the sample deviation, with the usual n/((n-1)(n-2)) for small samples; three or more values not all equal. */
export function skewness(values: readonly number[]): number {
  checkedValues(values, 'values', 3)
  const [n, middle, deviation] = [values.length, mean(values), standardDeviation(values)]
  if (deviation === 0) throw new DegenerateError('all equal', 'values', n, 'values that differ')
  return n / ((n - 1) * (n - 2)) * total(values.map(value => ((value - middle) / deviation) ** 3))
}

function checkedWeights(values: readonly number[], weights: readonly number[]): void {
  checkedValues(values, 'values')
  if (weights.length !== values.length) throw new InputError('weights', weights.length, `as many as values (${values.length})`)
  weights.forEach((weight, i) => { if (!(weight >= 0 && Number.isFinite(weight))) throw new InputError(`weights[${i}]`, weight, 'zero or more') })
  if (!(total(weights) > 0)) throw new DegenerateError('no weight', 'weights', total(weights), 'at least one weight above zero')
}

/** Mean with weights, each zero or more and not all zero. */
export function weightedMean(values: readonly number[], weights: readonly number[]): number {
  checkedWeights(values, weights)
  return values.reduce((sum, value, i) => sum + value * weights[i]!, 0) / total(weights)
}

/**
 * Variance of the population that weighted values stand for, without bias when weights say how much each value counts:
 * sum w (x - m)² / (W - sum w² / W). Equal weights give the sample variance.
 * @throws DegenerateError("too few") when all the weight is on one value
 */
export function weightedVariance(values: readonly number[], weights: readonly number[]): number {
  const middle = weightedMean(values, weights)
  const sum = total(weights)
  const spare = sum - total(weights.map(w => w * w)) / sum
  if (!(spare > sum * values.length * Number.EPSILON)) throw new DegenerateError('too few', 'weights', weights, 'weight on two or more values')
  return values.reduce((s, value, i) => s + weights[i]! * (value - middle) ** 2, 0) / spare
}
