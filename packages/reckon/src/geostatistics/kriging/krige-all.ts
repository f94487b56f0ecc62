import { solveForward4 } from '../linear/interleaved.ts'
import { driftVariance, dualOf } from './dual.ts'
import type { Dual } from './dual.ts'
import { fillFour, strided } from './four.ts'
import { factorFor } from './krige-plain.ts'
import type { Estimates } from './krige-plain.ts'
import { krigeWithinReach } from './krige-within-reach.ts'
import { dot, KrigingSystem } from './kriging-system.ts'
import type { Problem } from './options.ts'
import { wellConditionedInverse } from './well-conditioned-inverse.ts'

/** The inverse costs about n^3 / 2 plainly: worth it for many more targets than samples, and not beyond this many samples. */
const MOST_SAMPLES = 1000
const TARGETS_PER_SAMPLE = 4

/**
 * Kriging every target from all samples: one factorisation, then four targets at a time.
 *
 * Where covariances end at a distance (spherical structures) and K is well conditioned, only the samples within reach of a tile of
 * targets count: c^T K^-1 c over those alone. Otherwise q = L^-1 c, all of it.
 */
export function krigeAll(problem: Problem): Estimates {
  const { samples, targets, drift, covariance } = problem
  const n = samples.count
  const system = new KrigingSystem(n, drift.size)
  const regularised = factorFor(problem, system, Int32Array.from({ length: n }, (_, i) => i), 'points')
  const dual = dualOf(system)
  const means = new Float64Array(targets.count)
  const variances = new Float64Array(targets.count)
  const worth = covariance.reach < Infinity && !regularised && n <= Math.min(MOST_SAMPLES, targets.count / TARGETS_PER_SAMPLE)
  const inverse = worth ? wellConditionedInverse(problem, system) : undefined
  if (inverse !== undefined) krigeWithinReach(problem, system, dual, inverse, means, variances)
  else byFactor(problem, system, dual, means, variances)
  return { means, variances, regularised }
}

function byFactor(problem: Problem, system: KrigingSystem, dual: Dual, means: Float64Array, variances: Float64Array): void {
  const { samples, targets, drift, mean, own } = problem
  const { n, p, l, q } = system
  const order = Int32Array.from({ length: targets.count }, (_, i) => i)
  const c = new Float64Array(4 * n)
  const f = new Float64Array(p)
  const g = new Float64Array(p)
  for (let from = 0; from < targets.count; from += 4) {
    fillFour(problem, order, from, targets.count, samples.xs, samples.ys, n, c)
    for (let r = 0; r < 4 && from + r < targets.count; r++) means[from + r] = mean + strided(dual.sample, c, r, n)
    solveForward4(l, n, n, c)
    for (let r = 0; r < 4 && from + r < targets.count; r++) {
      const t = from + r
      let square = 0
      for (let o = r; o < 4 * n; o += 4) square += c[o]! * c[o]!
      drift.at(t, targets.xs[t]!, targets.ys[t]!, f)
      means[t]! += dot(dual.drift, f, p)
      for (let j = 0; j < p; j++) g[j] = strided(q[j]!, c, r, n)
      variances[t] = Math.max(0, own - square + driftVariance(system, f, g, false))
    }
  }
}
