import type { CrewUnits, Openings, SurveyReadings } from '@lodebook/answers'
import { figure, isAnswer, length } from '@lodebook/answers'
import { convert } from '@lodebook/reckon/units'
import { sentences } from './problems.ts'
import { table } from './table.ts'

const lines = (...parts: readonly string[]): string => parts.filter(part => part !== '').join('\n')
const shown = 20

/** The readings that fit worst, and how good each survey turned out. */
export function readingsPage({ sentence, readings, surveys, cautions }: SurveyReadings, units: CrewUnits, width: number): string {
  const worst = [...readings].sort((a, b) => (b.times ?? -1) - (a.times ?? -1)).slice(0, shown)
  const put = (value: number | null, unit: '°' | 'm', digits = 2) => value === null ? 'nothing checks it' : unit === 'm' ? length(value, units, digits) : `${figure(value, digits)}°`
  return lines(sentences([sentence, ...surveys.map(one => one.sentence)], width), `The ${worst.length} that fit worst`, table(
    worst.map(r => [r.of, r.reading, put(r.residual, r.unit), r.times === null ? '' : figure(r.times, 2), r.redundancy === null ? 'left out' : figure(r.redundancy, 2), put(r.detectable, r.unit)]),
    { width, head: ['Shot or tie', 'reading', 'off by', 'times its doubt', 'checked, 0 to 1', 'smallest slip that would show'], sides: ['left', 'left', 'right', 'right', 'right', 'right'] }),
  sentences(cautions, width))
}

/** Volumes of headings and stopes, and the cross section at each station. */
export function openingsPage({ sentence, headings, stopes, sections, cautions }: Openings, units: CrewUnits, width: number): string {
  const area = (value: number) => units.length === 'ft' ? `${figure(convert(value, 'm2', 'ft2'), 3)} ft²` : `${figure(value, 3)} m²`
  return lines(sentences([sentence], width), table([...headings, ...stopes].map(one => isAnswer(one) ? [one.id, one.sentence] : ['', one.sentence]), { width, indent: 2 }),
    'Cross sections', table(sections.map(s => [s.station, area(s.area), s.taped ? 'taped' : 'borrowed from a neighbour', s.hits === 0 ? '' : `${s.hits} sights to the wall`]), { width, indent: 2 }),
    sentences(cautions, width))
}
