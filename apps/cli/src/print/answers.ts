import type { Answer, CrewUnits, Grade, LostPart, NotEnough, PartName, Reckoned, SecondLook, VeinAt, Workings } from '@lodebook/answers'
import { figure, length, notEnough, plural } from '@lodebook/answers'
import { kinds } from '@lodebook/book'
import { convert } from '@lodebook/reckon/units'
import { accessPage } from './access.ts'
import { associationsPage, bagsPage, findsPage, samplePlanPage } from './finds.ts'
import { gradeStudyPage } from './grade-study.ts'
import { heapsPage } from './heaps.ts'
import { labPage } from './lab.ts'
import { cautionsPart, figuresPart, figuresTable, page, short, under } from './page-parts.ts'
import { openingsPage, readingsPage } from './survey.ts'
import { nextPage } from './next.ts'
import { payPage } from './pay.ts'
import { sentences } from './problems.ts'
import { table } from './table.ts'
import { veinSheetPage } from './vein.ts'
import { breathingPage } from './breathing.ts'
import { groundPage } from './ground.ts'
import { todayPage } from './today.ts'

type Page<P extends PartName> = (said: Exclude<Reckoned[P], NotEnough>, units: CrewUnits, width: number) => string

const pages: { readonly [P in PartName]: Page<P> } = {
  today: todayPage, breathing: breathingPage, ground: groundPage,
  access: accessPage,
  workings: workingsPage, readings: readingsPage, openings: openingsPage,
  vein: veinPage, veinSheet: veinSheetPage, lostPart: lostPartPage,
  finds: findsPage, bags: bagsPage, samplePlan: samplePlanPage, associations: associationsPage,
  lab: labPage,
  grade: gradePage, gradeStudy: gradeStudyPage, heaps: heapsPage,
  pay: payPage, next: nextPage,
  secondLooks: (looks, _, width) => secondLooksPart(looks, width),
}

/** Every part of the answers, in the order in which it is read. */
export const parts = Object.keys(pages) as readonly PartName[]

/** What a part of the answers says, as a page of 80 columns or more: its sentence, its figures by name, what matters, what to take care of. */
export function partPage<P extends PartName>(part: P, said: Reckoned[P], units: CrewUnits, width: number): string {
  const one: object = said, whole: unknown = said // the compiler does not follow so many parts at once
  return notEnough(one) ? notEnoughPage(one, width) : pages[part](whole as Exclude<Reckoned[P], NotEnough>, units, width)
}

export function notEnoughPage({ sentence, wanted, cautions }: NotEnough, width: number): string {
  return page(sentences([sentence], width), under('What would tell', table(wanted.map(({ kind, why }) => [kind, why]), { width, indent: 2 })), cautionsPart(cautions, width))
}

function workingsPage({ sentence, figures, suspects, notPlaced, cautions }: Workings, _: unknown, width: number): string {
  const byKind = [...new Set(notPlaced.map(one => one.kind))].map((kind) => {
    const count = notPlaced.filter(one => one.kind === kind).length
    return plural(count, kinds[kind]?.label.toLowerCase() ?? kind, kinds[kind]?.plural.toLowerCase())
  })
  return page(sentences([sentence], width), figuresPart(figures, width), under('Look again', sentences(suspects.map(suspect => suspect.sentence), width)),
    under('Not placed yet', notPlaced.length === 0 ? '' : sentences([`${byKind.join(', ')}. The first is ${notPlaced[0]!.title}: ${notPlaced[0]!.why}.`], width)),
    cautionsPart(cautions, width))
}

function veinPage({ name, strike, dip, width: thickness, fault, widths, rms }: VeinAt, units: CrewUnits, width: number): string {
  return page(sentences([`${name}, with ${plural(widths.length, 'true width')}; its contacts lie ${length(rms, units, 2)} from one plane (root mean square).`], width),
    figuresPart([strike, dip, thickness, ...fault ? [fault.strike, fault.dip] : []], width))
}

function lostPartPage({ sentence, apart, heading, wanted, evidence, cautions }: LostPart, _: unknown, width: number): string {
  return page(sentences([sentence], width), figuresPart([apart, 'notEnough' in heading ? heading : heading.length, ...evidence], width),
    under('What would tell more', table(wanted.map(({ kind, why }) => [kind, why]), { width, indent: 2 })), cautionsPart(cautions, width))
}

const panelsShown = 12

function gradePage({ sentence, ounces, tonnes, grade, width: thickness, audit, panels, cautions }: Grade, units: CrewUnits, width: number): string {
  const best = [...panels].sort((a, b) => b.ounces - a.ounces).slice(0, panelsShown)
  const put = (value: number, from: string, to: string) => figure(convert(value, from, to), 2)
  const rows = best.map(panel => [
    panel.name, put(panel.tonnes, 't', units.rock), put(panel.width, 'm', units.length), put(panel.grade, 'g/t', units.grade), figure(panel.ounces, 2),
    `${figure(panel.low, 2)} to ${figure(panel.high, 2)}`, put(panel.nearest, 'm', units.length),
  ])
  const head = ['Panel', short[units.rock] ?? units.rock, `${units.length} wide`, short[units.grade] ?? units.grade, 'oz', '80 %, oz', `${units.length} to a sample`]
  return page(sentences([sentence], width), figuresPart([ounces, tonnes, grade, thickness, audit], width),
    under(panels.length > best.length ? `The ${best.length} of ${panels.length} panels with most gold` : 'Panels', figuresTable(head, rows, width)), cautionsPart(cautions, width))
}

/** What does not fit the rest, each with what to do about it. */
export const secondLooksPart = (looks: readonly SecondLook[], width: number): string =>
  under('Look again', sentences(looks.map(({ sentence, todo }) => `${sentence} ${todo}`), width))

/** One figure opened: its sentence, its range, the method with its numbers, the sources, what was taken as given, the entries, the parts. */
export function openedPage(answer: Answer<unknown>, titleOf: (entry: string) => string, width: number): string {
  const { sentence, range, unit, value, method, sources, assumed, from, parts, cautions } = answer
  const percent = range ? `${Math.round(range.confidence * 100)} %` : ''
  const rows = [
    ...typeof value === 'number' ? [['Value', `${figure(value, 4)}${unit === undefined ? '' : ` ${unit}`}`]] : [],
    ...range ? [['Range', `${percent} between ${figure(range.low)} and ${figure(range.high)}${range.because?.length ? `: ${range.because.join('; ')}` : ''}`]] : [],
    ['Method', `${method.name} (docs/methods/${method.page.replace(/^docs\/methods\//, '').replace(/\.md$/, '')}.md)`],
  ]
  return page(sentences([sentence], width), table(rows, { width, indent: 2 }), under('Working', sentences(method.working ?? [], width)),
    under('Sources', sentences(sources, width)),
    under('Taken as given', table(assumed.map(one => [one.name, `${one.value} ${one.unit ?? ''}`.trim(), one.why]), { width, indent: 2 })),
    under('Entries', table(from.map(entry => [titleOf(entry), entry]), { width, indent: 2 })), under('Made of', figuresPart(parts, width)), cautionsPart(cautions, width))
}
