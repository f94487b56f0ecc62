import { DegenerateError } from '../../core/index.ts'
import { Covariance } from '../covariance.ts'
import type { Drift } from '../drift.ts'
import { factorFor } from '../kriging/krige-plain.ts'
import { dot, KrigingSystem } from '../kriging/kriging-system.ts'
import type { VariogramModel } from '../model.ts'
import type { Samples } from '../samples.ts'

export type LikelihoodMethod = 'reml' | 'ml'

/** What a model of unit sill says of the data when the sill itself is left open. */
export interface SillProfile {
  /** The sill that makes the data likeliest. */
  readonly sill: number
  /** Log likelihood at that sill. */
  readonly logLikelihood: number
  /** Sum of squares of what the drift leaves, in the metric of the unit model; sill = squares / freedom. */
  readonly squares: number
  readonly freedom: number
}

/**
 * The Gaussian log likelihood of samples under a variogram model, the drift's coefficients maximised over ('ml') or integrated out
 * ('reml': the likelihood of what no drift can explain). Up to a constant that no model parameter enters.
 * Source: Patterson, H. D. and Thompson, R. (1971) Biometrika 58: 545-554, doi:10.1093/biomet/58.3.545; Kitanidis, P. K. (1983)
 * Water Resour. Res. 19: 909-921, doi:10.1029/WR019i004p00909.
 */
export class FieldLikelihood {
  readonly freedom: number
  private readonly system: KrigingSystem
  private readonly everyone: Int32Array

  /** @throws DegenerateError 'too few' when no two degrees of freedom are left beside the drift */
  constructor(private readonly samples: Samples, private readonly drift: Drift, private readonly mean: number, private readonly method: LikelihoodMethod) {
    const n = samples.count
    if (n - drift.size < 2) throw new DegenerateError('too few', 'points', n, `${drift.size + 2} or more samples at different places`)
    this.freedom = method === 'reml' ? n - drift.size : n
    this.system = new KrigingSystem(n, drift.size)
    this.everyone = Int32Array.from({ length: n }, (_, i) => i)
  }

  /** Log likelihood of a whole model. */
  of(model: VariogramModel): number {
    const { squares, logDeterminant } = this.solve(model)
    return -0.5 * (logDeterminant + squares + this.freedom * Math.log(2 * Math.PI))
  }

  /** The sill that suits best for a model of unit sill. Only for samples without errors of their own: those do not scale with the sill. */
  profile(unit: VariogramModel): SillProfile {
    const { squares, logDeterminant } = this.solve(unit)
    const sill = squares / this.freedom
    const logLikelihood = -0.5 * (logDeterminant + this.freedom * (Math.log(sill) + 1 + Math.log(2 * Math.PI)))
    return { sill, logLikelihood, squares, freedom: this.freedom }
  }

  private solve(model: VariogramModel): { squares: number, logDeterminant: number } {
    const { samples, drift, mean, system } = this
    factorFor({ samples, drift, mean, covariance: new Covariance(model, samples.coincidence) }, system, this.everyone, 'points')
    const { n, p, l, q, r, y } = system
    let logDeterminant = 0
    for (let i = 0; i < n; i++) logDeterminant += 2 * Math.log(l[i * n + i]!)
    let squares = dot(y, y, n)
    for (let j = 0; j < p; j++) {
      if (this.method === 'reml') logDeterminant += 2 * Math.log(r[j * p + j]!)
      squares -= dot(q[j]!, y, n) ** 2
    }
    return { squares: Math.max(0, squares), logDeterminant }
  }
}
