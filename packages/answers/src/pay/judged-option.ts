import { levelReached, ouncesToEarn, surplusOf, workOutcome } from '@lodebook/reckon/pay'
import type { Answer } from '../answer.ts'
import type { Assume } from '../assumptions.ts'
import { buildAnswer, mean, quantile, rangeOf } from '../build-answer.ts'
import { gramsPerOunce } from '../grade/troy.ts'
import type { Grade } from '../shapes.ts'
import { figure, grade as gradeWords, length, money, plain, plural, rock } from '../words.ts'
import type { CrewUnits } from '../words.ts'
import type { OptionBasis, PayBasis } from './basis.ts'
import { cashOf } from './cash.ts'
import { driversOf, middleOf } from './drivers.ts'
import type { MiddleCase } from './drivers.ts'
import type { PayOption } from './shapes.ts'

export interface JudgeContext {
  readonly grade: Grade
  readonly assume: Assume
  readonly units: CrewUnits
  /** What stands before the figures' ids. */
  readonly id: string
  readonly inputs: readonly Answer[]
}

const sort = (values: ArrayLike<number>): Float64Array => Float64Array.from(values).sort()

/** A day's money to the whole unit: what a crew would say. */
export const dayMoney = (amount: number, currency: string): string => money(amount, currency, 0)

export const percent = (chance: number): string => chance < 0.01 ? 'less than 1 %' : chance > 0.99 ? 'more than 99 %' : `${Math.round(100 * chance)} %`

/** One option with all its figures. */
export function judgedOption(option: OptionBasis, basis: PayBasis, context: JudgeContext): PayOption {
  const { wage, currency, draws } = basis
  const { id, units, inputs } = context
  const { outcomes } = option
  const perDay = sort(outcomes.perDay), days = sort(outcomes.personDays), won = sort(outcomes.ouncesWon), surplus = sort(surplusOf(outcomes, wage.value))
  const half = (values: ArrayLike<number>) => quantile(values, 0.5)
  const at = { tonnes: mean(option.tonnes), ounces: half(sort(option.ounces)) }
  const middle = middleOf(option, basis, at)
  const method = (working: readonly string[]) => ({ name: 'Monte Carlo over the grade outcomes, rates, price and costs', page: 'pay', working })
  const gold = buildAnswer({
    id: `${id}.rock`, value: at.ounces, unit: 'ozt', range: rangeOf(option.ounces, ['how much gold is in the ground', 'how much wall comes down with it']), parts: option.parts,
    sentence: `About ${figure(at.ounces, 2)} oz in ${rock(at.tonnes, units)} as worked: ${option.ground}.`,
    method: method([`${option.ounces.length} outcomes of the ground, each broken at least as wide as the slot`]),
  })
  const { drivers, mustBeTrue } = driversOf(option, basis, middle, { gold, units })
  const range = rangeOf(perDay, drivers.slice(0, 3).map(d => d.name))
  const chance = perDay.filter(p => p > wage.value).length / draws
  const all = [gold, ...inputs, option.costAnswer]
  const personDays = buildAnswer({
    id: `${id}.days`, value: half(days), unit: 'person-days', range: rangeOf(days, ['how fast the crew breaks, moves and treats rock', 'other work']), parts: inputs,
    sentence: `About ${figure(half(days), 2)} person-days, or ${figure(half(days) / option.plan.crew, 2)} days for ${plural(option.plan.crew, 'person', 'people')}.`,
    method: method([daysWorking(option, middle, units)]),
  })
  const ouncesWon = buildAnswer({
    id: `${id}.ounces`, value: half(won), unit: 'ozt', range: rangeOf(won, ['how much gold is in the ground', 'recovery']), parts: [gold, basis.shared.recovery.answer],
    sentence: `About ${figure(half(won), 2)} oz in the pan from ${option.ground}.`, method: method([`${figure(at.ounces, 3)} oz in the rock × ${figure(middle.inputs.recovery, 2)} won, in the middle case`]),
  })
  const wonRange = ouncesWon.range!
  const sentence = `${upper(option.name)}: about ${figure(half(days), 2)} person-days, ${figure(half(won), 2)} oz (80 %: ${figure(wonRange.low, 2)} to ${figure(wonRange.high, 2)}), leaves each of you ${dayMoney(half(perDay), currency)} a day (80 %: ${dayMoney(range.low, currency)} to ${dayMoney(range.high, currency)}); chance it beats ${dayMoney(wage.value, currency)} a day: ${percent(chance)}.`
  return {
    name: option.name, entry: option.entry?.id, sentence, ground: option.ground, panels: option.panels.map(i => context.grade.panels[i]!.name),
    personDays, ouncesWon, drivers, mustBeTrue, middleCase: middle.perDay,
    perDay: buildAnswer({
      id: `${id}.day`, value: half(perDay), unit: `${currency} a day`, range, sentence, parts: [ouncesWon, personDays, ...all], assumed: [wage], from: option.entry ? [option.entry.id] : [], cautions: option.cautions,
      method: method([...middleWorking(option, basis, middle), `${draws} outcomes, each reckoned like the middle case with its own draws; half of them leave less than ${dayMoney(half(perDay), currency)} a day`]),
    }),
    ...breakEvens(option, basis, middle, context),
    chance: buildAnswer({
      id: `${id}.chance`, value: chance, sentence: `A day here beats ${dayMoney(wage.value, currency)} in ${percent(chance)} of the outcomes.`, method: method([`${perDay.filter(p => p > wage.value).length} of ${draws} outcomes`]), assumed: [wage], parts: all,
    }),
    surplus: buildAnswer({
      id: `${id}.surplus`, value: option.surplus, unit: currency, range: rangeOf(surplus, drivers.slice(0, 3).map(d => d.name)), assumed: [wage], parts: all,
      sentence: `${dayMoney(Math.abs(option.surplus), currency)} ${option.surplus >= 0 ? 'more' : 'less'}, on average, than the same days at ${dayMoney(wage.value, currency)} elsewhere; the range is that of single outcomes.`,
      method: method(['income − costs − wage to beat × person-days, averaged over all outcomes']),
    }),
    weeks: weeksAnswer(option, days, { id, inputs }),
    twenty: Array.from({ length: 20 }, (_, i) => quantile(perDay, (i + 0.5) / 20)),
    cash: cashOf(option, basis, { id, assume: context.assume, parts: all }),
    cautions: option.cautions,
  }
}

const upper = (text: string) => text.replace(/^./, c => c.toUpperCase())

function weeksAnswer({ plan, season }: OptionBasis, days: Float64Array, { id, inputs }: Pick<JudgeContext, 'id' | 'inputs'>): Answer {
  const weeks = days.map(d => d / plan.crew / plan.shiftsAWeek)
  const value = quantile(weeks, 0.5), over = weeks.filter(w => w > season.value).length / weeks.length
  return buildAnswer({
    id: `${id}.weeks`, value, unit: 'weeks', range: rangeOf(weeks, ['how fast the crew works']), parts: inputs, assumed: [season],
    sentence: `About ${figure(value, 2)} weeks for ${plural(plan.crew, 'person', 'people')} at ${plain(plan.shiftsAWeek)} shifts a week; it outlasts the season of ${plain(season.value)} weeks in ${percent(over)} of the outcomes.`,
    method: { name: 'person-days over people and shifts a week', page: 'pay', working: [`${figure(quantile(days, 0.5), 3)} / ${plan.crew} / ${figure(plan.shiftsAWeek, 2)} = ${figure(value, 3)}`] },
  })
}

function daysWorking({ plan }: OptionBasis, { rock: at, inputs }: MiddleCase, units: CrewUnits): string {
  const terms = plan.steps.filter(s => s !== 'drive' || plan.metres > 0).map((step) => {
    const amount = step === 'drive' ? plan.metres : step === 'muck' || step === 'tram' || step === 'timber' ? at.tonnes + plan.waste : at.tonnes
    const say = step === 'drive' ? length : rock
    return `${step} ${say(amount, units, 3)} / ${say(inputs.rates[step], units, 3)}`
  })
  return `(${terms.join(' + ')}) / (1 − ${figure(inputs.otherShare, 2)})${plan.shift === 1 ? '' : ` / ${figure(plan.shift, 2)} of a day a shift`}`
}

/** The middle case worked through, every term a number. */
function middleWorking({ plan }: OptionBasis, { shared, currency }: PayBasis, { rock: at, inputs, perDay }: MiddleCase): string[] {
  const one = workOutcome(plan, at, inputs, shared.terms), days = one.personDays / plan.crew, { costs } = plan
  const terms = ([
    [costs.once, 1, 'once'], [costs.perWeek, days / plan.shiftsAWeek, 'weeks'], [costs.perDay, days, 'days'], [costs.perPersonDay, one.personDays, 'person-days'], [costs.perTonne, at.tonnes, 't'],
  ] as const).filter(([each]) => each > 0).map(([each, times, of]) => of === 'once' ? `${figure(each, 4)} once` : `${figure(each, 3)} × ${figure(times, 3)} ${of}`)
  const charge = one.ouncesWon > 0 ? Math.max(shared.terms.treatment * one.ouncesWon / shared.terms.fineness, shared.terms.minimum * shared.terms.lots) : 0
  return [
    `middle case, income: ${figure(at.ounces, 4)} oz × ${figure(inputs.recovery, 3)} × ${figure(inputs.price, 4)} × ${figure(inputs.payable, 3)}${shared.terms.royalty > 0 ? ` × (1 − ${figure(shared.terms.royalty, 2)})` : ''}${charge > 0 ? ` − ${figure(charge, 3)} charged` : ''} = ${figure(one.income, 4)} ${currency}`,
    `middle case, costs: ${terms.length > 0 ? terms.join(' + ') : 'none written down'} = ${figure(one.cost, 4)} ${currency}`,
    `middle case: (${figure(one.income, 4)} − ${figure(one.cost, 4)}) / ${figure(one.personDays, 3)} person-days = ${dayMoney(perDay, currency)} a day`,
  ]
}

function breakEvens(option: OptionBasis, basis: PayBasis, { rock: at, inputs }: MiddleCase, { id, units, grade, assume }: JudgeContext): Pick<PayOption, 'breakEven' | 'breakEvenWidth'> {
  const { wage, currency, shared } = basis
  const needed = (toEarn: number, tonnes = at.tonnes) => ouncesToEarn(option.plan, tonnes, inputs, { terms: shared.terms, wage: toEarn })
  const asGrade = (ounces: number) => at.tonnes > 0 ? ounces * gramsPerOunce / at.tonnes : Infinity
  const [nothing, enough] = [asGrade(needed(0)), asGrade(needed(wage.value))]
  const say = (value: number) => Number.isFinite(value) ? gradeWords(value, units) : 'more than any rock'
  const breakEven = buildAnswer({
    id: `${id}.breakeven`, value: nothing, unit: 'g/t', sentence: `The rock as worked must carry ${say(nothing)} for the days to cost nothing, ${say(enough)} to leave ${dayMoney(wage.value, currency)} a day; it is thought to carry ${say(asGrade(at.ounces))}.`,
    method: { name: 'what the rock must carry', page: 'break-even-grade', working: ['(costs + wage × person-days + charges) / (recovery × price × payable × (1 − royalty)) / rock'] }, parts: [basis.shared.recovery.answer, basis.shared.price.answer, option.costAnswer], assumed: [wage],
  })
  if (option.panels.length === 0 || option.heap || option.metres > 0) return { breakEven, breakEvenWidth: undefined }
  // The same ground with its grade over the vein's own width, the vein narrower or wider and the slot as it is.
  const panels = option.panels.map(i => grade.outcomes.panels[i]!)
  const area = panels.reduce((sum, p) => sum + p.area, 0), density = mean(grade.outcomes.density)
  const width = panels.reduce((sum, p) => sum + p.area * mean(p.width), 0) / area
  const slot = assume('minimum width'), wall = assume('wall density').value
  const ouncesAt = (w: number) => at.ounces * w / width
  const tonnesAt = (w: number) => area * (w * density + Math.max(0, slot.value - w) * wall)
  const narrowest = levelReached(w => ouncesAt(w) - needed(wage.value, tonnesAt(w)), 0, width / 50, width * 20)
  return {
    breakEven,
    breakEvenWidth: narrowest === undefined ? undefined : buildAnswer({
      id: `${id}.narrowest`, value: narrowest, unit: 'm', parts: [grade.width, breakEven], assumed: [slot, wage],
      sentence: `At the grade that it has, the vein must be ${length(narrowest, units)} wide to leave ${dayMoney(wage.value, currency)} a day; it is thought to be ${length(width, units)}.`,
      method: { name: 'what the rock must carry, over widths', page: 'break-even-grade', working: [`ounces grow with the width, rock is broken at least ${length(slot.value, units)} wide; bisection`] },
    }),
  }
}
