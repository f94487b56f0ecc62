import { cellWeights, drawLognormalMeans, lognormalPosterior, polygonWeights, topCutStudy } from '@lodebook/reckon/estimate'
import { drawsFrom } from '@lodebook/reckon'
import { lognormalMean, plottingPositions } from '@lodebook/reckon/statistics'
import type { Answer } from '../answer.ts'
import { buildAnswer, mean, rangeOf } from '../build-answer.ts'
import { said } from '../rounding.ts'
import { figure, grade as gradeWords, length, plural } from '../words.ts'
import type { StudyInput } from './study-input.ts'
import type { GradeStudy } from './study-shapes.ts'
import { gramsPerOunce } from './troy.ts'

const weighted = (values: readonly number[], weights: ArrayLike<number>) =>
  values.reduce((sum, v, i) => sum + v * weights[i]!, 0) / values.reduce((sum, _, i) => sum + weights[i]!, 0)

/** Ounces of all the panels for one mean accumulation, g/t m. */
export const ouncesFor = ({ ground, density }: StudyInput) => (accumulation: number): number =>
  accumulation * ground.panels.reduce((sum, g) => sum + g.area, 0) * density.value / gramsPerOunce

/** Weights of the samples by polygons of influence over the ground that is still there. */
export const polygonsOf = ({ used, ground }: StudyInput): Float64Array =>
  polygonWeights(used.map(s => s.at!), ground.panels.flatMap(g => g.points.map(p => ({ ...p, area: g.area / g.points.length }))))

/** A cell about the size that gives each sample of evenly spread ones a cell of its own. */
const cellOf = ({ used, ground }: StudyInput) => Math.max(1, Math.sqrt(ground.panels.reduce((sum, g) => sum + g.area, 0) / used.length) * 1.5)

/** The same ground by other ways of averaging. */
export function averagesOf(input: StudyInput): readonly Answer[] {
  const { used, units, prior } = input, values = used.map(s => s.meanAccumulation!), ounces = ouncesFor(input), parts = used.map(s => s.answer)
  const make = (id: string, value: number, name: string, working: readonly string[], range?: Answer['range']) => buildAnswer({
    id: `grade.average.${id}`, value, unit: 'ozt', sentence: `${name}: ${said({ value, ...range ? { range } : {} }, 'ozt').value} oz.`, parts,
    method: { name, page: 'grade-study', working }, ...range ? { range } : {},
  })
  const cell = cellOf(input), found = [
    make('plain', ounces(mean(values)), 'Plain average of the samples', [`${plural(values.length, 'sample')}, each counting alike`]),
    make('cells', ounces(weighted(values, cellWeights(used.map(s => s.at!), cell))), 'Bunched samples sharing cells', [`cells of ${length(cell, units, 2)}, 25 origins`]),
    make('polygons', ounces(weighted(values, polygonsOf(input))), 'Each sample for the ground nearest to it', ['polygons of influence over the panels']),
  ]
  const above = used.flatMap(s => s.accumulation! > 0 ? [s.accumulation!] : [])
  if (above.length >= 3) {
    const few = lognormalMean(above, 0.8), range = { low: ounces(few.land.low), high: ounces(few.land.high), confidence: 0.8, because: ['how few samples there are', 'Land: the logs taken as normal and independent'] }
    found.push(make('sichel', ounces(few.sichelT), 'Sichel’s mean of few lognormal values, with Land’s range', [`logs: mean ${figure(few.logMean, 3)}, standard deviation ${figure(few.logSd, 3)}`], range))
  }
  const draws = drawLognormalMeans(lognormalPosterior(used.map(s => ({ logValue: Math.log(s.accumulation!), errorVariance: s.logSd ** 2 })), prior.variance),
    1000, drawsFrom(1907))
  const oz = [...draws].map(ounces), range = rangeOf(oz, ['how few samples there are', 'what is assumed of the ground']), middle = [...oz].sort((a, b) => a - b)[500]!
  found.push(make('bayes', middle, 'Lognormal mean with each sample’s own error and the stated prior', ['places left out of account'], range))
  return found
}

/** How much the highest values carry, and what each cut would cost in ounces, beside the uncut figure. */
export function topCutOf(input: StudyInput): GradeStudy['topCut'] {
  const { used, units } = input, grades = used.map(s => s.grade)
  if (used.length < 5 || !(Math.max(...grades) > 0)) return undefined
  const study = topCutStudy(grades, used.map(s => s.width!)), ounces = ouncesFor(input)
  const at = (cut: number) => ounces(mean(used.map(s => s.meanAccumulation! * Math.min(1, cut / s.grade))))
  const whole = at(Infinity), method = { name: 'plain average with grades cut', page: 'grade-study' }
  const order = used.map((_, i) => i).sort((a, b) => grades[a]! - grades[b]!), top = used[order.at(-1)!]!
  return {
    sentence: study.topHeavy
      ? `A few values carry much: the richest tenth holds ${figure(100 * study.tenths[9]!.share, 2)} % of the metal, bag ${top.bag} alone ${figure(100 * study.highest, 2)} %. Cut again from the wall there before believing it, or cutting it.`
      : `No few values carry it: the richest tenth holds ${figure(100 * study.tenths[9]!.share, 2)} % of the metal. There is no call for a cut.`,
    uncut: buildAnswer({ id: 'grade.cut.none', value: whole, unit: 'ozt', sentence: `Uncut, the plain average gives ${figure(whole, 3)} oz.`, method, parts: used.map(s => s.answer) }),
    tenths: study.tenths.map(({ from, to, share }) => ({ from, to, share })),
    cuts: study.cuts.map(({ cut, values }) => {
      const value = at(cut)
      return {
        cut, values, answer: buildAnswer({
          id: `grade.cut.${cut}`, value, unit: 'ozt', method, parts: used.filter(s => s.grade > cut).map(s => s.answer),
          sentence: `Cut at ${gradeWords(cut, units)}: ${plural(values, 'value')} lowered, ${figure(value, 3)} oz, ${figure(whole - value, 2)} oz (${figure(100 * (1 - value / whole), 2)} %) less than uncut.`,
        }),
      }
    }),
    points: plottingPositions(used.map(s => ({ value: s.below ? s.high : s.grade, below: s.below })))
      .map(({ of, value, score }) => ({ bag: used[of]!.bag, entry: used[of]!.entry, grade: value, z: score })),
  }
}
