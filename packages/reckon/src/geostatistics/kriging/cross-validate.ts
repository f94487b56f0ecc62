import { DegenerateError } from '../../core/index.ts'
import type { Sample, VariogramModel } from '../model.ts'
import { leaveOneOutAll, leaveOneOutNear } from './leave-one-out.ts'
import { layOut } from './options.ts'
import type { KrigeOptions } from './options.ts'

export interface CrossValidateOptions extends Omit<KrigeOptions, 'block' | 'discretisation' | 'covariates' | 'explain'> {
  /** What the mean follows in universal kriging, in place of x and y: one row per point. */
  readonly covariates?: readonly (readonly number[])[]
}

export interface CrossValidation {
  /** Observed minus estimated from the others, one per point in the order given. */
  readonly residuals: Float64Array
  /** Variance of each residual as the model has it: of the estimate, plus the point's own error variance. */
  readonly variances: Float64Array
  readonly meanError: number
  readonly rmse: number
  /** Mean of residual^2 / variance: near 1 when the model's variances are honest. */
  readonly meanSquareZ: number
}

/**
 * Leave-one-out cross-validation: each point estimated from the others.
 *
 * With all samples it costs one factorisation, by a closed form; with neighbours, one small system per point. Points at one place
 * are left out together.
 * @throws InputError and DegenerateError as `krige`; DegenerateError 'too few' when the others do not make an estimate
 * Source: Dubrule, O. (1983) Cross validation of kriging in a unique neighborhood, Math. Geol. 15: 687-699, doi:10.1007/BF01033232.
 */
export function crossValidate(points: readonly Sample[], model: VariogramModel, options: CrossValidateOptions): CrossValidation {
  const { covariates, ...rest } = options
  const problem = layOut(points, [], model, { ...rest, ...(covariates && { covariates: { points: covariates, targets: [] } }) })
  const { samples, drift } = problem
  const needed = Math.max(1, drift.size)
  if (samples.count <= needed) throw new DegenerateError('too few', 'points', samples.count, `${needed + 1} or more samples at different places`)
  const near = options.neighbours ?? samples.count
  const left = near >= samples.count - 1 ? leaveOneOutAll(problem) : leaveOneOutNear(problem, near)
  const residuals = Float64Array.from(points, (point, row) => point[2] - left.means[samples.group[row]!]!)
  const variances = Float64Array.from(points, (_, row) => left.variances[samples.group[row]!]! + (options.errorVariance?.[row] ?? 0))
  let [sum, squares, standard] = [0, 0, 0]
  residuals.forEach((residual, row) => {
    sum += residual
    squares += residual * residual
    standard += residual * residual / variances[row]!
  })
  const n = points.length
  return { residuals, variances, meanError: sum / n, rmse: Math.sqrt(squares / n), meanSquareZ: standard / n }
}
