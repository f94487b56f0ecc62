import type { Entry } from '@lodebook/book'
import { updatedRate } from '@lodebook/reckon/pay'
import type { LoggedShift, Spread, WorkStep } from '@lodebook/reckon/pay'
import type { Answer } from '../answer.ts'
import type { Assume, AssumedFigure, AssumptionName } from '../assumptions.ts'
import { buildAnswer } from '../build-answer.ts'
import { numberOf, textOf, valueOf, wordsOf } from '../read.ts'
import { figure, length, plural, rock } from '../words.ts'
import type { CrewUnits } from '../words.ts'

/** A figure in doubt with the answer that says where it comes from. */
export interface AnsweredSpread extends Spread { readonly answer: Answer }

/** The standing figure behind each step, and how many steps share it: two steps of one figure take half of its days each. */
const priors: Readonly<Record<WorkStep, readonly [AssumptionName, number]>> = {
  drive: ['metres driven a person-day', 1], timber: ['tonnes timbered a person-day', 1], break: ['tonnes broken a person-day', 1],
  muck: ['tonnes mucked and trammed a person-day', 2], tram: ['tonnes mucked and trammed a person-day', 2],
  crush: ['tonnes crushed and washed a person-day', 2], wash: ['tonnes crushed and washed a person-day', 2],
  'clean up': ['tonnes cleaned up a person-day', 1],
}
export const stepWords: Readonly<Record<WorkStep, string>> = {
  drive: 'driving', timber: 'timbering', break: 'breaking', muck: 'mucking', tram: 'tramming', crush: 'crushing', wash: 'washing', 'clean up': 'cleaning up',
}

/** Broken rock takes about 60 % more room: quartz 60 to 72 % in published tables. */
const swell = 1.6

const tonnesIn = (log: Entry, loose: number): number | undefined => {
  const mass = valueOf(log, 'mass')
  if (mass !== undefined) return mass / 1e6
  const loads = numberOf(log, 'loads')
  const volume = valueOf(log, 'loadVolume')
  return loads === undefined || volume === undefined ? undefined : loads * volume * loose
}

interface Logged extends LoggedShift { readonly log: Entry }

/** Shifts of one step that say hours and what was done. What was washed goes to the clean-ups in equal parts, since a clean-up is logged without its rock. */
function loggedShifts(step: WorkStep, work: readonly Entry[], assume: Assume): readonly Logged[] {
  const hours = assume('hours in a day').value
  const loose = assume('vein density').value / swell
  const of = (task: string) => work.filter(log => textOf(log, 'task') === task)
  const washed = step === 'clean up' ? of('wash').reduce((sum, log) => sum + (tonnesIn(log, loose) ?? 0), 0) / Math.max(1, of('clean up').length) : 0
  return of(step).flatMap((log): Logged[] => {
    const amount = step === 'drive' ? valueOf(log, 'advance') : step === 'clean up' ? washed : tonnesIn(log, loose)
    const days = wordsOf(log, 'people').length * (valueOf(log, 'hours') ?? 0) / hours
    return amount !== undefined && amount > 0 && days > 0 ? [{ log, amount, days }] : []
  })
}

/** What one person does of a step in a day: the standing figure, updated by the book's own work logs. */
export function stepRate(step: WorkStep, work: readonly Entry[], assume: Assume, units: CrewUnits): AnsweredSpread {
  const [name, shared] = priors[step]
  const given = assume(name)
  const prior = { median: given.value * shared, low: given.low * shared, high: given.high * shared }
  const shifts = loggedShifts(step, work, assume)
  const rate = updatedRate(prior, shifts)
  const say = (value: number) => step === 'drive' ? length(value, units, 2) : rock(value, units, 2)
  const amount = shifts.reduce((sum, s) => sum + s.amount, 0), days = shifts.reduce((sum, s) => sum + s.days, 0)
  const weight = Math.round(100 * rate.fromLogs)
  return {
    median: rate.median, low: rate.low, high: rate.high,
    answer: buildAnswer({
      id: `pay.rate.${step.replace(' ', '-')}`, value: rate.median, unit: step === 'drive' ? 'm' : 't',
      range: { low: rate.low, high: rate.high, confidence: 0.8, because: shifts.length > 0 ? ['how shifts differed in the log', 'conditions change (15 %; common practice, no source)'] : [given.why] },
      sentence: shifts.length > 0 ? `${upper(stepWords[step])}: ${say(rate.median)} a person-day, from ${plural(shifts.length, 'logged shift')}.`
        : `${upper(stepWords[step])}: ${say(rate.median)} a person-day, as assumed; no shift of it is logged.`,
      method: {
        name: 'assumed rate updated by the work log', page: 'pay',
        working: [
          `assumed before any log: ${say(prior.median)} (${say(prior.low)} to ${say(prior.high)})${shared > 1 ? ', half of the days of the figure that two steps share' : ''}`,
          ...(shifts.length > 0 ? [`${plural(shifts.length, 'shift')}: ${say(amount)} in ${figure(days, 3)} person-days = ${say(amount / days)} a day; one shift differs from another by ${figure(100 * rate.shiftSd, 2)} %`,
            `the log has ${weight} % of the say, the assumption ${100 - weight} %`] : []),
        ],
      },
      sources: ['Conjugate normal update of the log of a rate (from memory)'],
      from: [...shifts.map(s => s.log.id), ...(given.entry === undefined ? [] : [given.entry])], assumed: [given],
    }),
  }
}

/** What one load of the log holds, t: the middle of the loads written down. */
export function loadTonnes(work: readonly Entry[], assume: Assume): number | undefined {
  const held = work.flatMap(log => valueOf(log, 'loadVolume') ?? []).sort((a, b) => a - b)
  const middle = held[Math.floor(held.length / 2)]
  return middle === undefined ? undefined : middle * assume('vein density').value / swell
}

const upper = (text: string) => text.replace(/^./, c => c.toUpperCase())

/** A standing or crew-given figure as a spread. */
export function standingSpread(id: string, given: AssumedFigure, say: (value: number) => string = value => `${figure(value, 3)} ${given.unit ?? ''}`): AnsweredSpread {
  return {
    median: given.value, low: given.low, high: given.high,
    answer: buildAnswer({
      id, value: given.value, ...(given.unit === undefined ? {} : { unit: given.unit }),
      ...(given.low < given.high ? { range: { low: given.low, high: given.high, confidence: 0.8, because: [given.why] } } : {}),
      sentence: `${upper(given.name)}: ${say(given.value)}, ${given.entry === undefined ? 'as assumed until the crew says otherwise' : 'as the crew says'}.`, method: { name: 'assumption', page: 'pay' },
      from: given.entry === undefined ? [] : [given.entry], assumed: [given],
    }),
  }
}
