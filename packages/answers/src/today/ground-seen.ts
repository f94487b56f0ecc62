import type { Entry } from '@lodebook/book'
import { numberOf, placeOf, quantityOf, textOf, wordsOf } from '../read.ts'
import { length, plural, rock as rockWords } from '../words.ts'
import type { GroundPlace, GroundSeen, ScalingAt } from './ground-shapes.ts'
import { jointPlaces } from './joint-places.ts'
import type { JointInput } from './joint-places.ts'
import { placeName } from './place-name.ts'
import { rockAt } from './rock-at.ts'
import { sectionAt } from './sections.ts'

export interface GroundInput extends JointInput {
  readonly notes: readonly Entry[]
  readonly rocks: readonly Entry[]
  readonly scaling: readonly Entry[]
}

/** Signs that something may come down. */
const bad = ['drummy', 'fresh fall', 'open joint', 'loose slab', 'rotten timber', 'crushed timber']

/** What was seen, measured and done about the ground, place by place. */
export function groundSeen(input: GroundInput): GroundSeen {
  const { notes, rocks, scaling, way, stations, units } = input
  const byPlace = new Map<string, Entry[]>()
  for (const entry of notes) byPlace.set(placeName(placeOf(entry)), [...byPlace.get(placeName(placeOf(entry))) ?? [], entry])
  const places = [...byPlace].map(([name, entries]): GroundPlace => ({
    name, distance: way?.distanceOf(placeOf(entries[0]!), undefined),
    notes: [...entries].sort((a, b) => (textOf(b, 'taken') ?? '').localeCompare(textOf(a, 'taken') ?? '')).map(e => ({
      entry: e.id, taken: textOf(e, 'taken'), found: wordsOf(e, 'found'), scaled: e.fields.scaled === true, action: textOf(e, 'action'), by: wordsOf(e, 'inspectedBy') })),
  })).sort((a, b) => (a.distance ?? Infinity) - (b.distance ?? Infinity))
  const widthAt = (entry: Entry): number | undefined => {
    const place = placeOf(entry), station = place?.by === 'station' ? stations.get(place.station) : undefined
    const next = place?.by === 'station' ? way?.stations.find(s => s.distance > (way.distanceOf(place, undefined) ?? Infinity)) : undefined, to = next && stations.get(next.name)
    return station && to && sectionAt(station, Math.atan2(to.point[0] - station.point[0], to.point[1] - station.point[1]) * 180 / Math.PI).width
  }
  const rock = rocks.map(entry => rockAt(entry, way?.distanceOf(placeOf(entry), undefined), widthAt(entry), units)).sort((a, b) =>
    (a.distance ?? Infinity) - (b.distance ?? Infinity))
  const joints = jointPlaces(input), worst = joints.flatMap(j => j.blocks).filter(b => b.surface === 'back').sort((a, b) => b.answer.value - a.answer.value)[0]
  const signs = places.filter(p => p.notes[0]!.found.some(f => bad.includes(f)) && !p.notes[0]!.scaled)
  const log = scaling.map((entry): ScalingAt => ({
    entry: entry.id, where: placeName(placeOf(entry)), distance: way?.distanceOf(placeOf(entry), undefined), taken: textOf(entry, 'taken') ?? '', pieces: numberOf(entry, 'pieces'), largest: quantityOf(entry, 'largest')?.text, left: textOf(entry, 'left'), by: wordsOf(entry, 'by'),
  })).sort((a, b) => Date.parse(b.taken) - Date.parse(a.taken))
  return {
    places, rock, joints, scaling: log,
    sentence: [
      places.length === 0 ? 'No ground note is written yet.' : signs.length > 0 ? `Bad signs stood at the last look in ${plural(signs.length, 'place')}: ${signs.slice(0, 4).map(p => p.name).join(', ')}${signs.length > 4 ? ' and more' : ''}.` : 'No bad sign stood at the last look. What was not looked at can still fall.',
      worst ? `The joints read can cut a block of up to ${rockWords(worst.answer.value, units)} out of the back, reaching ${length(worst.depth, units, 2)} in.` : '',
    ].filter(Boolean).join(' '),
    cautions: [
      'This finds what was measured. What was not measured can still fall.',
      'A competent person examines and tests the ground before work, after any shot and as conditions call for (30 CFR 57.3401, read); loose ground is taken down or held up before anything else (57.3200, read), from a protected place (57.3201, read).',
      'Sizes are the largest the joints allow across the heading; friction, cohesion, stress, timber and bolts are left out.',
    ],
  }
}
