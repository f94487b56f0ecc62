import { backwardSolve, choleskyInPlace, DegenerateError, finite, forwardSolve, InputError } from '../core/index.ts'
import type { VeinPoint } from '../core/index.ts'
import type { FieldNode, LogSample } from './field/node.ts'
import { PieceByPiece } from './field/whiten.ts'

export type { FieldNode, LogSample }

/** What is thought of the ground before any sample of it: medians, and the factor that one standard deviation on logs is. */
export interface FieldPrior {
  /** Variance of the logs of point values. */
  readonly variance: { readonly median: number, readonly factor: number }
  /** Distance over which correlation falls to 1/e, metres. */
  readonly range: { readonly median: number, readonly factor: number }
  /** Share of the variance that has no reach at all; Beta(a, b). */
  readonly nuggetShare: { readonly a: number, readonly b: number }
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

/** Up to so many samples every description is looked at; beyond, those about the most believable one. */
const few = 40, many = 150
/** Up to so many samples the likelihood is taken whole; beyond, piece by piece from so many neighbours. */
const together = 64, neighbours = 20

type Candidate = Omit<FieldNode, 'weight'>

/** Log of likelihood times prior, in the logs of variance and range and in the nugget's share. */
function beliefIn(samples: readonly LogSample[], prior: FieldPrior, whole: boolean): (node: Candidate) => number {
  const pieces = samples.length > together && !whole ? new PieceByPiece(samples, neighbours) : undefined
  const known = new Map<number, Float64Array>()
  const at = (range: number) => {
    const kept = known.get(range) ?? sampleCorrelations(samples, range)
    known.set(range, kept)
    return kept
  }
  return node => (pieces ? pieces.whiten(node).logLikelihood : restrictedLogLikelihood(samples, at(node.range), node)) +
    logNormalDensity(node.variance, prior.variance) + logNormalDensity(node.range, prior.range) +
    (prior.nuggetShare.a - 1) * Math.log(node.nuggetShare) + (prior.nuggetShare.b - 1) * Math.log(1 - node.nuggetShare)
}

const least = 0.02 // of the nugget's share, and as much below 1
const widest = 2.2 // standard deviations of the prior looked at

function overThePrior(prior: FieldPrior): Candidate[] {
  const across = (p: { median: number, factor: number }, count: number) =>
    spaced(Math.log(p.median) - widest * Math.log(p.factor), Math.log(p.median) + widest * Math.log(p.factor), count).map(Math.exp)
  return across(prior.range, 6).flatMap(range => across(prior.variance, 7).flatMap(variance =>
    spaced(0.06, 0.94, 6).map(nuggetShare => ({ variance, nuggetShare, range }))))
}

/**
 * Steps each way about the peak, which is found by parabolas along each axis in turn. The steps are as wide as the belief is there, and half
 * as much again because it leans across the axes.
 */
function aroundThePeak(belief: (node: Candidate) => number, prior: FieldPrior, perAxis: number): Candidate[] {
  const low = [Math.log(prior.variance.median) - widest * Math.log(prior.variance.factor), least,
    Math.log(prior.range.median) - widest * Math.log(prior.range.factor)]
  const high = [Math.log(prior.variance.median) + widest * Math.log(prior.variance.factor), 1 - least,
    Math.log(prior.range.median) + widest * Math.log(prior.range.factor)]
  const nodeAt = ([v, q, r]: readonly number[]): Candidate => ({ variance: Math.exp(v!), nuggetShare: q!, range: Math.exp(r!) })
  const centre = [0, 1, 2].map(i => (low[i]! + high[i]!) / 2), spread = [0, 1, 2].map(i => (high[i]! - low[i]!) / 4)
  for (let round = 0; round < 3; round++) {
    for (let i = 0; i < 3; i++) {
      const step = Math.min(spread[i]!, (high[i]! - low[i]!) / 3)
      const from = Math.min(Math.max(centre[i]!, low[i]! + step), high[i]! - step)
      const f = [-step, 0, step].map(d => belief(nodeAt(centre.map((c, j) => j === i ? from + d : c))))
      const bend = (f[0]! - 2 * f[1]! + f[2]!) / (step * step), slope = (f[2]! - f[0]!) / (2 * step)
      const move = bend < 0 ? Math.min(1.5 * step, Math.max(-1.5 * step, -slope / bend)) : Math.sign(slope) * step
      centre[i] = Math.min(high[i]!, Math.max(low[i]!, from + move))
      spread[i] = Math.min((high[i]! - low[i]!) / 4, bend < 0 ? Math.max(1 / Math.sqrt(-bend), (high[i]! - low[i]!) / 60) : Infinity)
    }
  }
  const lines = centre.map((c, i) => {
    const half = (perAxis === 3 ? 1.3 : 1.8) * 1.5 * spread[i]!
    return spaced(Math.max(low[i]!, c - half), Math.min(high[i]!, c + half), perAxis)
  })
  return lines[2]!.flatMap(r => lines[0]!.flatMap(v => lines[1]!.map(q => nodeAt([v, q, r]))))
}

/**
 * What the samples say about how variable the ground is, over what distance, and how much of it is nugget: the posterior of an
 * exponential-covariance Gaussian field on logs, on a grid of its three parameters, with the mean integrated out (restricted likelihood).
 *
 * Few samples leave the prior nearly as it was, which is the point: the doubt about the variogram goes into the answer.
 * @param samples two or more, finite, errorVariance >= 0
 * @param whole    over the whole prior and by the whole likelihood, however many samples: slow, to hold the quick way against
 * @param prior    editable by the crew; see docs/methods/grade.md for where the standing one comes from
 * @throws DegenerateError("too few") below two samples; InputError for numbers that are not finite
 * Cost: 252 grid nodes up to 40 samples, 91 up to 150, 54 above; each one n³/3 factorisation up to 64 samples, n small ones of 21 x 21 above.
 * Source: Diggle and Ribeiro, Model-based Geostatistics, Springer 2007, ch. 7 (from memory); restricted likelihood: Patterson and Thompson,
 * Biometrika 58, 1971, 545 (from memory).
 */
export function logFieldPosterior(samples: readonly LogSample[], prior: FieldPrior, { whole = false }: { readonly whole?: boolean } = {}): FieldPosterior {
  if (samples.length < 2) throw new DegenerateError('too few', 'samples', samples.length, 'two or more samples')
  samples.forEach((s, i) => {
    finite(s.logValue, `samples[${i}].logValue`)
    finite(s.at.along, `samples[${i}].at.along`)
    finite(s.at.down, `samples[${i}].at.down`)
    if (!(s.errorVariance >= 0 && Number.isFinite(s.errorVariance))) throw new InputError(`samples[${i}].errorVariance`, s.errorVariance, 'zero or more')
  })
  const belief = beliefIn(samples, prior, whole)
  const candidates = (samples.length > few && !whole ? aroundThePeak(belief, prior, samples.length > many ? 3 : 4) : overThePrior(prior))
    .map(node => ({ node, log: belief(node) }))
  const best = Math.max(...candidates.map(c => c.log))
  const kept = candidates.map(c => ({ ...c.node, weight: Math.exp(c.log - best) })).filter(c => c.weight > 1e-4)
  const total = kept.reduce((sum, c) => sum + c.weight, 0)
  return { samples, nodes: kept.map(c => ({ ...c, weight: c.weight / total })).sort((a, b) => b.weight - a.weight) }
}
