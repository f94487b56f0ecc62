import type { Entry } from '@lodebook/book'
import type { WorkCosts } from '@lodebook/reckon/pay'
import type { Answer } from '../answer.ts'
import { buildAnswer } from '../build-answer.ts'
import { moneyOf, numberOf, textOf } from '../read.ts'
import { money, plural } from '../words.ts'

export interface CostSheet { readonly costs: WorkCosts, readonly answer: Answer }

const weeksAMonth = 365.25 / 12 / 7

export interface CostInput {
  readonly entries: readonly Entry[]
  readonly currency: string
  /** The option that is costed; undefined for one that the crew did not write. */
  readonly option: Entry | undefined
  /** What one load holds, t, from the work log; undefined when no load was ever logged. */
  readonly loadTonnes: number | undefined
  readonly id: string
}

/**
 * What an option costs, by what each cost goes with: the costs of the book that go with every option or name this one, and the option's own.
 *
 * What was paid once and has a date of payment is gone whichever option is chosen, so it is named and left out, as is a cost in another currency.
 */
export function costSheet({ entries, currency, option, loadTonnes, id }: CostInput): CostSheet {
  const sum = { once: 0, perPersonDay: 0, perDay: 0, perWeek: 0, perTonne: 0 }
  const used: string[] = []
  const left = { otherCurrency: [] as string[], notCounted: [] as string[], paid: [] as string[] }
  let paid = 0
  const name = option && textOf(option, 'name')
  for (const entry of entries) {
    const amount = moneyOf(entry, 'amount'), item = textOf(entry, 'item') ?? '', only = textOf(entry, 'option')
    if (!amount || (only !== undefined && only.trim().toLowerCase() !== name?.trim().toLowerCase())) continue
    if (amount.currency !== currency) { left.otherCurrency.push(item); continue }
    const per = textOf(entry, 'per')
    if (per === 'once' && textOf(entry, 'paid') !== undefined) { paid += amount.amount; left.paid.push(entry.id); continue }
    const key = per === 'once' ? 'once' : per === 'person-day' ? 'perPersonDay' : per === 'day' ? 'perDay' : per === 'week' || per === 'month' ? 'perWeek' : per === 'tonne' || per === 'load' ? 'perTonne' : 'once'
    const times = per === 'month' ? 1 / weeksAMonth : per === 'load' ? loadTonnes && 1 / loadTonnes : per === 'assay' ? option && numberOf(option, 'assays') : 1
    if (times === undefined) { left.notCounted.push(`${item} (each ${per ?? ''})`); continue }
    sum[key] += amount.amount * times
    used.push(entry.id)
  }
  for (const [field, key] of [['once', 'once'], ['eachDay', 'perPersonDay']] as const) {
    const own = option && moneyOf(option, field)
    if (!own) continue
    if (own.currency !== currency) { left.otherCurrency.push(`${name ?? ''}: its own costs`); continue }
    sum[key] += own.amount
    used.push(option.id)
  }
  const words = [
    sum.once > 0 && `${money(sum.once, currency)} once`, sum.perWeek > 0 && `${money(sum.perWeek, currency)} a week`, sum.perDay > 0 && `${money(sum.perDay, currency)} a day`,
    sum.perPersonDay > 0 && `${money(sum.perPersonDay, currency)} a person-day`, sum.perTonne > 0 && `${money(sum.perTonne, currency)} a tonne`,
  ].filter(Boolean).join(', ')
  return {
    costs: sum,
    answer: buildAnswer({
      id, value: sum.once, unit: currency, sentence: used.length === 0 ? 'No costs to come are written down.' : `${plural(used.length, 'cost')} to come: ${words}.`,
      method: { name: 'sum by what each goes with', page: 'pay', working: [words || 'none', ...(paid > 0 ? [`${money(paid, currency)} already paid once, the same whichever is chosen: left out`] : [])] },
      from: [...used, ...left.paid],
      cautions: [
        ...(paid > 0 ? [`${money(paid, currency)} that was paid once already is left out: it is gone whatever you choose.`] : []),
        ...(left.otherCurrency.length > 0 ? [`Not counted, in another currency: ${left.otherCurrency.join(', ')}.`] : []),
        ...(left.notCounted.length > 0 ? [`Not counted, since the option does not say how many: ${left.notCounted.join(', ')}.`] : []),
        ...(used.length === 0 ? ['Without costs the pay is too high.'] : []),
      ],
    }),
  }
}
