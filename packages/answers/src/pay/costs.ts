import type { Entry } from '@lodebook/book'
import type { Costs } from '@lodebook/reckon/pay'
import type { Answer } from '../answer.ts'
import { buildAnswer } from '../build-answer.ts'
import { moneyOf, textOf } from '../read.ts'
import { money, plural } from '../words.ts'

export interface CostSheet { readonly costs: Costs, readonly answer: Answer, readonly otherCurrency: readonly string[], readonly notCounted: readonly string[] }

const weeksAMonth = 365.25 / 12 / 7

/**
 * What the book's costs come to, by what they go with. A cost each assay or each load is not counted: a plan of work does not say how many.
 * A cost in another currency is not counted and is named.
 */
export function costSheet(entries: readonly Entry[], currency: string): CostSheet {
  const sum = { once: 0, perPersonDay: 0, perDay: 0, perWeek: 0, perTonne: 0 }
  const used: string[] = []
  const otherCurrency: string[] = []
  const notCounted: string[] = []
  for (const entry of entries) {
    const amount = moneyOf(entry, 'amount')
    if (!amount) continue
    if (amount.currency !== currency) { otherCurrency.push(textOf(entry, 'item') ?? ''); continue }
    const per = textOf(entry, 'per')
    if (per === 'once') sum.once += amount.amount
    else if (per === 'person-day') sum.perPersonDay += amount.amount
    else if (per === 'day') sum.perDay += amount.amount
    else if (per === 'week') sum.perWeek += amount.amount
    else if (per === 'month') sum.perWeek += amount.amount / weeksAMonth
    else if (per === 'tonne') sum.perTonne += amount.amount
    else { notCounted.push(`${textOf(entry, 'item') ?? ''} (each ${per ?? ''})`); continue }
    used.push(entry.id)
  }
  const words = [
    sum.once > 0 && `${money(sum.once, currency)} once`, sum.perWeek > 0 && `${money(sum.perWeek, currency)} a week`, sum.perDay > 0 && `${money(sum.perDay, currency)} a day`,
    sum.perPersonDay > 0 && `${money(sum.perPersonDay, currency)} a person-day`, sum.perTonne > 0 && `${money(sum.perTonne, currency)} a tonne`,
  ].filter(Boolean).join(', ')
  return {
    costs: sum, otherCurrency, notCounted,
    answer: buildAnswer({
      id: 'pay.costs', value: sum.once, unit: currency, sentence: used.length === 0 ? 'No costs are written down.' : `${plural(used.length, 'cost')}: ${words}.`,
      method: { name: 'sum by what each goes with', page: 'pay', working: [words || 'none'] }, from: used,
      cautions: [
        ...(otherCurrency.length > 0 ? [`Not counted, in another currency: ${otherCurrency.join(', ')}.`] : []),
        ...(notCounted.length > 0 ? [`Not counted, since the plan does not say how many: ${notCounted.join(', ')}.`] : []),
        ...(used.length === 0 ? ['Without costs the pay is too high.'] : []),
      ],
    }),
  }
}
