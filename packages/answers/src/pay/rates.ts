import type { Entry } from '@lodebook/book'
import type { Assume, AssumedFigure, AssumptionName } from '../assumptions.ts'
import type { Answer } from '../answer.ts'
import { buildAnswer } from '../build-answer.ts'
import { numberOf, textOf, valueOf, wordsOf } from '../read.ts'
import { figure, plural } from '../words.ts'

/** A figure with its middle and one in ten either side, and whether the crew's own log or a guess stands behind it. */
export interface Spread { readonly median: number, readonly low: number, readonly high: number, readonly answer: Answer }

/** Logs needed before they say more than the prior. Common practice, no source. */
const enoughLogs = 3
/** 1.2816: one in ten of a normal lies beyond it. */
const decile = 1.2816

const tonnesIn = (log: Entry, looseDensity: number): number | undefined => {
  const mass = valueOf(log, 'mass')
  if (mass !== undefined) return mass / 1e6
  const loads = numberOf(log, 'loads')
  const volume = valueOf(log, 'loadVolume')
  return loads === undefined || volume === undefined ? undefined : loads * volume * looseDensity
}

/**
 * Tonnes a person does in a day at one kind of work: from the book's own logs when there are three or more that say both hours and rock
 * moved (their total over total, with the scatter between logs), otherwise the standing figure.
 */
export function rateOf(id: string, tasks: readonly string[], logs: readonly Entry[], name: AssumptionName, assume: Assume): Spread {
  const hours = assume('hours in a day').value
  const loose = assume('vein density').value / 1.6 // broken rock takes about 60 % more room: quartz 60 to 72 % in published tables
  const used = logs.filter(log => tasks.includes(textOf(log, 'task') ?? '')).flatMap((log) => {
    const tonnes = tonnesIn(log, loose)
    const days = wordsOf(log, 'people').length * (valueOf(log, 'hours') ?? 0) / hours
    return tonnes !== undefined && tonnes > 0 && days > 0 ? [{ log, tonnes, days }] : []
  })
  if (used.length < enoughLogs) return standingSpread(id, assume(name))
  const tonnes = used.reduce((sum, u) => sum + u.tonnes, 0)
  const days = used.reduce((sum, u) => sum + u.days, 0)
  const median = tonnes / days
  const logs2 = used.map(u => Math.log(u.tonnes / u.days / median))
  const deviation = Math.sqrt(logs2.reduce((sum, l) => sum + l * l, 0) / (used.length - 1))
  // Over a whole plan good days and bad even out; what stays is how well the average is known and that conditions change.
  const sigma = Math.hypot(deviation / Math.sqrt(used.length), 0.15)
  const [low, high] = [median * Math.exp(-decile * sigma), median * Math.exp(decile * sigma)]
  return {
    median, low, high,
    answer: buildAnswer({
      id, value: median, unit: 't', range: { low, high, confidence: 0.8, because: ['how days differed in the log', 'conditions change (15 %; common practice, no source)'] },
      sentence: `${tasks.join(' and ')}: ${figure(median, 2)} t a person-day, from ${plural(used.length, 'logged shift')}.`,
      method: { name: 'total rock over total person-days', page: 'pay', working: [`${figure(tonnes, 3)} t / ${figure(days, 3)} person-days of ${hours} h`] }, from: used.map(u => u.log.id),
    }),
  }
}

/** A standing or crew-given figure as a spread. */
export function standingSpread(id: string, given: AssumedFigure): Spread {
  return {
    median: given.value, low: given.low, high: given.high,
    answer: buildAnswer({
      id, value: given.value, ...(given.unit === undefined ? {} : { unit: given.unit }),
      ...(given.low < given.high ? { range: { low: given.low, high: given.high, confidence: 0.8, because: [given.why] } } : {}),
      sentence: `${given.name}: ${figure(given.value, 3)} ${given.unit ?? ''}, taken as given.`, method: { name: 'assumption', page: 'pay' },
      from: given.entry === undefined ? [] : [given.entry], assumed: [given],
    }),
  }
}

/** A draw from a spread of something positive: lognormal through its deciles, on both sides of its median. */
export const drawPositive = ({ median, low, high }: Spread, normal: number): number =>
  median * Math.exp(normal * Math.log(normal < 0 ? median / low : high / median) / decile)

/** A draw from a spread of a share of one: normal on the logit. */
export function drawShare({ median, low, high }: Spread, normal: number): number {
  const logit = (p: number) => Math.log(p / (1 - p))
  if (!(low < high) || low <= 0 || high >= 1) return Math.min(1, Math.max(0, median))
  const z = logit(median) + normal * (normal < 0 ? logit(median) - logit(low) : logit(high) - logit(median)) / decile
  return 1 / (1 + Math.exp(-z))
}
