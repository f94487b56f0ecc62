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

/** One logged shift that says both hours and rock. */
interface Logged { readonly log: Entry, readonly tonnes: number, readonly days: number }

/** Days a tonne takes at one task, from its logs: total over total, and the relative scatter of that mean. */
function taskDays(logged: readonly Logged[]): { readonly days: number, readonly variance: number } {
  const days = logged.reduce((sum, l) => sum + l.days, 0) / logged.reduce((sum, l) => sum + l.tonnes, 0)
  const logs = logged.map(l => Math.log(l.days / l.tonnes / days))
  return { days, variance: logs.reduce((sum, l) => sum + l * l, 0) / Math.max(1, logs.length - 1) / logs.length }
}

/**
 * Tonnes a person does in a day at tasks that follow each other on the same rock: from the book's own logs when there are three or more
 * that say both hours and rock, otherwise the standing figure. Each task has its own days a tonne and they add up; a task never logged is taken as
 * part of the others.
 */
export function rateOf(id: string, tasks: readonly string[], logs: readonly Entry[], name: AssumptionName, assume: Assume): Spread {
  const hours = assume('hours in a day').value
  const loose = assume('vein density').value / 1.6 // broken rock takes about 60 % more room: quartz 60 to 72 % in published tables
  const byTask = tasks.map(task => logs.filter(log => textOf(log, 'task') === task).flatMap((log): Logged[] => {
    const tonnes = tonnesIn(log, loose)
    const days = wordsOf(log, 'people').length * (valueOf(log, 'hours') ?? 0) / hours
    return tonnes !== undefined && tonnes > 0 && days > 0 ? [{ log, tonnes, days }] : []
  })).filter(logged => logged.length > 0)
  const used = byTask.flat()
  if (used.length < enoughLogs) return standingSpread(id, assume(name))
  const each = byTask.map(taskDays)
  const days = each.reduce((sum, t) => sum + t.days, 0)
  // Over a whole plan good days and bad even out; what stays is how well the averages are known and that conditions change.
  const sigma = Math.hypot(Math.sqrt(each.reduce((sum, t) => sum + t.variance * (t.days / days) ** 2, 0)), 0.15)
  const median = 1 / days
  const [low, high] = [median * Math.exp(-decile * sigma), median * Math.exp(decile * sigma)]
  return {
    median, low, high,
    answer: buildAnswer({
      id, value: median, unit: 't', range: { low, high, confidence: 0.8, because: ['how days differed in the log', 'conditions change (15 %; common practice, no source)'] },
      sentence: `${tasks.join(' and ')}: ${figure(median, 2)} t a person-day, from ${plural(used.length, 'logged shift')}.`,
      method: {
        name: 'person-days over rock, task by task', page: 'pay',
        working: byTask.map((logged, i) => `${textOf(logged[0]!.log, 'task')!}: ${plural(logged.length, 'shift')} of ${hours} h days, ${figure(each[i]!.days, 3)} person-days a tonne`),
      },
      from: used.map(u => u.log.id),
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
