import { changedOver, changedOverLimit, logFieldPosterior } from '@lodebook/reckon/estimate'
import type { LogSample } from '@lodebook/reckon/estimate'
import { drawsFrom } from '@lodebook/reckon'
import type { VeinPoint } from '@lodebook/reckon'
import type { Assume } from '../assumptions.ts'
import { buildAnswer } from '../build-answer.ts'
import { priors } from '../grade/outcomes.ts'
import { figure, grade as gradeWords, plural } from '../words.ts'
import type { CrewUnits } from '../words.ts'
import type { SwapSuspicion } from './shapes.ts'

/** A bag on the vein with what its looks say of it. */
export interface PlacedBelief {
  readonly bag: string
  readonly entry: string
  readonly at: VeinPoint
  readonly grade: number
  /** Of ln(g/t), by the looks alone. */
  readonly logMean: number
  readonly logSd: number
}

export interface Swaps {
  readonly found: readonly SwapSuspicion[]
  /** How likely the changed places must be, in times, before a pair is named. */
  readonly limit: number
  readonly sentence: string
}

/** Share of books in which nothing was changed over that have any pair named, so far as the field is known; how many are drawn to tell, and from what seed. */
const falseAlarm = 0.05, booksDrawn = 200, seed = 1881
/** Fewer bags than this on the vein and neighbours say nothing. */
const fewest = 8

const sources = ['Likelihood ratio between the two arrangements of the bags under the field that the samples themselves show; limit by drawing books from that field']

/**
 * Bags whose contents would fit each other's places far better than their own, by the samples around them. With coarse gold most swaps can't be seen
 * at all: finding none proves nothing, which is said.
 */
export function swappedBags(placed: readonly PlacedBelief[], assume: Assume, units: CrewUnits): Swaps {
  if (placed.length < fewest) return { found: [], limit: Infinity, sentence: `Fewer than ${fewest} bags with a place on the vein: nothing can be said of bags changed over.` }
  const samples = placed.map((p): LogSample => ({ at: p.at, logValue: p.logMean, errorVariance: p.logSd ** 2 }))
  const { nodes } = logFieldPosterior(samples, priors(assume).accumulation)
  const best = (key: 'variance' | 'range' | 'nuggetShare') => Math.exp(nodes.reduce((sum, node) => sum + node.weight * Math.log(node[key]), 0))
  const node = { variance: best('variance'), range: best('range'), nuggetShare: best('nuggetShare') }
  const logLimit = changedOverLimit(samples, node, drawsFrom(seed), { share: falseAlarm, books: booksDrawn }), limit = Math.exp(logLimit)
  const found = changedOver(samples, { node }).filter(c => c.logRatio > logLimit).map(({ a, b, logRatio }): SwapSuspicion => {
    const [one, other] = [placed[a]!, placed[b]!], ratio = Math.exp(logRatio)
    return {
      bags: [one.bag, other.bag], ratio,
      answer: buildAnswer({
        id: `lab.swap.${one.bag}.${other.bag}`, value: ratio, unit: 'times likelier',
        sentence: `Bags ${one.bag} (${gradeWords(one.grade, units)}) and ${other.bag} (${gradeWords(other.grade, units)}) fit each other's places better than their own: what was found is ${figure(ratio, 2)} times likelier with the two changed over.`,
        method: {
          name: 'each bag against its neighbours, as it lies and changed over', page: 'swapped-bags',
          working: [`logs of grade vary by ${figure(node.variance, 2)} (variance), ${figure(100 * node.nuggetShare, 2)} % of it without reach, the rest over ${figure(node.range, 2)} m`,
            `ln of the ratio ${figure(logRatio, 3)}; named above ${figure(logLimit, 3)}, which one honest book in ${1 / falseAlarm} exceeds (${booksDrawn} drawn from this field, seed ${seed})`],
        },
        sources, from: [one.entry, other.entry],
      }),
    }
  })
  return {
    found, limit,
    sentence: found.length > 0 ? `${plural(found.length, 'pair')} of bags may have been changed over.`
      : `No two of ${placed.length} bags fit each other's places ${figure(limit, 2)} times better than their own. With gold this coarse most changed bags can't be seen so; it proves nothing.`,
  }
}
