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
  const { targets } = problem
  const one = new OneTarget(problem)
  const means = new Float64Array(targets.count)
  const variances = new Float64Array(targets.count)
  const weights: Float64Array[] = []
  for (let t = 0; t < targets.count; t++) {
    one.estimate(t)
    means[t] = one.mean
    variances[t] = one.variance
    if (explain) weights.push(one.weights())
  }
  return { means, variances, regularised: one.regularised, ...(explain && { weights }) }
}

/** Estimates single targets of a problem. */
export class OneTarget {
  mean = 0
  variance = 0
  /** Whether any system so far had to have its diagonal raised. */
  regularised = false
  private readonly system: KrigingSystem
  private chosen: Int32Array
  private readonly all: boolean
  private factored = false
  private readonly c: Float64Array
  private readonly f: Float64Array

  constructor(private readonly problem: Problem) {
    const k = problem.neighbours
    this.system = new KrigingSystem(k, problem.drift.size)
    this.all = k === problem.samples.count
    this.chosen = Int32Array.from({ length: k }, (_, i) => i)
    this.c = new Float64Array(k)
    this.f = new Float64Array(problem.drift.size)
  }

  estimate(t: number): void {
    const { samples, targets, drift, support, covariance, neighbours: k, mean, own } = this.problem
    const { system, c, f } = this
    const [x, y] = [targets.xs[t]!, targets.ys[t]!]
    if (!this.all) this.chosen = nearestPlain(samples.xs, samples.ys, x, y, k)
    if (!this.all || !this.factored) this.regularised = factorFor(this.problem, system, this.chosen, this.all ? 'points' : `targets[${t}]`) || this.regularised
    this.factored = true
    const xs = Float64Array.from(this.chosen, i => samples.xs[i]!)
    const ys = Float64Array.from(this.chosen, i => samples.ys[i]!)
    fillToSupport(covariance, support, c, 0, 1, xs, ys, 0, k, x, y)
    drift.at(t, x, y, f)
    system.reduce(c, f)
    this.mean = mean + system.mean(c, f)
    this.variance = system.variance(c, f, own)
  }

  /** Weights of the target last estimated, once, per point as given: those of merged samples are shared out. */
  weights(): Float64Array {
    const { samples } = this.problem
    this.system.weights(this.c, this.f)
    const perSample = new Float64Array(samples.count)
    this.chosen.forEach((sample, i) => { perSample[sample] = this.c[i]! })
    return Float64Array.from(samples.group, (group, row) => samples.share[row]! * perSample[group]!)
  }
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
      // Samples at one place have been merged: no two share their nugget.
      covariance.fillStructured(l, i * k, 1, xs, ys, 0, i, xs[i]!, ys[i]!)
      l[i * k + i] = covariance.sill + samples.errors[chosen[i]!]!
    }
  }, field)
}
