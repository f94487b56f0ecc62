import type { CrewUnits, Today } from '@lodebook/answers'
import { length } from '@lodebook/answers'
import { sentences } from './problems.ts'
import { table } from './table.ts'

const under = (heading: string, body: string): string => body === '' ? '' : `${heading}\n${body}`

/** Today at the prompt: as of the last thing written, since a page that is printed has no clock. */
export function todayPage({ sentence, asOf, hazards, leftOpen, air, items, cautions, goings }: Today, units: CrewUnits, width: number): string {
  const far = (distance: number | undefined) => distance === undefined ? 'not placed' : length(distance, units, 2), rows = (body: readonly (readonly string[])[]) => table(body, { width, indent: 2 })
  const stillIn = goings.filter(g => g.out === undefined)
  const airRows = air.places.map((p) => {
    const { latest } = p
    return [far(p.distance), p.name, latest.taken.slice(0, 16).replace('T', ' '), latest.findings[0] ? `${latest.findings[0].substance} ${latest.findings[0].value} ${latest.findings[0].unit}, ${latest.findings[0].section}` : 'nothing outside']
  })
  return [
    sentences([asOf === '' ? sentence : `As of the last thing written, ${asOf.slice(0, 16).replace('T', ' ')}. ${sentence}`], width),
    under('Written as in', rows(stillIn.map(g => [g.people.join(', '), `due ${g.due.slice(0, 16).replace('T', ' ')}`, g.going ?? '']))),
    under('Outside a published limit, worst first', sentences(air.findings.map(f => f.answer.sentence), width)),
    under('Air, last reading at each place', rows(airRows)),
    under('Not read anywhere', air.notRead.length === 0 ? '' : sentences([air.notRead.join(', ')], width)),
    under('Of the meter and the readings', sentences([...new Set(air.places.flatMap(p => [...p.latest.meter, ...p.latest.doubts].map(says => `${p.name}: ${says}`)))].slice(0, 8), width)),
    under('On the way in', rows(hazards.map(h => [far(h.distance), h.sort, h.where, h.state, h.action ?? '']))),
    under('Left open', rows(leftOpen.map(one => [far(one.distance), one.says]))),
    under('The check of this mine', rows(items.map(item => [item.part, item.asks]))),
    under('Take care', sentences(cautions.map(c => `${c.says} (${c.source})`), width)),
  ].filter(part => part !== '').join('\n')
}
