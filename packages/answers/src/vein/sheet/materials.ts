import type { Entry } from '@lodebook/book'
import type { Answer, AnswerOr } from '../../answer.ts'
import { buildAnswer, mean, quantile } from '../../build-answer.ts'
import { textOf, valueOf, wordsOf } from '../../read.ts'
import type { VeinAt } from '../../shapes.ts'
import { length, plural } from '../../words.ts'
import type { CrewUnits } from '../../words.ts'
import type { MaterialSeen } from '../shapes.ts'
import type { Sited } from '../vein-data.ts'
import type { VeinFound } from '../vein.ts'
import { between } from './on-stations.ts'

const wordsAt = (entry: Entry): readonly string[] =>
  [...new Set([...wordsOf(entry, 'materials'), ...(entry.kind === 'structure' ? wordsOf(entry, 'infill') : [])].map(w => w.trim().toLowerCase()).filter(w => w !== ''))]

/**
 * What the crew named on the vein, in its own words, and where: from widths, samples and readings of the vein.
 * @param seen  entries on this vein, this side of the fault
 */
export function materialsOf({ frame, at }: VeinFound, seen: readonly Sited[], units: CrewUnits): readonly MaterialSeen[] {
  const named = seen.filter(s => wordsAt(s.entry).length > 0)
  const byWord = new Map<string, Sited[]>()
  for (const s of named) for (const word of wordsAt(s.entry)) byWord.set(word, [...byWord.get(word) ?? [], s])
  const widthOf = new Map(at.widths.map(w => [w.entry, w.width]))
  return [...byWord].map(([word, where]): MaterialSeen => {
    const places = where.map((s) => { const { along, down } = frame.toVein(s.located.point); return { entry: s.entry.id, at: { along, down } } })
    return { word, at: places, answer: materialAnswer(word, where, { places, of: named.length, widthOf, stations: at.stations, units }) }
  }).sort((a, b) => b.at.length - a.at.length || (a.word < b.word ? -1 : 1))
}

interface Around {
  readonly places: MaterialSeen['at']
  readonly of: number
  readonly widthOf: ReadonlyMap<string, number>
  readonly stations: VeinAt['stations']
  readonly units: CrewUnits
}

function materialAnswer(word: string, where: readonly Sited[], { places, of, widthOf, stations, units }: Around): Answer {
  const along = places.map(p => p.at.along).sort((a, b) => a - b)
  const widths = where.flatMap((s) => { const w = widthOf.get(s.entry.id); return w === undefined ? [] : [w] })
  const thick = widths.length === 0 ? '' : `; true width there ${length(mean(widths), units, 2)} on average over ${plural(widths.length, 'place')}`
  const stretch = between(stations, quantile(along, 0.1), quantile(along, 0.9))
  return buildAnswer({
    id: `vein.material.${word}`, value: 100 * where.length / of, unit: '%',
    sentence: `${word[0]!.toUpperCase()}${word.slice(1)} is named at ${where.length} of ${of} places${stretch === '' ? '' : `, mostly ${stretch}`}${thick}.`,
    method: { name: 'counted as written', page: 'vein-width-along' }, from: where.map(s => s.entry.id),
  })
}

/** Clay gouge taped on its own. */
export function gougeOf(seen: readonly Sited[], units: CrewUnits): AnswerOr {
  const taped = seen.flatMap((s) => { const v = valueOf(s.entry, 'gouge'); return v === undefined || v === 0 ? [] : [{ id: s.entry.id, v }] })
  if (taped.length === 0) return { notEnough: true, sentence: 'No clay gouge has been taped on its own.', wanted: [{ kind: 'width', why: 'gouge is soft, often rich, and parts the vein from its wall: tape it with the width' }], cautions: [] }
  const sorted = taped.map(t => t.v).sort((a, b) => a - b)
  return buildAnswer({
    id: 'vein.gouge', value: mean(sorted), unit: 'm', sentence: `Clay gouge was taped at ${plural(taped.length, 'place')}, ${length(mean(sorted), units, 2)} on average, ${length(sorted.at(-1)!, units, 2)} at most.`,
    method: { name: 'plain mean as taped', page: 'vein-width-along' }, from: taped.map(t => t.id),
  })
}

/** Hanging wall and footwall rock by name, the commonest first. */
export function wallsOf(seen: readonly Sited[]): readonly Answer<string>[] {
  return (['hangingWall', 'footwall'] as const).flatMap((field): Answer<string>[] => {
    const named = seen.filter(s => textOf(s.entry, field) !== undefined)
    if (named.length === 0) return []
    const counts = new Map<string, number>()
    for (const s of named) { const rock = textOf(s.entry, field)!.trim().toLowerCase(); counts.set(rock, (counts.get(rock) ?? 0) + 1) }
    const rocks = [...counts].sort((a, b) => b[1] - a[1])
    const wall = field === 'footwall' ? 'footwall' : 'hanging wall'
    return [buildAnswer({
      id: `vein.${field}`, value: rocks[0]![0], sentence: `The ${wall} is ${rocks.map(([rock, n]) => `${rock} at ${n}`).join(', ')} of ${plural(named.length, 'place')}.`,
      method: { name: 'counted as written', page: 'vein-width-along' }, from: named.map(s => s.entry.id),
    })]
  })
}
