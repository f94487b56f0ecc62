import { fillToSupport } from '../support.ts'
import { dualOf } from './dual.ts'
import { factorFor } from './krige-plain.ts'
import { dot, KrigingSystem } from './kriging-system.ts'
import type { Problem } from './options.ts'

/** The means alone, without variances: mean = drift . f + sample . c and no solve per target. */
export function meansOfAll(problem: Problem): Float64Array {
  const { samples, targets, drift, mean, covariance, support } = problem
  const n = samples.count
  const system = new KrigingSystem(n, drift.size)
  factorFor(problem, system, Int32Array.from({ length: n }, (_, i) => i), 'points')
  const dual = dualOf(system)
  const c = new Float64Array(n)
  const f = new Float64Array(drift.size)
  const means = new Float64Array(targets.count)
  for (let t = 0; t < targets.count; t++) {
    const [x, y] = [targets.xs[t]!, targets.ys[t]!]
    fillToSupport(covariance, support, c, 0, 1, samples.xs, samples.ys, 0, n, x, y)
    drift.at(t, x, y, f)
    means[t] = mean + dot(dual.sample, c, n) + dot(dual.drift, f, drift.size)
  }
  return means
}
