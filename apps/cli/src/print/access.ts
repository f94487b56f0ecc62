import type { Access, CrewUnits, Opening, Way } from '@lodebook/answers'
import { convert } from '@lodebook/reckon/units'
import { figure, plural } from '@lodebook/answers'
import { cautionsPart, figuresPart, figuresTable, page, under } from './page-parts.ts'
import { sentences } from './problems.ts'
import { table } from './table.ts'

/** What it takes to get in and out properly: the jobs, their tallies, the way in, timber, and what opening the portal up would do. */
export function accessPage(access: Access, units: CrewUnits, width: number): string {
  const jobs = access.jobs.map(job => under(job.name,
    sentences([job.sentence, job.tally.sentence, job.loadMass.sentence, job.heap.sentence, ...job.cautions], width)
    + figuresPart([job.volume, job.loose, job.loads, job.tally.left, job.tally.pace, job.days], width)))
  return page(sentences([access.sentence], width), figuresPart(access.figures.map(f => f.answer), width), ...jobs,
    under('Not measured yet', sentences(access.unsized.map(job => `${job.name}: ${job.why}.`), width)),
    under('The way in', sentences(access.ways.map(way => way.sentence), width)),
    ...access.ways.slice(0, 1).map(way => under(`Low, narrow and steep places of ${way.heading}`, pinchTable(way, units, width))),
    under('Timber', 'notEnough' in access.timber ? sentences([access.timber.sentence], width)
      : sentences([access.timber.sentence], width) + figuresPart([access.timber.sets, access.timber.lagging, access.timber.round], width)),
    'notEnough' in access.opening ? under('Opening up', sentences([access.opening.sentence], width)) : openingPart(access.opening, units, width),
    cautionsPart([...access.cautions, ...('notEnough' in access.opening ? [] : access.opening.cautions)], width))
}

const pinchTable = (way: Way, units: CrewUnits, width: number): string => way.pinches.length === 0 ? 'None.\n'
  : table(way.pinches.map(p => [figure(convert(p.at, 'm', units.length), 3), p.station, p.says]), { width, head: [`${units.length} in`, 'at', ''], sides: ['right', 'left', 'left'] })

const shown = [0, 2, 4, 6, 9, 12]

function openingPart({ heading, cuts }: Opening, units: CrewUnits, width: number): string {
  const loose = units.length === 'ft' ? 'ft3' : 'm3', put = (value: number, from: string, to: string) => figure(convert(value, from, to), 2)
  const rows = cuts.flatMap(({ name, cases }) => shown.flatMap((i) => {
    const one = cases[i]
    return one ? [[i === 0 ? name : '', one.says, put(one.muck.value, 'm3', loose), figure(one.air.value * 1000, 2), put(one.headRoom.value, 'm', units.length), put(one.span.value, 'm', units.length)]] : []
  }))
  const head = ['Cut', 'by', `muck, ${loose.replace('3', '³')}`, 'air, L/s', `head room, ${units.length}`, `span, ${units.length}`]
  return under(`Opening up the portal of ${heading}, ${plural(cuts.length, 'way')}`, figuresTable(head, rows, width))
}
