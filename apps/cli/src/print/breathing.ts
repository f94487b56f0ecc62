import type { Breathing, CrewUnits } from '@lodebook/answers'
import { isAnswer } from '@lodebook/answers'
import { convert } from '@lodebook/reckon/units'
import { cautionsPart, figuresPart, figuresTable, page, under } from './page-parts.ts'
import { sentences } from './problems.ts'

/** How the workings get their air, with the outlook month by month. */
export function breathingPage({ sentence, inside, flow, months, monthsWanted, people, volume, clearing, measured, fans, cautions }: Breathing,
  units: CrewUnits, width: number): string {
  const feet = units.length === 'ft', warm = (c: number) => `${Math.round(feet ? c * 1.8 + 32 : c)}`, air = (q: number) => feet ? `${Math.round(convert(q, 'm3/s', 'cfm') / 10) * 10}` : q.toFixed(2)
  const rows = months.map(m => [m.month, warm(m.low), warm(m.high), air(m.atLow), m.topAtLow, air(m.atHigh), m.topAtHigh, m.turns ? 'stops and turns' : ''])
  const head = ['Month', `low ${feet ? '°F' : '°C'}`, 'high', `${feet ? 'cfm' : 'm3/s'} at low`, 'back', 'at high', 'back', '']
  return page(sentences([sentence], width),
    figuresPart([flow, inside, ...people ? [people] : [], ...volume ? [volume] : [], ...clearing, ...measured, ...fans].filter(a => isAnswer(a)), width),
    under('Month by month, at most, each way', rows.length === 0 ? '' : figuresTable(head, rows, width)), under('What would tell', monthsWanted ? sentences(monthsWanted.wanted.map(w => w.why), width) : ''), cautionsPart(cautions, width))
}
