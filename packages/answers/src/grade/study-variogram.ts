import { logFieldPosterior } from '@lodebook/reckon/estimate'
import type { FieldNode } from '@lodebook/reckon/estimate'
import { crossValidate, experimentalVariogram, krige, variogramCloud } from '@lodebook/reckon/geostatistics'
import type { Sample, VariogramModel } from '@lodebook/reckon/geostatistics'
import { buildAnswer, mean } from '../build-answer.ts'
import { figure, grade as gradeWords, length, plural } from '../words.ts'
import type { StudyInput } from './study-input.ts'
import type { GradeStudy, VariogramShown } from './study-shapes.ts'

/** Pairs listed at most: those that differ most. */
const pairsShown = 400

const pointsOf = ({ data }: StudyInput): readonly Sample[] => data.map(d => [d.at.along, -d.at.down, d.logAccumulation] as const)
const errorsOf = ({ data }: StudyInput) => data.map(d => d.accumulationError)
const modelOf = (node: Omit<FieldNode, 'weight'>): VariogramModel => ({
  nugget: node.variance * node.nuggetShare, structures: [{ type: 'exponential', partialSill: node.variance * (1 - node.nuggetShare), range: node.range }],
})

/** The believable middle of the descriptions: one model to krige with. */
export function middleModel(input: StudyInput): { readonly model: VariogramModel, readonly nodes: readonly FieldNode[] } {
  const { nodes } = logFieldPosterior(input.data.map(d => ({ at: d.at, logValue: d.logAccumulation, errorVariance: d.accumulationError })), input.prior)
  const middle = (key: 'variance' | 'range') => Math.exp(nodes.reduce((sum, n) => sum + n.weight * Math.log(n[key]), 0))
  return { nodes, model: modelOf({ variance: middle('variance'), range: middle('range'), nuggetShare: nodes.reduce((sum, n) => sum + n.weight * n.nuggetShare, 0) }) }
}

/** A share of belief below which a parameter lies. */
function believed(nodes: readonly FieldNode[], of: (n: FieldNode) => number, share: number): number {
  const ordered = [...nodes].sort((a, b) => of(a) - of(b))
  let sum = 0
  return of(ordered.find((n) => { sum += n.weight; return sum >= share }) ?? ordered.at(-1)!)
}

const gammaAt = (n: FieldNode, h: number) => n.variance * (n.nuggetShare + (1 - n.nuggetShare) * (1 - Math.exp(-h / n.range)))

export function variogramOf(input: StudyInput): VariogramShown | undefined {
  const { used, units } = input, points = pointsOf(input)
  const extent = (k: 0 | 1) => Math.max(...points.map(p => p[k])) - Math.min(...points.map(p => p[k]))
  // Half the span: beyond it the same few samples make all the pairs.
  const cutoff = Math.hypot(extent(0), extent(1)) / 2
  if (!(cutoff > 0)) return undefined
  const options = { cutoff, width: cutoff / 10 }, classical = experimentalVariogram(points, options), robust = experimentalVariogram(points, { ...options, estimator: 'robust' })
  const { nodes, model } = middleModel(input), own = mean(errorsOf(input)), range = model.structures[0]!.range
  const [low, high] = [0.1, 0.9].map(share => believed(nodes, n => n.range, share))
  const [few, most] = [0.1, 0.9].map(share => believed(nodes, n => n.nuggetShare, share))
  const bag = (i: number) => ({ bag: used[i]!.bag, entry: used[i]!.entry })
  return {
    of: 'logs of grade times width',
    lags: classical.map((lag, i) => ({ ...lag, robust: robust[i]!.gamma })),
    ways: ([['up and down the dip', 0], ['along the vein', 90], ['rising along it', 45], ['falling along it', 135]] as const).map(([name, azimuth]) => ({ name, lags: experimentalVariogram(points, { ...options, width: cutoff / 6, azimuth }) })),
    curve: Array.from({ length: 41 }, (_, i) => {
      const distance = cutoff * i / 40, at = (share: number) => own + believed(nodes, n => gammaAt(n, distance), share)
      return { distance, gamma: at(0.5), low: at(0.1), high: at(0.9) }
    }),
    cloud: variogramCloud(points, cutoff).sort((a, b) => b.gamma - a.gamma).slice(0, pairsShown).map(({ a, b, distance, gamma }) => ({
      a: bag(a), b: bag(b), distance, gamma,
      says: `Bags ${used[a]!.bag} and ${used[b]!.bag}, ${length(distance, units, 2)} apart: ${gradeWords(used[a]!.grade, units)} against ${gradeWords(used[b]!.grade, units)}`,
    })),
    answer: buildAnswer({
      id: 'grade.variogram', value: range * 3, unit: 'm', range: { low: 3 * low!, high: 3 * high!, confidence: 0.8, because: ['few pairs of samples near each other', 'the samples’ own errors'] },
      sentence: `Grade times width at two places resembles each other out to about ${length(3 * range, units, 2)} (80 %: ${length(3 * low!, units, 2)} to ${length(3 * high!, units, 2)}); ${figure(100 * few!, 2)} to ${figure(100 * most!, 2)} % of the difference is there at once, from ${plural(used.length, 'sample')}.`,
      method: {
        name: 'restricted likelihood of an exponential variogram of logs, times a stated prior', page: 'variogram',
        working: [`the curve stands ${figure(own, 2)} above nothing at first: the samples' own errors`, 'the distance is where 95 % of the difference is reached, three times the range'],
      }, assumed: input.assumed, parts: used.map(s => s.answer),
    }),
  }
}

/** Every sample told from the others, and how well that went. */
export function leftOutOf(input: StudyInput, model: VariogramModel): GradeStudy['leftOut'] {
  const { used, units } = input, points = pointsOf(input), errors = errorsOf(input)
  const found = crossValidate(points, model, { kind: 'ordinary', errorVariance: errors })
  const shown = used.map((s, i) => ({
    bag: s.bag, entry: s.entry, measured: s.accumulation!, told: Math.exp(points[i]![2] - found.residuals[i]!),
    z: found.residuals[i]! / Math.sqrt(found.variances[i]! + errors[i]!),
  }))
  const within = shown.filter(p => Math.abs(p.z) < 1.2816).length, worst = [...shown].sort((a, b) => Math.abs(b.z) - Math.abs(a.z))[0]!
  return {
    points: shown,
    answer: buildAnswer({
      id: 'grade.left-out', value: within / shown.length, unit: 'of the samples', parts: used.map(s => s.answer),
      sentence: `Left out and told from the others, ${within} of ${plural(shown.length, 'sample')} fell in their 80 % range; bag ${worst.bag} is the furthest out (told ${gradeWords(worst.told / used.find(s => s.bag === worst.bag)!.width!, units)}, ran ${gradeWords(used.find(s => s.bag === worst.bag)!.grade, units)}).`,
      method: { name: 'leave-one-out by the closed form', page: 'kriging', working: [`mean square of z ${figure(mean(shown.map(p => p.z ** 2)), 3)}; 1 when the stated errors are right`] },
    }),
  }
}

/** Panels where plain kriging of accumulations and the field part most, with the sample that weighs most in it. */
export function partedOf(input: StudyInput, model: VariogramModel): GradeStudy['parted'] {
  const { used, ground, panels } = input, level = mean(used.map(s => s.meanAccumulation!))
  const points = used.map(s => [s.at!.along, -s.at!.down, s.meanAccumulation!] as const)
  const sill = model.nugget + model.structures[0]!.partialSill, scale = level ** 2 * Math.expm1(sill) / sill
  const linear: VariogramModel = { nugget: model.nugget * scale,
    structures: [{ ...model.structures[0]!, partialSill: model.structures[0]!.partialSill * scale }] }
  const found = krige(points, ground.panels.map(g => [g.centre.along, -g.centre.down] as const), linear, {
    kind: 'ordinary', explain: true, errorVariance: used.map(s => Math.min(9, Math.expm1(s.logSd ** 2)) * level ** 2), ...used.length > 40 ? { neighbours: 32 } : {},
  })
  return panels.map((panel, i) => ({ panel, i, apart: found.means[i]! / panel.accumulation - 1 })).filter(p => Number.isFinite(p.apart) &&
    Math.abs(p.apart) > 0.25)
    .sort((a, b) => Math.abs(b.apart) * b.panel.ounces - Math.abs(a.apart) * a.panel.ounces).slice(0, 5).map(({ panel, i, apart }) => {
    const pull = used.map((s, j) => Math.abs(found.weights![i]![j]! * (s.meanAccumulation! - panel.accumulation))), bag = used[pull.indexOf(Math.max(...pull))]!
    return {
      panel: panel.name, bag: { bag: bag.bag, entry: bag.entry },
      sentence: `Panel ${panel.name}: plain kriging gives ${figure(100 * Math.abs(apart), 2)} % ${apart > 0 ? 'more' : 'less'} than the headline's middle, most of all because of bag ${bag.bag}.`,
    }
  })
}
