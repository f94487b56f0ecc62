import type { Making } from '../making.ts'
import { timeOn } from '../write/clock.ts'
import { moss } from '../write/crew.ts'

const assumed = 'A round figure assumed for this invented book; not a quotation.'
const costs: readonly (readonly [item: string, amount: string, per: string, sort: string, paid: string])[] = [
  ['food and small gear', '$18.00', 'person-day', 'consumables', '2026-05-30'], ['fuel for the crusher', '$9.00', 'day', 'consumables', '2026-08-15'], ['drill steel and wedges', '$3.50', 'person-day', 'consumables', '2026-08-15'],
  ['driving in and out', '$95.00', 'week', 'travel', '2026-05-30'], ['notice and bond', '$1,400.00', 'once', 'permits and bond', '2026-04-20'], ['hand-fed crusher, second-hand', '$780.00', 'once', 'equipment', '2026-07-02'],
  ['sluice and pans', '$260.00', 'once', 'equipment', '2026-06-20'], ['gas meter hire', '$60.00', 'month', 'equipment', '2026-04-26'], ['timber and nails', '$640.00', 'once', 'consumables', '2026-04-28'],
  ['fire assay', '$38.00', 'assay', 'assays', '2026-08-10'], ['post to the refiner', '$45.00', 'month', 'treatment', '2026-10-05'], ['bits and flux', '$22.00', 'tonne', 'treatment', '2026-09-20'],
]

/** Costs, a gold price taken as an assumption, and the figures that the crew takes as given. */
export function money({ diary }: Making): void {
  costs.forEach(([item, amount, per, sort, paid], i) => diary.write(moss, timeOn('2026-10-06', 19, 3 * i), 'cost', { item, amount, per, sort, paid, note: assumed }))
  diary.write(moss, timeOn('2026-10-06', 20), 'price', { of: 'gold', amount: '$2,400.00', per: 'troy ounce fine', on: '2026-10-01', spread: '16', payable: '97', source: 'assumed', note: assumed })
  diary.write(moss, timeOn('2026-10-06', 20, 5), 'price', { of: 'silver', amount: '$28.00', per: 'troy ounce fine', on: '2026-10-01', spread: '28', payable: '90', source: 'assumed', note: assumed })
  const given: readonly (readonly [name: string, value: number, unit: string, low: number, high: number, why: string])[] = [
    ['minimum width', 0.6, 'm', 0.5, 0.75, 'the narrowest slot Wren can swing a hammer in'],
    ['gold recovery', 0.68, 'of the gold', 0.55, 0.8, 'tails of the trial panned again'],
    ['wage to beat', 150, 'a day', 150, 150, 'what a day on the road crew pays'],
    ['other work share', 0.3, 'of the working days', 0.2, 0.45, 'from the crew\'s diary of the trial'],
  ]
  given.forEach(([name, value, unit, low, high, why], i) => diary.write(moss, timeOn('2026-10-07', 19, 4 * i), 'assumption', {
    name, value: `${value}`, unit, low: `${low}`, high: `${high}`, why, source: 'the crew', note: 'For an invented mine.',
  }))
}
