import { levelReached, workOutcome, workSteps } from '@lodebook/reckon/pay'
import type { Rock, Spread, WorkInputs } from '@lodebook/reckon/pay'
import type { Answer } from '../answer.ts'
import { rangeOf } from '../build-answer.ts'
import { figure, grade as gradeWords, money, rock, length } from '../words.ts'
import type { CrewUnits } from '../words.ts'
import { gramsPerOunce } from '../grade/troy.ts'
import type { OptionBasis, PayBasis } from './basis.ts'
import { stepWords } from './rates.ts'
import type { Driver } from './shapes.ts'

/** Every input in the middle, and what a person-day then leaves. */
export interface MiddleCase { readonly rock: Rock, readonly inputs: WorkInputs, readonly perDay: number }

const perDayOf = ({ plan }: OptionBasis, { shared }: PayBasis, at: Rock, inputs: WorkInputs): number => {
  const one = workOutcome(plan, at, inputs, shared.terms)
  return one.personDays > 0 ? (one.income - one.cost) / one.personDays : 0
}

export function middleOf(option: OptionBasis, basis: PayBasis, at: Rock): MiddleCase {
  return { rock: at, inputs: basis.shared.middle, perDay: perDayOf(option, basis, at, basis.shared.middle) }
}

interface Moved {
  readonly name: string
  readonly spread: Spread
  readonly answer: Answer
  /** Whether it is a share of one. */
  readonly share: boolean
  readonly perDay: (value: number) => number
  readonly say: (value: number) => string
}

export interface DriverContext { readonly gold: Answer, readonly units: CrewUnits }
export interface DriversFound { readonly drivers: readonly Driver[], readonly mustBeTrue: readonly string[] }

/** Each input at its low and its high, the rest in the middle, most telling first, with where it alone would bring the day to the wage. */
export function driversOf(option: OptionBasis, basis: PayBasis, middle: MiddleCase, { gold, units }: DriverContext): DriversFound {
  const { shared, wage, currency } = basis
  const { rock: at, inputs } = middle
  const ounces = rangeOf(option.ounces)
  const of = (change: (value: number) => Partial<WorkInputs>) => (value: number) => perDayOf(option, basis, at, { ...inputs, ...change(value) })
  const share = (value: number) => `${figure(100 * value, 2)} %`
  const oneRate = (step: typeof workSteps[number]): Moved => ({
    name: stepWords[step], spread: shared.rates[step], answer: shared.rates[step].answer, share: false,
    perDay: of(value => ({ rates: { ...inputs.rates, [step]: value } })), say: value => `${step === 'drive' ? length(value, units, 2) : rock(value, units, 2)} a person-day`,
  })
  const moved: Moved[] = [
    { name: 'gold in the rock', spread: { median: at.ounces, low: ounces.low, high: ounces.high }, answer: gold, share: false, perDay: value => perDayOf(option, basis, { ...at, ounces: value }, inputs), say: value => `${figure(value, 2)} oz${at.tonnes > 0 ? ` (${gradeWords(value * gramsPerOunce / at.tonnes, units)} as worked)` : ''}` },
    { name: 'gold recovery', spread: shared.recovery, answer: shared.recovery.answer, share: true, perDay: of(recovery => ({ recovery })), say: share },
    { name: 'price', spread: shared.price, answer: shared.price.answer, share: false, perDay: of(price => ({ price })), say: value => `${money(value, currency)} an ounce` },
    { name: 'other work', spread: shared.otherShare, answer: shared.otherShare.answer, share: true, perDay: of(otherShare => ({ otherShare: Math.min(otherShare, 0.999) })), say: value => `${share(value)} of the days` },
    { name: 'refiner\'s share', spread: shared.payable, answer: shared.payable.answer, share: true, perDay: of(payable => ({ payable })), say: share },
    ...workSteps.filter(step => option.plan.steps.includes(step) && (step !== 'drive' || option.metres > 0)).map(oneRate),
  ]
  const told = moved.map((m) => {
    const pays = m.share ? levelReached(m.perDay, wage.value, 0.001, 0.999) : levelReached(m.perDay, wage.value, m.spread.median / 20, m.spread.median * 20)
    const { low, high } = m.spread
    const driver: Driver = {
      name: m.name, low, high, said: { low: m.say(low), high: m.say(high) }, payAtLow: m.perDay(low), payAtHigh: m.perDay(high), pays, answer: m.answer,
    }
    return { driver, m }
  }).sort((a, b) => swing(b.driver) - swing(a.driver))
  const already = middle.perDay >= wage.value
  return {
    drivers: told.map(t => t.driver),
    mustBeTrue: told.filter(({ driver }) => driver.pays !== undefined && swing(driver) > 0).slice(0, 5).map(({ driver, m }) => {
      const rises = driver.payAtHigh > driver.payAtLow
      const likely = driver.pays! >= driver.low && driver.pays! <= driver.high
      return `${m.name}: ${already ? 'as long as it stays' : 'it needs'} ${rises ? 'at least' : 'at most'} ${m.say(driver.pays!)}; now ${m.say(m.spread.median)}${already || likely ? '' : ', and less than one in ten would have it so'}`
    }),
  }
}

const swing = (d: Driver) => Math.abs(d.payAtHigh - d.payAtLow)
