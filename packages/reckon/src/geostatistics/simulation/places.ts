import { finite } from '../../core/index.ts'
import { Covariance } from '../covariance.ts'
import type { Point2, Sample, VariogramModel } from '../model.ts'
import { coincidenceOf, groupPlaces, mergeSamples } from '../samples.ts'
import type { Samples } from '../samples.ts'

/** What has to be drawn: the samples, and the distinct places of the targets whose value no exact sample fixes. */
export interface Places {
  readonly covariance: Covariance
  readonly mean: number
  readonly samples: Samples
  readonly count: number
  readonly xs: Float64Array
  readonly ys: Float64Array
  /** Per target the place it is at; -1 where an exact sample fixes it, whose value then stands in `fixed`. */
  readonly target: Int32Array
  readonly fixed: Float64Array
}

/** @throws InputError naming `points[i][j]`, `targets[i][j]` or `errorVariance[i]`; as `checkModel` */
export function placeSimulation(
  points: readonly Sample[], targets: readonly Point2[], model: VariogramModel, mean: number, errorVariance?: readonly number[],
): Places {
  targets.forEach((target, i) => target.forEach((value, j) => { if (!Number.isFinite(value)) finite(value, `targets[${i}][${j}]`) }))
  const coincidence = coincidenceOf([...points, ...targets])
  const samples = mergeSamples(points, errorVariance, coincidence)
  const sampleOf = new Map<number, number>()
  const group = groupPlaces([...points.map(([x, y]): Point2 => [x, y]), ...targets], coincidence)
  points.forEach((_, row) => sampleOf.set(group[row]!, samples.group[row]!))
  const placeOf = new Map<number, number>()
  const xs: number[] = []
  const ys: number[] = []
  const fixed = new Float64Array(targets.length)
  const target = Int32Array.from(targets, ([x, y], t) => {
    const g = group[points.length + t]!
    const sample = sampleOf.get(g)
    if (sample !== undefined && samples.errors[sample] === 0) {
      fixed[t] = samples.values[sample]!
      return -1
    }
    let place = placeOf.get(g)
    if (place === undefined) {
      placeOf.set(g, place = xs.length)
      xs.push(x)
      ys.push(y)
    }
    return place
  })
  return {
    covariance: new Covariance(model, coincidence), mean, samples, count: xs.length,
    xs: Float64Array.from(xs), ys: Float64Array.from(ys), target, fixed,
  }
}
