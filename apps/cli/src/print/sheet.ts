import type { Openings, Workings } from '@lodebook/answers'
import { createReckoner, developedView, planView, sectionView } from '@lodebook/answers'
import type { Book } from '@lodebook/book'
import { crossSectionSheet, mineSheet } from '@lodebook/paper/sheet'
import { refuse } from '../refusal.ts'

/** What a drawing is asked for with, as typed. */
export interface SheetOptions { readonly sheet?: string, readonly scale?: string, readonly along?: string, readonly at?: string, readonly ellipses?: true }

const views = ['plan', 'long-section', 'developed', 'cross-section'] as const

/** A drawing of the workings as an SVG in true millimetres on A4 laid across. */
export function sheetOf(book: Book, options: SheetOptions): string {
  const asked = views.find(view => view === options.sheet)
  if (!asked) throw refuse('--sheet', options.sheet, `one of ${views.join(', ')}`)
  const reckoner = createReckoner(book), workings = reckoner.answer('workings')
  if ('notEnough' in workings) throw refuse('--sheet', options.sheet, workings.sentence)
  const scale = options.scale === undefined ? undefined : Number(options.scale)
  if (scale !== undefined && !(scale >= 1 && Number.isFinite(scale))) throw refuse('--scale', options.scale, 'a number such as 250, for one to 250')
  const words = { ...wordsOf(book), ...scale === undefined ? {} : { scale } }
  if (asked === 'cross-section') return crossSectionSheet(sectionAt(reckoner.answer('openings'), options.at), { ...words, datum: workings.datum }).svg
  return mineSheet({ workings, view: viewOf(asked, workings, reckoner.answer('vein'), options), ...words, ...options.ellipses ? { ellipses: true } : {} }).svg
}

function viewOf(asked: 'plan' | 'long-section' | 'developed', workings: Workings, vein: object, { along, at }: SheetOptions) {
  if (asked === 'plan') return planView()
  if (asked === 'developed') {
    const heading = workings.headings.find(one => one.name === at), points = new Map(workings.stations.map(s => [s.name, s.point]))
    if (!heading) throw refuse('--at', at, `a heading: ${workings.headings.map(one => one.name).join(', ')}`)
    return developedView(heading.name, heading.stations.map(name => points.get(name)!))
  }
  const azimuth = along === undefined ? undefined : Number(along)
  if (azimuth !== undefined && !(azimuth >= 0 && azimuth <= 360)) throw refuse('--along', along, 'an azimuth from 0 to 360')
  return sectionView(azimuth ?? ('strike' in vein ? (vein as { readonly strike: { readonly value: number } }).strike.value : 90))
}

function sectionAt(openings: Openings | { readonly notEnough: true, readonly sentence: string }, at: string | undefined) {
  if ('notEnough' in openings) throw refuse('--sheet', 'cross-section', openings.sentence)
  const found = openings.sections.find(section => section.station === at)
  if (!found) throw refuse('--at', at, `a station of a heading: ${[...new Set(openings.sections.map(section => section.station))].slice(0, 12).join(', ')} …`)
  return found
}

/** Whose mine, surveyed when and by whom, in which unit. */
function wordsOf(book: Book) {
  const mine = book.of('mine').at(-1)?.fields ?? {}, shots = book.of('shot')
  const dates = shots.flatMap(({ fields }) => typeof fields['taken'] === 'string' ? [fields['taken']] : []).sort()
  const people = new Set(shots.flatMap(({ fields }) => (fields['surveyors'] as readonly string[] | undefined) ?? []))
  return {
    title: typeof mine['name'] === 'string' ? mine['name'] : 'Workings', surveyors: [...people].join(', '), unit: mine['units'] === 'feet and oz/ton' ? 'ft' as const : 'm' as const,
    date: dates.length === 0 ? '' : dates[0] === dates.at(-1) ? dates[0]! : `${dates[0]!} to ${dates.at(-1)!}`,
  }
}
