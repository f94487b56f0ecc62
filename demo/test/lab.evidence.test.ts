import { createReckoner } from '@lodebook/answers'
import type { Lab } from '@lodebook/answers'
import { fold } from '@lodebook/book'
import type { Posting } from '@lodebook/book'
import { changedOver } from '@lodebook/reckon/estimate'
import { describe, expect, it } from 'vitest'
import { makeDemo } from '../src/make-demo.ts'
import type { Demo, Mistake } from '../src/index.ts'
import { goldIn } from '../src/truth/grains.ts'

const seeds = Array.from({ length: 200 }, (_, i) => 1 + i)

/** All that the bags' grades hang on: without a survey the rest is quick. */
const labKinds = new Set(['sample', 'split', 'pan', 'assay', 'standard'])

/** What the book says should be looked at again, and which planted mistake each saying names. */
function secondLooks(demo: Demo) {
  const looks = createReckoner(fold(demo.unsealed)).answer('secondLooks')
  const names = (mistake: Mistake, entries: readonly string[]) => mistake.entries.some(entry => entries.includes(entry))
  return {
    found: new Map(demo.truth.mistakes.map(m => [m.sort, looks.some(l => names(m, l.entries))])),
    /** A pair that was changed over counts only when both are named together. */
    swap: demo.truth.mistakes.some(m => m.sort === 'bags swapped' && looks.some(l => m.entries.every(e => l.entries.includes(e)))),
    others: looks.filter(l => !demo.truth.mistakes.some(m => names(m, l.entries))),
  }
}

describe('the laboratory of the invented mine, held against its truth', () => {
  it('[LB1] on 200 seeds the dirty blank and the slipped unit are found in nine of ten books, with at most one false alarm a book', () => {
    const books = seeds.map(seed => secondLooks(makeDemo(seed)))
    const share = (sort: Mistake['sort']) => books.filter(b => b.found.get(sort)).length / books.filter(b => b.found.has(sort)).length
    const alarms = books.reduce((sum, b) => sum + b.others.length, 0) / books.length
    const swaps = books.filter(b => b.swap).length / books.length
    const sorts = new Map<string, number>()
    for (const look of books.flatMap(b => b.others)) sorts.set(look.sort, (sorts.get(look.sort) ?? 0) + 1)
    console.info(`blank ${share('blank carries gold')}, unit slip ${share('unit slip')}, bags changed over, both named ${swaps}; false alarms a book ${alarms}`, Object.fromEntries(sorts))
    expect(share('blank carries gold')).toBeGreaterThanOrEqual(0.9)
    expect(share('unit slip')).toBeGreaterThanOrEqual(0.9)
    expect(alarms).toBeLessThanOrEqual(1)
  })

  // Some 12,000 bags: the scatter of the shares is below half a per cent.
  it('[LB2] the 80 % range of a grade holds what the ground there carries 75 to 85 % of the time', () => {
    let [held, all, low, ofBag] = [0, 0, 0, 0]
    for (const seed of seeds) {
      const demo = makeDemo(seed, { mistakes: false })
      const lab = createReckoner(fold(demo.unsealed.filter((p: Posting) => labKinds.has(p.kind)))).answer('lab') as Lab
      for (const sample of lab.samples) {
        const bag = demo.truth.bags.get(sample.bag)
        if (!bag) continue
        const within = (grade: number) => grade >= sample.low && grade <= sample.high
        all++
        if (within(bag.grade)) held++
        else if (bag.grade < sample.low) low++
        // The grains that happened to be in the bag are no estimate's business; a range for the ground is wider than one for them.
        if (within(goldIn(bag.grains) / bag.grams * 1000)) ofBag++
      }
    }
    console.info(`${all} bags: held ${(100 * held / all).toFixed(1)} %, truth below the range ${(100 * low / all).toFixed(1)} %; held the bag's own grains ${(100 * ofBag / all).toFixed(1)} %`)
    expect(held / all).toBeGreaterThanOrEqual(0.75)
    expect(held / all).toBeLessThanOrEqual(0.85)
  })

  // What the best test there could be would find: the same ratio, but with the true trend, covariance and widths of the invented gold, which no crew can know,
  // and a limit set so that one honest book in twenty raises an alarm.
  it('[LB3] says how often bags changed over are found, beside the best test there could be', () => {
    const honest = seeds.map(seed => bestRatios(makeDemo(seed, { mistakes: false }))).map(r => r.found[0]?.logRatio ?? 0).sort((a, b) => a - b)
    const limit = honest[Math.floor(honest.length * 0.95)]!
    const planted = seeds.map((seed) => {
      const demo = makeDemo(seed), swap = demo.truth.mistakes.find(m => m.sort === 'bags swapped')
      if (!swap) return undefined
      const { found, bags } = bestRatios(demo), [top] = found
      const best = top !== undefined && top.logRatio > limit && [top.a, top.b].every(i => swap.entries.includes(bags[i]!.entry))
      return { best, ours: secondLooks(demo).swap }
    }).filter(p => p !== undefined)
    const share = (key: 'best' | 'ours') => planted.filter(p => p[key]).length / planted.length
    console.info(`${planted.length} books with a pair changed over: ours names it in ${(100 * share('ours')).toFixed(1)} %, the best test in ${(100 * share('best')).toFixed(1)} % (ln ratio above ${limit.toFixed(2)})`)
    // Ours has to find field and trend from 50 bags, so it can't be better than the best but by chance; how much worse it is, is said and not set.
    expect(share('ours')).toBeLessThanOrEqual(share('best') + 0.05)
    expect(share('best')).toBeGreaterThan(0.3)
  })
})

/** The ratios of all pairs under the true field. Its longer axis is 5 m, its shorter 3 m: places are stretched so that one range serves. */
function bestRatios(demo: Demo) {
  const { shoot, median, logDeviation } = demo.truth, turn = shoot.pitch * Math.PI / 180, [c, s] = [Math.cos(turn), Math.sin(turn)]
  const lab = createReckoner(fold(demo.unsealed.filter((p: Posting) => labKinds.has(p.kind)))).answer('lab') as Lab
  const bags = lab.samples.flatMap((sample) => {
    const bag = demo.truth.bags.get(sample.bag)
    return bag?.vein && ['channel', 'chip'].includes(bag.method) ? [{ sample, vein: bag.vein, entry: bag.entry }] : []
  })
  const means = bags.map(({ vein }) => {
    const [a, d] = [vein.along - shoot.centre.along, vein.down - shoot.centre.down]
    const bump = Math.exp(-0.5 * (((a * c + d * s) / shoot.halfLength) ** 2 + ((d * c - a * s) / shoot.halfBreadth) ** 2))
    return Math.log(median) + Math.log(shoot.times) * bump - Math.log(demo.truth.width(vein))
  })
  const samples = bags.map(({ sample, vein }) => ({
    at: { along: vein.along * c + vein.down * s, down: (vein.down * c - vein.along * s) / 0.6 },
    logValue: Math.log(sample.grade), errorVariance: (Math.log(sample.high / sample.low) / (2 * 1.2816)) ** 2,
  }))
  return { bags, found: changedOver(samples, { node: { variance: logDeviation ** 2, nuggetShare: 0, range: 5 }, means }) }
}
