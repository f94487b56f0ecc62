import type { Associations, Bags, CrewUnits, Finds, SamplePlanning } from '@lodebook/answers'
import { figure, massText, shareText } from '@lodebook/answers'
import { convert } from '@lodebook/reckon/units'
import { cautionsPart, figuresPart, page, under } from './page-parts.ts'
import { sentences } from './problems.ts'
import { table } from './table.ts'

const openShown = 15
const inUnits = (metres: number | undefined, units: CrewUnits): string => metres === undefined ? '' : figure(convert(metres, 'm', units.length), 3)

/** What was found, what is still to be followed up, and what was swept. */
export function findsPage({ sentence, figures, open, targets, finds, sweeps, portal, cautions }: Finds, units: CrewUnits, width: number): string {
  const rows = open.slice(0, openShown).map((id) => {
    const story = targets.find(t => t.entry === id)!, find = finds.find(f => f.entry === id)!
    return [story.mark, inUnits(find.way, units), story.strength === undefined ? '' : String(story.strength), story.state, find.where]
  })
  const swept = sweeps.map(s => [s.says, inUnits(s.length, units), s.result === 'marks found' ? s.marks.join(', ') : s.result])
  return page(sentences([sentence], width), figuresPart(figures, width),
    under(open.length > openShown ? `The ${openShown} of ${open.length} open targets nearest to the portal` : 'Open targets, nearest to the portal first',
      table(rows, { width, head: ['Mark', `${units.length} from ${portal || 'the portal'}`, 'Heard', 'State', 'Where'], sides: ['left', 'right', 'right', 'left', 'left'] })),
    under('Gone over with the detector', table(swept, { width, head: ['Stretch', units.length, 'Heard'], sides: ['left', 'right', 'left'] })), cautionsPart(cautions, width))
}

/** Whether every bag can be accounted for. */
export function bagsPage({ sentence, figures, faults, rolls, cautions }: Bags, _: unknown, width: number): string {
  return page(sentences([sentence], width), figuresPart(figures, width), under('Left open', sentences(faults.map(f => `${f.sentence} ${f.todo}`), width)),
    under('Labels', table(rolls.map(r => [r.name, `${r.used} used`, r.entry === '' ? 'no roll is written' : r.next === '' ? 'used up' : `next ${r.next}, ${r.left} left`]), { width, indent: 2 })),
    cautionsPart(cautions, width))
}

/** How much to take, and how. */
export function samplePlanPage({ sentence, bag, precision, steps, bags, cautions }: SamplePlanning, units: CrewUnits, width: number): string {
  const rows = bags.map(b => [massText(b.mass, units), shareText(b.atBest), shareText(b.asBroken), figure(b.grains, 2), b.none < 0.01 ? 'less than 1 %' : `${figure(b.none * 100, 2)} %`])
  return page(sentences([sentence], width), figuresPart([bag, precision], width), under('How', sentences(steps, width)),
    under('What a bag can tell at best, one standard deviation', table(rows, { width, head: ['Bag', 'cut evenly', 'thrown in as broken', 'grains', 'none at all'], sides: ['right', 'right', 'right', 'right', 'right'] })),
    cautionsPart(cautions, width))
}

/** What goes with gold. */
export const associationsPage = ({ sentence, of, cautions }: Associations, _: unknown, width: number): string =>
  page(sentences([sentence], width), under('All that was asked', sentences(of.map(a => a.sentence), width)), cautionsPart(cautions, width))
