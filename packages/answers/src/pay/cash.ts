import { cashLine, cashWeeks, deepestHole, hoskoldYears, netPresentValue, rateOfReturn, weeklyFlows } from '@lodebook/reckon/pay'
import type { Answer } from '../answer.ts'
import type { Assume } from '../assumptions.ts'
import { buildAnswer, mean, quantile, rangeOf } from '../build-answer.ts'
import { figure, money, plain, plural } from '../words.ts'
import type { OptionBasis, PayBasis } from './basis.ts'
import type { CashOverWeeks } from './shapes.ts'

/** Cases followed week by week: deciles of so many are good to a fiftieth of their rank. */
const followed = 400
const weeksAYear = 365.25 / 7
/** A line longer than this is not followed further, weeks. */
const longest = 520

export interface CashContext { readonly id: string, readonly assume: Assume, readonly parts: readonly Answer<unknown>[] }

/** Money in hand over the weeks of one option, and what it is worth now. */
export function cashOf(option: OptionBasis, { shared, draws, currency }: PayBasis, { id, assume, parts }: CashContext): CashOverWeeks {
  const { plan, outcomes } = option
  const delay = assume('weeks until paid')
  const rate = assume('discount rate')
  const step = Math.max(1, Math.floor(draws / followed))
  const cases = Array.from({ length: Math.min(followed, draws) }, (_, i) => {
    const k = i * step, weeks = outcomes.personDays[k]! / plan.crew / plan.shiftsAWeek
    const { once } = plan.costs
    return { weeks, once, running: outcomes.cost[k]! - once, income: outcomes.income[k]!, lots: shared.terms.lots, delay: delay.value }
  })
  const ends = cases.map(cashWeeks).sort((a, b) => a - b)
  const last = Math.min(longest, quantile(ends, 0.95))
  const lines = cases.map(one => cashLine(one, Math.min(longest, ends.at(-1)!)))
  const shown = Array.from({ length: Math.ceil(last) + 1 }, (_, week) => week)
  const at = (week: number) => Float64Array.from(lines, line => line[Math.min(week, line.length - 1)]!).sort()
  const sorted = shown.map(at)
  const holes = lines.map(deepestHole)
  const weekly = (1 + rate.value / 100) ** (1 / weeksAYear) - 1
  const values = lines.map(line => netPresentValue(weekly, weeklyFlows(line)))
  const longestLine = Math.max(...lines.map(l => l.length))
  const meanLine = Float64Array.from({ length: longestLine }, (_, week) => mean(lines.map(line => line[Math.min(week, line.length - 1)]!)))
  const back = rateOfReturn(weeklyFlows(meanLine))
  const yearly = back.rate === null ? undefined : 100 * ((1 + back.rate) ** weeksAYear - 1)
  const value = quantile(Float64Array.from(values).sort(), 0.5)
  const hole = quantile(Float64Array.from(holes).sort(), 0.5)
  const method = (working: readonly string[]) => ({ name: 'money in hand week by week', page: 'pay', working })
  return {
    weeks: shown, low: sorted.map(v => quantile(v, 0.1)), middle: sorted.map(v => quantile(v, 0.5)), high: sorted.map(v => quantile(v, 0.9)),
    deepest: buildAnswer({
      id: `${id}.deepest`, value: hole, unit: currency, range: rangeOf(holes, ['how long the work takes', 'when the first gold is paid']), parts, assumed: [delay],
      sentence: hole > 0 ? `${money(hole, currency)} has to be found before the gold pays it back, your own food and days not counted beyond what is written as costs.` : 'No money has to be found beforehand.',
      method: method([`what is bought once at the start, the rest evenly over the weeks; ${plural(shared.terms.lots, 'lot')} sent as the work goes on, each paid ${plain(delay.value)} weeks later`, `${cases.length} cases followed`]),
    }),
    presentValue: buildAnswer({
      id: `${id}.now`, value, unit: currency, range: rangeOf(values, ['the gold in the ground', 'how long the work takes']), parts, assumed: [rate, delay],
      sentence: `Worth ${money(value, currency)} now at ${plain(rate.value)} % a year, wages not counted. ${backWords(yearly, back.reason)}${hoskoldWords(option, assume, currency)}`,
      method: method([`Σ flow / (1 + ${(100 * weekly).toFixed(3)} %) ^ week over ${cases.length} cases`, 'the rate of return is that of the average of the cases']),
      sources: ['H. C. Hoover, Principles of Mining, 1909, table II (present value) and III (redemption, after H. D. Hoskold)'],
    }),
  }
}

function backWords(yearly: number | undefined, reason: string | undefined): string {
  if (yearly === undefined) return `No rate of return can be named: ${reason ?? 'nothing is put in'}.`
  if (yearly < 0) return 'What is put in does not all come back, on average.'
  if (yearly > 1000) return 'So little is put in beforehand that a rate of return says nothing.'
  return `What is put in comes back at ${figure(yearly, 2)} % a year on average.`
}

/** How many such years would give back the asking price, when there is one. */
function hoskoldWords({ outcomes, season, plan }: OptionBasis, assume: Assume, currency: string): string {
  const [price, rate, low] = [assume('asking price'), assume('discount rate'), assume('safe rate')]
  if (!(price.value > 0)) return ''
  const weeks = mean(outcomes.personDays) / plan.crew / plan.shiftsAWeek
  const income = (mean(outcomes.income) - mean(outcomes.cost)) * Math.min(1, season.value / Math.max(weeks, 1e-9))
  if (!(income > 0)) return ` At ${money(price.value, currency)} asked for the ground nothing of it is ever given back.`
  const years = hoskoldYears(100 * income / price.value, rate.value, low.value)
  return years === null ? ` A season's ${money(income, currency)} does not bring ${figure(rate.value, 3)} % on the ${money(price.value, currency)} asked.`
    : ` A season's ${money(income, currency)} must come for ${figure(years, 2)} years to give back the ${money(price.value, currency)} asked, at ${figure(rate.value, 3)} % with ${figure(low.value, 2)} % on what is put by.`
}
