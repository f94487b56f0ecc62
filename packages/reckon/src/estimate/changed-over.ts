import { InputError } from '../core/index.ts'
import type { Draws } from '../core/index.ts'
import { reaching, sampleCorrelations, sampleFactor } from './log-field.ts'
import type { FieldNode, LogSample } from './log-field.ts'

/** Two bags that would fit their places better if each had the other's contents. */
export interface ChangedOver {
  readonly a: number
  readonly b: number
  /** ln of how many times likelier what was found is with the two changed over. */
  readonly logRatio: number
}

/** What is known of the ground without the samples: its covariance and, where it is known, its mean at each sample. */
export interface KnownGround {
  readonly node: Omit<FieldNode, 'weight'>
  /** ln at each sample's place; one common mean is taken from the samples where it is left out. */
  readonly means?: readonly number[]
}

/**
 * For every pair of samples, how much likelier the whole set is with the two bags changed over, given all other samples and how alike neighbours are.
 *
 * A bag's own error goes with its contents.
 * @param samples  values that belong to the bags (grade, not grade times width), logs, with the variance of each one's own error; three or more
 * @returns pairs whose ratio is above 1, likeliest first
 * @throws InputError
 * Cost: one inverse of the samples' covariance, n³.
 */
export function changedOver(samples: readonly LogSample[], { node, means }: KnownGround): readonly ChangedOver[] {
  const n = samples.length
  if (means && means.length !== n) throw new InputError('means', means.length, `as many as samples (${n})`)
  if (n < 3) return []
  const precision = precisionOf(samples, node), values = samples.map(s => s.logValue)
  return ratiosOf(samples, values, precision, means).sort((x, y) => y.logRatio - x.logRatio)
}

/**
 * How large the largest ratio of any pair gets by chance when nothing was changed over: the value that a share of books like this one exceeds.
 *
 * Books are drawn from the field at the very places and with the very errors of the samples, with their common mean taken anew from each.
 * @param share  of honest books that may raise an alarm, such as 0.05
 * @param books  how many are drawn
 */
export function changedOverLimit(
  samples: readonly LogSample[], node: Omit<FieldNode, 'weight'>, draws: Draws, { share, books }: { readonly share: number, readonly books: number },
): number {
  if (!(share > 0 && share < 1)) throw new InputError('share', share, 'between 0 and 1')
  if (!(Number.isInteger(books) && books * share >= 1)) throw new InputError('books', books, `a whole number, at least ${Math.ceil(1 / share)}`)
  const n = samples.length
  if (n < 3) return Infinity
  const precision = precisionOf(samples, node), factor = sampleFactor(samples, sampleCorrelations(samples, node.range), node)
  const largest = Array.from({ length: books }, () => {
    const noise = Float64Array.from({ length: n }, () => draws.normal())
    const values = samples.map((_, i) => { let sum = 0; for (let j = 0; j <= i; j++) sum += factor[i * n + j]! * noise[j]!; return sum })
    return ratiosOf(samples, values, precision).reduce((most, c) => Math.max(most, c.logRatio), 0)
  }).sort((x, y) => x - y)
  return largest[Math.ceil(books * (1 - share)) - 1]!
}

function ratiosOf(samples: readonly LogSample[], values: readonly number[], precision: Float64Array, means?: readonly number[]): ChangedOver[] {
  const n = samples.length, mean = means ?? new Array<number>(n).fill(commonMean(values, precision))
  const residual = values.map((v, i) => v - mean[i]!)
  const pull = residual.map((_, i) => residual.reduce((sum, r, j) => sum + precision[i * n + j]! * r, 0))
  const found: ChangedOver[] = []
  for (let a = 0; a < n; a++) {
    for (let b = 0; b < a; b++) {
      // Given all others the two are normal: covariance is the inverse of their block of the precision.
      const [p, q, r] = [precision[a * n + a]!, precision[b * n + b]!, precision[a * n + b]!]
      const det = p * q - r * r, own = { aa: q / det, bb: p / det, ab: -r / det }
      const expected = [values[a]! - (own.aa * pull[a]! + own.ab * pull[b]!), values[b]! - (own.ab * pull[a]! + own.bb * pull[b]!)] as const
      const shift = samples[b]!.errorVariance - samples[a]!.errorVariance
      const asIs = logNormal2(own, values[a]! - expected[0], values[b]! - expected[1])
      const over = logNormal2({ aa: own.aa + shift, bb: own.bb - shift, ab: own.ab }, values[b]! - expected[0], values[a]! - expected[1])
      if (over > asIs) found.push({ a, b, logRatio: over - asIs })
    }
  }
  return found
}

function logNormal2({ aa, bb, ab }: { readonly aa: number, readonly bb: number, readonly ab: number }, x: number, y: number): number {
  const det = aa * bb - ab * ab
  return det <= 0 ? -Infinity : -(Math.log(det) + (bb * x * x - 2 * ab * x * y + aa * y * y) / det) / 2
}

/** Generalised least squares, by the rows' sums of the precision. */
function commonMean(values: readonly number[], precision: Float64Array): number {
  const n = values.length
  let top = 0, bottom = 0
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) { top += precision[i * n + j]! * values[j]!; bottom += precision[i * n + j]! }
  }
  return top / bottom
}

/** Inverse of the samples' covariance by Gauss and Jordan without pivots, which a covariance with a nugget does not need. */
function precisionOf(samples: readonly LogSample[], node: Omit<FieldNode, 'weight'>): Float64Array {
  const n = samples.length, correlations = sampleCorrelations(samples, node.range), sill = reaching(node)
  const k = new Float64Array(n * n)
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < i; j++) { k[i * n + j] = sill * correlations[i * n + j]!; k[j * n + i] = k[i * n + j]! }
    k[i * n + i] = node.variance + samples[i]!.errorVariance
  }
  for (let m = 0; m < n; m++) {
    const pivot = k[m * n + m]!
    k[m * n + m] = 1
    for (let j = 0; j < n; j++) k[m * n + j]! /= pivot
    for (let i = 0; i < n; i++) {
      if (i === m) continue
      const factor = k[i * n + m]!
      k[i * n + m] = 0
      for (let j = 0; j < n; j++) k[i * n + j]! -= factor * k[m * n + j]!
    }
  }
  return k
}
