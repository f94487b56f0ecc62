import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'
import { InputError, positive } from '../core/index.ts'
import type { Range } from '../core/index.ts'
import { checkedConfidence, wilsonRange } from '../statistics/index.ts'
import { weightedCountRange } from './weighted-count-range.ts'
import type { CountedGrains } from './weighted-count-range.ts'

/** What a pan showed. Gold weighed, or colours counted, or both: then the weight gives the grade and the count its doubt. */
export interface PanResult {
  readonly dryMassG: number
  readonly goldMg?: number
  readonly colours?: readonly CountedGrains[]
  /** Grains of known gold put in and found again: the pan's recovery. */
  readonly recovery?: { readonly found: number, readonly seeded: number }
  /** Mass of one grain, mg, when none were counted. */
  readonly grainMg?: number
  /** One standard deviation of the weighing, mg. */
  readonly scaleSdMg?: number
  readonly confidence?: number
}

export interface PanGrade extends Range {
  readonly gradeGPerT: number
  /** Nothing was found: `low` is 0 and `high` a one-sided limit. */
  readonly nothingSeen: boolean
  /** What was taken as given because it was not: 'grain_mg', 'scale_sd_mg', 'recovery'. */
  readonly assumed: Readonly<Record<string, number>>
}

/** A middling visible grain, mg, and a jeweller's scale that reads to the milligram. Common practice, no source. */
export const usualPan = { grainMg: 0.5, scaleSdMg: 1, recovery: 1, confidence: 0.8 } as const

/**
 * Grade of the ground that a pan came from, with the range that its few grains, the scale and the pan's recovery leave.
 *
 * The three are put together by the square-and-add rule for limits that lie unevenly about their value.
 * @returns g/t; a range that holds the true grade with `confidence`
 * @throws InputError
 * Source: grains as in `weightedCountRange`; recovery by Wilson's interval; combination: Zou and Donner, Statistics in Medicine 27, 2008, 1693 (from memory).
 */
export function panGrade(pan: PanResult): PanGrade {
  positive(pan.dryMassG, 'dry_mass_g')
  const confidence = checkedConfidence(pan.confidence ?? usualPan.confidence)
  const { classes, mg, weighed, assumed } = seenIn(pan)
  const share = recoveryOf(pan, confidence)
  if (pan.recovery === undefined) assumed.recovery = usualPan.recovery
  const z = normalQuantile((1 + confidence) / 2, 0, 1)
  const scale = weighed ? z * (pan.scaleSdMg ?? usualPan.scaleSdMg) : 0
  const grains = weightedCountRange(classes, confidence)
  const low = Math.max(0, mg - Math.hypot(mg - grains.low, scale))
  const high = mg + Math.hypot(grains.high - mg, scale)
  // mg in g is 1,000 g/t
  const perTonne = (gold: number, recovery: number) => gold * 1000 / (recovery * pan.dryMassG)
  const grade = perTonne(mg, share.value)
  const spread = (gold: number, recovery: number) => Math.exp(Math.hypot(Math.log(gold / mg), Math.log(share.value / recovery)))
  return {
    gradeGPerT: grade, nothingSeen: mg === 0, assumed, confidence,
    low: low === 0 || mg === 0 ? 0 : grade / spread(low, share.high),
    high: mg === 0 ? perTonne(high, share.low) : grade * spread(high, share.low),
  }
}

/** The gold and the grains it came in. */
function seenIn(pan: PanResult) {
  const { goldMg, colours = [] } = pan
  if (goldMg === undefined && colours.length === 0) throw new InputError('gold_mg', goldMg, 'gold weighed, or colours counted')
  if (goldMg !== undefined && !(goldMg >= 0 && Number.isFinite(goldMg))) throw new InputError('gold_mg', goldMg, 'milligrams, zero or more')
  if (pan.scaleSdMg !== undefined && !(pan.scaleSdMg >= 0 && Number.isFinite(pan.scaleSdMg))) throw new InputError('scale_sd_mg', pan.scaleSdMg, 'milligrams, zero or more')
  if (pan.grainMg !== undefined) positive(pan.grainMg, 'grain_mg')
  colours.forEach((c, i) => {
    if (!(Number.isInteger(c.count) && c.count >= 0)) throw new InputError(`colours[${i}].count`, c.count, 'a whole number, zero or more')
    positive(c.mgEach, `colours[${i}].mg_each`)
  })
  const assumed: Record<string, number> = {}
  if (goldMg !== undefined && pan.scaleSdMg === undefined) assumed.scale_sd_mg = usualPan.scaleSdMg
  const counted = colours.reduce((sum, c) => sum + c.count * c.mgEach, 0)
  const mg = goldMg ?? counted
  if (counted > 0) {
    if (mg === 0) throw new InputError('gold_mg', goldMg, 'more than zero where colours were counted; leave it out when they were too few to weigh')
    // The weight is believed over the guessed mass of a grain.
    const classes = colours.map(c => ({ count: c.count, mgEach: c.mgEach * mg / counted }))
    return { classes, mg, weighed: goldMg !== undefined, assumed }
  }
  if (colours.length > 0 && mg === 0) return { classes: colours, mg, weighed: goldMg !== undefined, assumed }
  const grain = pan.grainMg ?? Math.min(usualPan.grainMg, mg > 0 ? mg : usualPan.grainMg)
  if (pan.grainMg === undefined) assumed.grain_mg = grain
  return { classes: [{ count: mg / grain, mgEach: grain }], mg, weighed: true, assumed }
}

function recoveryOf({ recovery }: PanResult, confidence: number): { readonly value: number, readonly low: number, readonly high: number } {
  if (recovery === undefined) return { value: usualPan.recovery, low: usualPan.recovery, high: usualPan.recovery }
  const { found, seeded } = recovery
  if (!(Number.isInteger(seeded) && seeded > 0)) throw new InputError('recovery.seeded', seeded, 'a whole number above zero')
  if (found === 0) throw new InputError('recovery.found', found, '1 or more: a pan that finds none of its seeded grains says nothing of the grade')
  if (!(Number.isInteger(found) && found > 0 && found <= seeded)) throw new InputError('recovery.found', found, `a whole number from 1 to ${seeded}`)
  const { low, high } = wilsonRange(found, seeded, confidence)
  return { value: found / seeded, low, high }
}
