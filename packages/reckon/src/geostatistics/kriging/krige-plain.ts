import { fillToSupport } from '../support.ts'
import { KrigingSystem } from './kriging-system.ts'
import { nearestPlain } from './nearest.ts'
import type { Problem } from './options.ts'

export interface Estimates {
  readonly means: Float64Array
  readonly variances: Float64Array
  readonly weights?: readonly Float64Array[]
  readonly regularised: boolean
}

/** Kriging one target after another, with no thought of speed: what the fast paths are held against, and what explains weights. */
export function krigePlain(problem: Problem, explain: boolean): Estimates {
  const { samples, targets, drift, support, neighbours: k, mean, own } = problem
  const system = new KrigingSystem(k, drift.size)
  const all = k === samples.count
  let chosen: Int32Array = Int32Array.from({ length: k }, (_, i) => i)
  let regularised = all && factorFor(problem, system, chosen, 'points')
  const means = new Float64Array(targets.count)
  const variances = new Float64Array(targets.count)
  const weights: Float64Array[] = []
  const c = new Float64Array(k)
  const f = new Float64Array(drift.size)
  const xs = new Float64Array(k)
  const ys = new Float64Array(k)
  for (let t = 0; t < targets.count; t++) {
    const x = targets.xs[t]!
    const y = targets.ys[t]!
    if (!all) {
      chosen = nearestPlain(samples.xs, samples.ys, x, y, k)
      regularised = factorFor(problem, system, chosen, `targets[${t}]`) || regularised
    }
    for (let i = 0; i < k; i++) {
      xs[i] = samples.xs[chosen[i]!]!
      ys[i] = samples.ys[chosen[i]!]!
    }
    fillToSupport(problem.covariance, support, c, 0, 1, xs, ys, 0, k, x, y)
    drift.at(t, x, y, f)
    system.reduce(c, f)
    means[t] = mean + system.mean(c, f)
    variances[t] = system.variance(c, f, own)
    if (explain) {
      system.weights(c, f)
      weights.push(spread(problem, chosen, c))
    }
  }
  return { means, variances, regularised, ...(explain && { weights }) }
}

/** Sets up and factors the system of the chosen samples. */
export function factorFor(problem: Pick<Problem, 'samples' | 'covariance' | 'drift' | 'mean'>, system: KrigingSystem, chosen: Int32Array, field: string): boolean {
  const { samples, covariance, drift, mean } = problem
  const k = chosen.length
  const xs = Float64Array.from(chosen, i => samples.xs[i]!)
  const ys = Float64Array.from(chosen, i => samples.ys[i]!)
  for (let i = 0; i < k; i++) {
    system.y[i] = samples.values[chosen[i]!]! - mean
    for (let j = 0; j < drift.size; j++) system.q[j]![i] = drift.columns[j]![chosen[i]!]!
  }
  return system.factor(k, (l) => {
    for (let i = 0; i < k; i++) {
      covariance.fill(l, i * k, 1, xs, ys, 0, i, xs[i]!, ys[i]!)
      l[i * k + i] = covariance.sill + samples.errors[chosen[i]!]!
    }
  }, field)
}

/** Weights of merged samples handed back to the points as given. */
function spread(problem: Problem, chosen: Int32Array, weights: Float64Array): Float64Array {
  const { samples } = problem
  const perSample = new Float64Array(samples.count)
  chosen.forEach((sample, i) => { perSample[sample] = weights[i]! })
  return Float64Array.from(samples.group, (group, row) => samples.share[row]! * perSample[group]!)
}
