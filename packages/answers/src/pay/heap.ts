import { drawsFrom } from '@lodebook/reckon'
import { decile } from '@lodebook/reckon/pay'
import type { Entry } from '@lodebook/book'
import type { Assume } from '../assumptions.ts'
import type { Answer } from '../answer.ts'
import type { Belief } from '../belief.ts'
import { buildAnswer, quantile, rangeOf } from '../build-answer.ts'
import { gramsPerOunce } from '../grade/troy.ts'
import { textOf } from '../read.ts'
import { grade as gradeWords, plural, rock } from '../words.ts'
import type { CrewUnits } from '../words.ts'
import type { Rocks } from './slot.ts'

/** How well a crew tells the rock in a heap by eye and tape: sd of the log. Common practice, no source. */
const massDoubt = 0.2
/** The prior of the variance of a heap's logs counts as so many samples. */
const priorCounts = 4
const seed = 1901

export interface Heap extends Rocks {
  readonly sort: string
  readonly answer: Answer
  /** For weighing a further sample: the log of the heap's mean grade, one a ground outcome, and the variance between one sample and the heap. */
  readonly logGrade: Float64Array
  readonly sampleVariance: number
}

export interface HeapInput {
  readonly samples: readonly Entry[]
  readonly beliefs: ReadonlyMap<string, Belief>
  readonly assume: Assume
  readonly units: CrewUnits
  /** Outcomes of the ground. */
  readonly count: number
}

/**
 * Rock and gold of a heap, outcome by outcome, from the samples of its sort: a lognormal with its mean and variance both in doubt.
 * Undefined when no sample of that sort has a result.
 */
export function heapOf(sort: string, tonnes: number, { samples, beliefs, assume, units, count }: HeapInput): Heap | undefined {
  const found = samples.filter(s => textOf(s, 'method') === sort).flatMap((s) => { const b = beliefs.get(textOf(s, 'bag') ?? ''); return b ? [b] : [] })
  const n = found.length
  if (n === 0) return undefined
  const prior = assume('log variance of grade').value / 2 // broken and mixed rock is evener than the vein
  const logs = found.map(b => b.logMean), errors = found.map(b => b.logSd ** 2)
  const middle = logs.reduce((sum, x) => sum + x, 0) / n
  const ownError = errors.reduce((sum, x) => sum + x, 0) / n
  const scatter = logs.reduce((sum, x) => sum + (x - middle) ** 2, 0)
  const between = Math.max(0.05, (Math.max(0, scatter - (n - 1) * ownError) + priorCounts * prior) / (n - 1 + priorCounts))
  const draws = drawsFrom(seed + sort.length)
  const rows = { tonnes: new Float64Array(count), ounces: new Float64Array(count), logGrade: new Float64Array(count) }
  const degrees = n - 1 + priorCounts
  for (let k = 0; k < count; k++) {
    // Scaled inverse chi-square by the cube-root normal of Wilson and Hilferty, good to a hundredth from four degrees on.
    const chi = degrees * (1 - 2 / (9 * degrees) + draws.normal() * Math.sqrt(2 / (9 * degrees))) ** 3
    const variance = between * degrees / Math.max(0.2 * degrees, chi)
    const logMean = middle + draws.normal() * Math.sqrt((variance + ownError) / n)
    rows.logGrade[k] = logMean + variance / 2
    rows.tonnes[k] = tonnes * Math.exp(massDoubt * draws.normal())
    rows.ounces[k] = rows.tonnes[k]! * Math.exp(rows.logGrade[k]!) / gramsPerOunce
  }
  const grades = [...rows.logGrade].map(Math.exp).sort((a, b) => a - b)
  const value = quantile(grades, 0.5)
  return {
    ...rows, sort, sampleVariance: between,
    answer: buildAnswer({
      id: `pay.heap.${sort}`, value, unit: 'g/t', range: rangeOf(grades, [`${plural(n, 'sample')} of it`, 'coarse gold in small samples']),
      sentence: `The ${sort}, about ${rock(tonnes, units)}: ${gradeWords(value, units)} from ${plural(n, 'sample')}.`,
      method: {
        name: 'lognormal mean with few samples', page: 'pay',
        working: [`logs of g/t: mean ${middle.toFixed(2)}, variance between places ${between.toFixed(2)}, own error ${ownError.toFixed(2)}`, `rock known to ${Math.round(100 * (Math.exp(decile * massDoubt) - 1))} % or so one time in ten either side`],
      },
      sources: ['Scaled inverse chi-square and normal, the conjugate pair (from memory)'],
      parts: found.map(b => b.answer), assumed: [assume('log variance of grade')],
    }),
  }
}
