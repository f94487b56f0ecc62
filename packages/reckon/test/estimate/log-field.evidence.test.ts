import { drawsFrom } from '@lodebook/reckon'
import type { Draws, VeinPoint } from '@lodebook/reckon'
import { choleskyInPlace } from '@lodebook/reckon'
import { FieldGround, fieldOutcomes, logFieldPosterior } from '@lodebook/reckon/estimate'
import type { FieldPrior } from '@lodebook/reckon/estimate'
import { describe, expect, it } from 'vitest'

const prior: FieldPrior = { variance: { median: 1.2, factor: 1.7 }, range: { median: 8, factor: 2 }, nuggetShare: { a: 2, b: 2 } }

/** Exact draw of a Gaussian field with exponential covariance at the points. */
function field(points: readonly VeinPoint[], sill: number, range: number, draws: Draws): Float64Array {
  const n = points.length
  const k = new Float64Array(n * n)
  points.forEach((p, i) => points.slice(0, i + 1).forEach((q, j) => {
    k[i * n + j] = sill * Math.exp(-Math.hypot(p.along - q.along, p.down - q.down) / range) + (i === j ? 1e-9 : 0)
  }))
  choleskyInPlace(k, n)
  const z = Float64Array.from({ length: n }, () => draws.normal())
  return Float64Array.from({ length: n }, (_, i) => z.reduce((sum, value, j) => j <= i ? sum + k[i * n + j]! * value : sum, 0))
}

const normal = (draws: Draws, p: { median: number, factor: number }) => p.median * Math.exp(Math.log(p.factor) * draws.normal())
/** Beta(2, 2) as the median of three uniforms. */
const middle = (draws: Draws) => [draws.uniform(), draws.uniform(), draws.uniform()].sort((a, b) => a - b)[1]!

/** One made-up vein drawn from the prior itself, sampled along two drifts, and whether the stated range of its total holds the truth. */
function trial(seed: number, samples: number) {
  const draws = drawsFrom(seed)
  const variance = normal(draws, prior.variance), range = normal(draws, prior.range), nugget = middle(draws)
  const blocks = Array.from({ length: 48 }, (_, i) => {
    const at = { along: (i % 12) * 2.5, down: Math.floor(i / 12) * 2.5 }
    return { points: [[-0.6, -0.6], [0.6, -0.6], [-0.6, 0.6], [0.6, 0.6]].map(([a, d]) => ({ along: at.along + a!, down: at.down + d! })) }
  })
  const places = Array.from({ length: samples }, () => ({ along: draws.uniform() * 28, down: draws.uniform() < 0.5 ? 1 : 6.5 }))
  const all = [...places, ...blocks.flatMap(b => b.points)]
  const mean = 1
  const structured = field(all, variance * (1 - nugget), range, draws)
  const errorVariance = 0.3
  const data = places.map((at, i) => ({
    at, errorVariance, logValue: mean + structured[i]! + Math.sqrt(variance * nugget) * draws.normal() + Math.sqrt(errorVariance) * draws.normal(),
  }))
  // Nugget has no reach, so a block holds its average: exp(half of it).
  const at = (block: number, point: number) => Math.exp(mean + structured[samples + block * 4 + point]! + variance * nugget / 2)
  const truth = blocks.reduce((sum, b, i) => sum + b.points.reduce((s, _, p) => s + at(i, p), 0) / 4, 0)
  const ground = new FieldGround(places.map((at, i) => ({ key: `s${i}`, points: [at] })), blocks.map((b, i) => ({ key: `b${i}`, ...b })))
  const values = fieldOutcomes(ground, logFieldPosterior(data, prior), data.map((_, i) => i), { count: 400, seed: seed + 100_000 }).blocks
  const totals = Array.from({ length: 400 }, (_, k) => values.reduce((s, block) => s + block[k]!, 0)).sort((a, b) => a - b)
  return { inside: truth >= totals[40]! && truth <= totals[359]!, median: totals[200]! / truth }
}

describe('log field', () => {
  // Simulation-based calibration (Cook, Gelman and Rubin, J. Comput. Graph. Statist. 15, 2006, 675; from memory): truths drawn from the
  // prior itself must fall in the 80 % range 80 % of the time. With 300 trials one standard deviation is 2.3 %.
  it.each([[8], [30], [70]])('[E1] the 80 %% range of a total holds the truth 75 to 85 %% of the time with %i samples', (samples) => {
    const trials = Array.from({ length: 300 }, (_, i) => trial(i + 1, samples))
    const held = trials.filter(t => t.inside).length / trials.length
    expect(held).toBeGreaterThan(0.74)
    expect(held).toBeLessThan(0.86)
    const medians = trials.map(t => Math.log(t.median)).sort((a, b) => a - b)
    expect(Math.abs(medians[150]!)).toBeLessThan(0.12)
  })
})
