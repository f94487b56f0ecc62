import { backwardSolve, choleskyInPlace, DegenerateError, finite, forwardSolve, InputError } from '../core/index.ts'
import type { VeinPoint } from '../core/index.ts'

/** One sample of a positive quantity on the vein, on logs: what was measured, and the variance of its own error (not of the ground). */
export interface LogSample {
  readonly at: VeinPoint
  readonly logValue: number
  readonly errorVariance: number
}

/** What is thought of the ground before any sample of it: medians, and the factor that one standard deviation on logs is. */
export interface FieldPrior {
  /** Variance of the logs of point values. */
  readonly variance: { readonly median: number, readonly factor: number }
  /** Distance over which correlation falls to 1/e, metres. */
  readonly range: { readonly median: number, readonly factor: number }
  /** Share of the variance that has no reach at all; Beta(a, b). */
  readonly nuggetShare: { readonly a: number, readonly b: number }
}

/** One candidate description of the ground, and how believable it is beside the others. */
export interface FieldNode {
  readonly variance: number
  readonly nuggetShare: number
  readonly range: number
  readonly weight: number
}

export interface FieldPosterior {
  readonly samples: readonly LogSample[]
  /** Weights sum to 1; most believable first; those below one in ten thousand of the best are left out. */
  readonly nodes: readonly FieldNode[]
}

const spaced = (low: number, high: number, count: number) =>
  Array.from({ length: count }, (_, i) => low + (high - low) * (count === 1 ? 0.5 : i / (count - 1)))

export const between = (a: VeinPoint, b: VeinPoint): number => {
  const along = a.along - b.along, down = a.down - b.down
  return Math.sqrt(along * along + down * down)
}

/** Variance of the part of the field that has reach. */
export const reaching = (node: Pick<FieldNode, 'variance' | 'nuggetShare'>): number => node.variance * (1 - node.nuggetShare)

/** Correlations of the reaching part between all pairs of samples, lower triangle by rows. */
export function sampleCorrelations(samples: readonly LogSample[], range: number): Float64Array {
  const n = samples.length
  const r = new Float64Array(n * n)
  for (let i = 0; i < n; i++) for (let j = 0; j < i; j++) r[i * n + j] = Math.exp(-between(samples[i]!.at, samples[j]!.at) / range)
  return r
}

/** Lower Cholesky factor of the samples' covariance: the field, its nugget and each sample's own error. */
export function sampleFactor(samples: readonly LogSample[], correlations: Float64Array, node: Omit<FieldNode, 'weight'>): Float64Array {
  const n = samples.length
  const sill = reaching(node)
  const k = correlations.map(r => r * sill)
  for (let i = 0; i < n; i++) k[i * n + i] = node.variance + samples[i]!.errorVariance
  choleskyInPlace(k, n)
  return k
}

/** The generalised mean of the logs under one description, with what is needed to go on: K⁻¹1, 1ᵀK⁻¹1. */
export function generalisedMean(samples: readonly LogSample[], factor: Float64Array): { mean: number, ones: Float64Array, precision: number } {
  const n = samples.length
  const ones = new Float64Array(n).fill(1)
  forwardSolve(factor, n, ones)
  let precision = 0
  for (const value of ones) precision += value * value
  backwardSolve(factor, n, ones)
  let mean = 0
  for (let i = 0; i < n; i++) mean += ones[i]! * samples[i]!.logValue
  return { mean: mean / precision, ones, precision }
}

/** Log of the restricted likelihood, up to a constant. */
function restrictedLogLikelihood(samples: readonly LogSample[], correlations: Float64Array, node: Omit<FieldNode, 'weight'>): number {
  const n = samples.length
  const factor = sampleFactor(samples, correlations, node)
  const { mean, precision } = generalisedMean(samples, factor)
  const residual = Float64Array.from(samples, s => s.logValue - mean)
  forwardSolve(factor, n, residual)
  let sum = Math.log(precision)
  for (let i = 0; i < n; i++) sum += residual[i]! ** 2 + 2 * Math.log(factor[i * n + i]!)
  return -sum / 2
}

const logNormalDensity = (x: number, prior: { median: number, factor: number }) => -(((Math.log(x / prior.median)) / Math.log(prior.factor)) ** 2) / 2

/**
 * What the samples say about how variable the ground is, over what distance, and how much of it is nugget: the posterior of an
 * exponential-covariance Gaussian field on logs, on a grid of its three parameters, with the mean integrated out (restricted likelihood).
 *
 * Few samples leave the prior nearly as it was, which is the point: the doubt about the variogram goes into the answer.
 * @param samples two or more, finite, errorVariance >= 0
 * @param prior    editable by the crew; see docs/methods/grade.md for where the standing one comes from
 * @throws DegenerateError("too few") below two samples; InputError for numbers that are not finite
 * Cost: one n³/3 factorisation a grid node; 288 nodes up to 120 samples, 80 above.
 * Source: Diggle and Ribeiro, Model-based Geostatistics, Springer 2007, ch. 7 (from memory); restricted likelihood: Patterson and Thompson,
 * Biometrika 58, 1971, 545 (from memory).
 */
export function logFieldPosterior(samples: readonly LogSample[], prior: FieldPrior): FieldPosterior {
  if (samples.length < 2) throw new DegenerateError('too few', 'samples', samples.length, 'two or more samples')
  samples.forEach((s, i) => {
    finite(s.logValue, `samples[${i}].logValue`)
    finite(s.at.along, `samples[${i}].at.along`)
    finite(s.at.down, `samples[${i}].at.down`)
    if (!(s.errorVariance >= 0 && Number.isFinite(s.errorVariance))) throw new InputError(`samples[${i}].errorVariance`, s.errorVariance, 'zero or more')
  })
  const [v, s, r] = samples.length <= 120 ? [8, 6, 6] : [5, 4, 4]
  const across = (p: { median: number, factor: number }, count: number) =>
    spaced(Math.log(p.median) - 2.2 * Math.log(p.factor), Math.log(p.median) + 2.2 * Math.log(p.factor), count).map(Math.exp)
  const candidates: { node: Omit<FieldNode, 'weight'>, log: number }[] = []
  for (const range of across(prior.range, r)) {
    const correlations = sampleCorrelations(samples, range)
    for (const variance of across(prior.variance, v)) {
      for (const nuggetShare of spaced(0.06, 0.94, s)) {
        const node = { variance, nuggetShare, range }
        const log = restrictedLogLikelihood(samples, correlations, node) + logNormalDensity(variance, prior.variance) + logNormalDensity(range, prior.range) +
          (prior.nuggetShare.a - 1) * Math.log(nuggetShare) + (prior.nuggetShare.b - 1) * Math.log(1 - nuggetShare)
        candidates.push({ node, log })
      }
    }
  }
  const best = Math.max(...candidates.map(c => c.log))
  const kept = candidates.map(c => ({ ...c.node, weight: Math.exp(c.log - best) })).filter(c => c.weight > 1e-4)
  const total = kept.reduce((sum, c) => sum + c.weight, 0)
  return { samples, nodes: kept.map(c => ({ ...c, weight: c.weight / total })).sort((a, b) => b.weight - a.weight) }
}
