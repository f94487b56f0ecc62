import type { Next, NextLook } from '@lodebook/answers'
import { figure, plain } from '@lodebook/answers'
import { cautionsPart, figuresPart, page, under } from './page-parts.ts'
import { sentences } from './problems.ts'
import { table } from './table.ts'

const shown = 12

/** Next: where to look, what each look would cost and be worth, what to take together, and where the estimate is blind. */
export function nextPage({ sentence, currency, certainty, looks, batch, blind, choice, cautions }: Next, _: unknown, width: number): string {
  return page(sentences([sentence], width), under('The choice, the best now first', sentences([`${choice.join('; ')}.`], width)),
    under(`Looks, ${currency}`, looksTable(looks.slice(0, shown), width)),
    under('Taken together, each with what it adds given those before it', table(batch.map(({ look, adds }) => [`${look.rank}`, whole(adds), `${look.does}: ${look.where}`]), { width, indent: 2, sides: ['right', 'right', 'left'] })),
    under('Where the estimate is blind', sentences(blind.map(b => b.sentence), width)), figuresPart([certainty], width), cautionsPart(cautions, width))
}

const whole = (value: number): string => plain(Math.round(value))

const looksTable = (looks: readonly NextLook[], width: number): string => table(
  looks.map(l => [`${l.rank}`, whole(l.worth.value), whole(l.cost), whole(l.perHour), figure(l.perMoney, 2), `${l.does}: ${l.where}`]),
  { width, indent: 2, head: ['', 'worth', 'cost', 'an hour', 'a unit', 'what and where'], sides: ['right', 'right', 'right', 'right', 'right', 'left'] })
