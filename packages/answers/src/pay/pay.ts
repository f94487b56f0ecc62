import type { Entry } from '@lodebook/book'
import { drawsFrom } from '@lodebook/reckon'
import { breakEvenOunces, personDay } from '@lodebook/reckon/pay'
import type { PersonDay, PersonDayInput } from '@lodebook/reckon/pay'
import type { Assume } from '../assumptions.ts'
import type { NotEnough } from '../answer.ts'
import { buildAnswer, mean, quantile, rangeOf } from '../build-answer.ts'
import { gramsPerOunce } from '../grade/troy.ts'
import { moneyOf, numberOf, wordsOf } from '../read.ts'
import type { Driver, Grade, Pay } from '../shapes.ts'
import { figure, grade as gradeWords, money, plural } from '../words.ts'
import type { CrewUnits } from '../words.ts'
import { costSheet } from './costs.ts'
import { planOf } from './plan.ts'
import type { Plan } from './plan.ts'
import { goldPrice } from './price.ts'
import { drawPositive, drawShare, rateOf, standingSpread } from './rates.ts'
import type { Spread } from './rates.ts'

export interface PayInput {
  readonly grade: Grade
  readonly work: readonly Entry[]
  readonly costs: readonly Entry[]
  readonly prices: readonly Entry[]
  readonly mine: Entry | undefined
  readonly assume: Assume
  readonly units: CrewUnits
}

const seed = 1893
const daysAWeek = 5
/** With no panel that pays, at least so much rock is judged, t. */
const leastTonnes = 5

const cautions = [
  'Breaking new ground needs ground support, dust and air knowledge, permits and licensed people; local codes decide.',
  'Wages, taxes, insurance and reclamation are counted only as far as they are written down as costs.',
]

/** What each of the crew would earn for a day's work on the ground that pays best, with the odds. */
export function payOf({ grade, work, costs, prices, mine, assume, units }: PayInput): Pay | NotEnough {
  const wanted = (mine?.fields.currency as string | undefined) ?? moneyOf(prices[0] ?? costs[0] ?? ({ fields: {} } as Entry), 'amount')?.currency
  const price = goldPrice(prices, wanted)
  if (!price) return { notEnough: true, sentence: 'Without a price of gold nothing can be said of pay.', wanted: [{ kind: 'price', why: 'what a fine ounce sells for, and when' }], cautions }
  const { currency } = price
  const sheet = costSheet(costs, currency)
  const payable = numberOf(price.entry, 'payable')
  const spreads = {
    recovery: standingSpread('pay.recovery', assume('gold recovery')),
    payable: payable === undefined ? standingSpread('pay.payable', assume('refiner pays')) : fixed('pay.payable', payable / 100, price.entry.id, 'the refiner pays'),
    breaking: rateOf('pay.breaking', ['break'], work, 'tonnes broken a person-day', assume),
    moving: rateOf('pay.moving', ['muck', 'tram'], work, 'tonnes mucked and trammed a person-day', assume),
    treating: rateOf('pay.treating', ['crush', 'wash'], work, 'tonnes crushed and washed a person-day', assume),
    otherShare: standingSpread('pay.other', assume('other work share')),
    slot: standingSpread('pay.slot', assume('minimum width')),
    price,
  }
  const crew = Math.max(1, (mine ? wordsOf(mine, 'people').length : 0) || 2)
  const fixedPart = { costs: sheet.costs, crew, daysAWeek }
  const middle = {
    recovery: spreads.recovery.median, payable: spreads.payable.median,
    breaking: spreads.breaking.median, moving: spreads.moving.median, treating: spreads.treating.median,
    otherShare: spreads.otherShare.median, price: price.median, ...fixedPart,
  }
  const wage = assume('wage to beat')
  // Panels are picked on what another tonne costs; money spent once is spent whichever are picked.
  const marginal = breakEvenOunces({ ...middle, costs: { ...sheet.costs, once: 0 }, tonnes: 1 }, wage.value)
  const slot = { width: spreads.slot.median, wallDensity: assume('wall density').value, wallGrade: assume('wall grade').value }
  const plan = planOf(grade, slot, marginal, leastTonnes)
  const tonnesMiddle = mean(plan.tonnes)
  const draws = drawsFrom(seed)
  const outcomes = plan.ounces.map((ounces, k) => personDay({
    tonnes: plan.tonnes[k]!, ounces, recovery: drawShare(spreads.recovery, draws.normal()), payable: drawShare(spreads.payable, draws.normal()),
    breaking: drawPositive(spreads.breaking, draws.normal()), moving: drawPositive(spreads.moving, draws.normal()),
    treating: drawPositive(spreads.treating, draws.normal()),
    otherShare: drawShare(spreads.otherShare, draws.normal()), price: drawPositive(price, draws.normal()), ...fixedPart,
  }))
  const base: PersonDayInput = { ...middle, tonnes: tonnesMiddle, ounces: quantile([...plan.ounces].sort((a, b) => a - b), 0.5) }
  const inputs = [grade.ounces, ...Object.values(spreads).map(s => s.answer), sheet.answer]
  return assemble({
    outcomes, plan, base, spreads, grade, wage: wage.value, currency, units, inputs, crew, assumed: [wage], marginal,
    cautions: [...cautions, ...sheet.answer.cautions],
  })
}

const fixed = (id: string, value: number, entry: string, name: string): Spread => ({
  median: value, low: value, high: value,
  answer: buildAnswer({ id, value, unit: 'of the value', sentence: `${name} ${figure(100 * value, 3)} % of the value, as written with the price.`, method: { name: 'as written', page: 'pay' }, from: [entry] }),
})

interface Assembly {
  readonly outcomes: readonly PersonDay[]
  readonly plan: Plan & { readonly pays: boolean }
  readonly base: PersonDayInput
  readonly spreads: Readonly<Record<string, Spread>>
  readonly grade: Grade
  readonly wage: number
  readonly currency: string
  readonly units: CrewUnits
  readonly inputs: Pay['inputs']
  readonly crew: number
  readonly assumed: readonly ReturnType<Assume>[]
  readonly marginal: number
  readonly cautions: readonly string[]
}

function assemble({ outcomes, plan, base, spreads, wage, currency, units, inputs, crew, assumed, marginal, cautions, grade }: Assembly): Pay {
  const sorted = (values: readonly number[]) => [...values].sort((a, b) => a - b)
  const perDay = sorted(outcomes.map(o => o.perDay))
  const days = sorted(outcomes.map(o => o.personDays))
  const won = sorted(outcomes.map(o => o.ouncesWon))
  const middle = quantile(perDay, 0.5)
  const chance = perDay.filter(p => p > wage).length / perDay.length
  const drivers = driversOf(base, spreads, plan, grade)
  const because = drivers.slice(0, 3).map(d => d.name)
  const range = rangeOf(perDay, because)
  const method = (working: readonly string[]) => ({ name: 'Monte Carlo over the grade outcomes, rates, price and costs', page: 'pay', working })
  const personDays = buildAnswer({
    id: 'pay.days', value: quantile(days, 0.5), unit: 'person-days', range: rangeOf(days, ['how fast the crew breaks, moves and treats rock', 'other work']),
    sentence: `About ${figure(quantile(days, 0.5), 2)} person-days, or ${figure(quantile(days, 0.5) / crew, 2)} days for ${plural(crew, 'person', 'people')}.`,
    method: method([`${figure(base.tonnes, 3)} t × (1/${figure(base.breaking, 3)} + 1/${figure(base.moving, 3)} + 1/${figure(base.treating, 3)}) / (1 − ${figure(base.otherShare, 2)})`]), parts: inputs,
  })
  const ouncesWon = buildAnswer({
    id: 'pay.ounces', value: quantile(won, 0.5), unit: 'ozt', range: rangeOf(won, ['how much gold is in the panels', 'recovery']),
    sentence: `About ${figure(quantile(won, 0.5), 2)} oz in the pan from ${plural(plan.panels.length, 'panel')}: ${listed(plan.panels)}.`,
    method: method([`${figure(base.ounces, 3)} oz in place × ${figure(base.recovery, 2)} won`]), parts: [grade.ounces, ...grade.panels.filter(p => plan.panels.includes(p.name)).map(p => p.answer), spreads.recovery!.answer],
  })
  const breakEven = breakEvenOunces(base, 0) * gramsPerOunce
  const opening = plan.pays ? '' : 'No panel is expected to pay its own work. The richest ones: '
  const sentence = `${opening}${opening ? 'about' : 'About'} ${figure(quantile(days, 0.5), 2)} person-days and ${figure(quantile(won, 0.5), 2)} oz from ${plural(plan.panels.length, 'panel')} (${listed(plan.panels)}) leave each of you ${money(middle, currency)} a day (80 %: ${money(range.low, currency)} to ${money(range.high, currency)}); ${chanceWords(chance)} it beats ${money(wage, currency)} a day.`
  return {
    sentence, currency, personDays, ouncesWon, wage, drivers, inputs, cautions, middleCase: personDay(base).perDay,
    perDay: buildAnswer({
      id: 'pay.day', value: middle, unit: `${currency} a day`, range, sentence, parts: [ouncesWon, personDays, ...inputs], assumed, cautions,
      method: method([
        ...middleWorking(base, currency),
        `panels are picked when they are expected to carry ${figure(marginal * gramsPerOunce, 3)} g/t as worked, which leaves ${money(wage, currency)} a day`, `${outcomes.length} outcomes, each reckoned like the middle case with its own draws, seed ${seed}; their median is ${money(middle, currency)} a day`,
      ]),
    }),
    breakEven: buildAnswer({
      id: 'pay.breakeven', value: breakEven, unit: 'g/t', sentence: `The rock as worked must carry ${gradeWords(breakEven, units)} for the days to cost nothing, ${gradeWords(breakEvenOunces(base, wage) * gramsPerOunce, units)} to leave ${money(wage, currency)} a day.`,
      method: method(['(costs + wage × person-days) / (recovery × price × payable) / tonnes']), parts: inputs, assumed,
    }),
    chance: buildAnswer({
      id: 'pay.chance', value: chance, sentence: `${chanceWords(chance)} a day here beats ${money(wage, currency)}.`.replace(/^./, c => c.toUpperCase()),
      method: method([`${perDay.filter(p => p > wage).length} of ${perDay.length} outcomes`]), assumed, parts: inputs,
    }),
    twenty: Array.from({ length: 20 }, (_, i) => quantile(perDay, (i + 0.5) / 20)),
  }
}

/** The middle case worked through, every term a number. */
function middleWorking(base: PersonDayInput, currency: string): string[] {
  const day = personDay(base)
  const { costs } = base
  const days = day.personDays / base.crew
  const terms = ([
    [costs.once, 1, 'once'], [costs.perWeek, days / base.daysAWeek, 'weeks'], [costs.perDay, days, 'days'],
    [costs.perPersonDay, day.personDays, 'person-days'], [costs.perTonne, base.tonnes, 't'],
  ] as const).filter(([each]) => each > 0).map(([each, times, of]) => of === 'once' ? `${figure(each, 4)} once` : `${figure(each, 3)} × ${figure(times, 3)} ${of}`)
  return [
    `middle case, income: ${figure(base.ounces, 4)} oz × ${figure(base.recovery, 3)} × ${figure(base.price, 4)} × ${figure(base.payable, 3)} = ${figure(day.income, 4)} ${currency}`,
    `middle case, costs: ${terms.length > 0 ? terms.join(' + ') : 'none written down'} = ${figure(day.cost, 4)} ${currency}`,
    `middle case: (${figure(day.income, 4)} − ${figure(day.cost, 4)}) / ${figure(day.personDays, 3)} person-days = ${money(day.perDay, currency)} a day`,
  ]
}

function chanceWords(chance: number): string {
  if (chance < 0.01) return 'less than 1 in 100 that'
  if (chance < 0.025) return 'less than 1 in 20 that'
  return chance > 0.975 ? 'more than 19 in 20 that' : `${Math.round(20 * chance)} in 20 that`
}

const listed = (names: readonly string[]) => names.length <= 8 ? names.join(', ') : `${names.slice(0, 8).join(', ')} and ${names.length - 8} more`

/** Each input at its low and its high, the rest in the middle, most telling first. */
function driversOf(base: PersonDayInput, spreads: Readonly<Record<string, Spread>>, plan: Plan, grade: Grade): Driver[] {
  const ounces = rangeOf(plan.ounces)
  const of = (name: string, unit: string, key: keyof PersonDayInput, spread: Pick<Spread, 'low' | 'high' | 'answer'>): Driver => ({
    name, unit, low: spread.low, high: spread.high, answer: spread.answer,
    payAtLow: personDay({ ...base, [key]: spread.low }).perDay, payAtHigh: personDay({ ...base, [key]: spread.high }).perDay,
  })
  return [
    of('gold in the panels', 'oz', 'ounces', { low: ounces.low, high: ounces.high, answer: grade.ounces }),
    of('gold recovery', 'of the gold', 'recovery', spreads.recovery!), of('price', 'an ounce', 'price', spreads.price!), of('breaking', 't a person-day', 'breaking', spreads.breaking!),
    of('mucking and tramming', 't a person-day', 'moving', spreads.moving!), of('crushing and washing', 't a person-day', 'treating', spreads.treating!),
    of('other work', 'of the days', 'otherShare', spreads.otherShare!), of('refiner\'s terms', 'of the value', 'payable', spreads.payable!),
  ].sort((a, b) => Math.abs(b.payAtHigh - b.payAtLow) - Math.abs(a.payAtHigh - a.payAtLow))
}
