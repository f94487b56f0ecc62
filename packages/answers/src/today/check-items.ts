import type { Blob, Entry } from '@lodebook/book'
import { placeOf, textOf, wordsOf } from '../read.ts'
import { placeName } from './place-name.ts'
import { topicsOf } from './cautions.ts'
import type { AirSeen, CheckAnswered, CheckItem, HazardMet } from './shapes.ts'
import type { Way } from './way-in.ts'

type Asked = Omit<CheckItem, 'answers' | 'why' | 'station' | 'distance' | 'about' | 'byEntry' | 'topic'> & Partial<CheckItem>

/** No longer than a crew will really do: beyond so many stations the rest is left to the readings themselves. */
const mostStations = 4, mostGround = 2

const everywhere: readonly Asked[] = [
  { part: 'before leaving', item: 'Outside person', asks: 'Who stays outside, knows the time, and knows whom to call?', good: 'named and told', bad: 'nobody' },
  { part: 'before leaving', item: 'Weather', asks: 'Rain, thaw or storm on the way?', good: 'settled', bad: 'on the way', topic: 'water' },
  { part: 'before leaving', item: 'Lights', asks: 'Three lights each, all lit?', good: 'three each', bad: 'fewer' },
  { part: 'before leaving', item: 'Helmets', asks: 'Helmets on, boots and gloves whole?', good: 'all on', bad: 'not all' },
  { part: 'before leaving', item: 'Meter', asks: 'Meter bump-tested today, zero set in open air?', good: 'tested', bad: 'not tested', topic: 'air' },
  { part: 'before leaving', item: 'Not alone', asks: 'At least two, and within hearing of each other?', good: 'two or more', bad: 'one', topic: 'alone' },
  { part: 'at the portal', item: 'Brow', asks: 'Brow and first set: anything new, cracked, hanging or fallen?', good: 'nothing new', bad: 'something', byEntry: 'ground', topic: 'ground' },
  { part: 'at the portal', item: 'Water', asks: 'Water out of the portal: more, less or muddy?', good: 'as before', bad: 'changed', topic: 'water' },
  { part: 'at the portal', item: 'Animals', asks: 'Tracks, droppings, nests, bees, snakes?', good: 'none seen', bad: 'seen', topic: 'animals' },
  { part: 'at the portal', item: 'Old explosives', asks: 'Boxes, caps, fuse or greasy sticks that are not marked off yet?', good: 'none seen', bad: 'seen', topic: 'explosives' },
]

const groundSigns = ['drummy', 'fresh fall', 'open joint', 'loose slab', 'running water', 'rotten timber', 'crushed timber']

/** The check of this mine: what is asked everywhere, the air where it has been read, ground that was bad, and each hazard that is not dealt with. */
export function checkItems({ checks, readings, ground, hazards, air, way }: {
  readonly checks: readonly Entry[]
  readonly readings: readonly Entry[]
  readonly ground: readonly Entry[]
  readonly hazards: readonly HazardMet[]
  readonly air: AirSeen
  readonly way: Way | undefined
}): readonly CheckItem[] {
  const portal = way?.portal, airAt = air.places.flatMap(p => p.station === undefined ? [] : [{ station: p.station, distance: p.distance }])
  const everyStation = airAt.filter((p, i, all) => p.station !== portal && all.findIndex(q => q.station === p.station) === i)
  const further = spread(everyStation, mostStations), stations = new Set(further.map(f => f.station))
  // One question a place: bad air is asked by reading it, bad ground by the hazard that names it.
  const toAsk = hazards.filter(h => !(h.sort === 'bad air' && stations.has(h.where))), places = new Set(hazards.map(h => h.where))
  const asked: Asked[] = [
    ...everywhere,
    { part: 'at the portal', item: 'Air at the portal', asks: 'Air at the portal', good: 'read', bad: 'outside a limit', byEntry: 'air', topic: 'air', ...portal === undefined ? {} : { station: portal, distance: 0 } },
    ...further.map(({ station, distance }): Asked => ({ part: 'on the way in', item: `Air at ${station}`, asks: `Air at ${station}, read before anybody passes`, good: 'read', bad: 'outside a limit', station, distance, byEntry: 'air', topic: 'air', why: 'read here before' })),
    ...badGround(ground, way).filter(g => !places.has(g.item.replace('Ground at ', '')) && (g.distance ?? 1) > 0).slice(0, mostGround),
    ...toAsk.map((h): Asked => ({
      part: 'on the way in', item: `${h.sort} at ${h.where}`, asks: `${h.sort.replace(/^./, c => c.toUpperCase())} at ${h.where}`, good: h.state === 'marked off' ? 'still marked off' : 'as it was', bad: 'changed',
      about: h.entry, distance: h.distance, why: h.action ?? 'open hazard', ...firstTopic(h),
    })),
  ]
  const order = { 'before leaving': 0, 'at the portal': 1, 'on the way in': 2 }
  return asked.map((a): CheckItem => {
    const plain = { why: '', station: undefined, distance: undefined, about: undefined, byEntry: undefined, topic: undefined }
    const item: Omit<CheckItem, 'answers'> = { ...plain, ...a }
    return { ...item, answers: answersTo(item, checks, readings) }
  }).sort((a, b) => order[a.part] - order[b.part] || (a.distance ?? -1) - (b.distance ?? -1))
}

/** So many of them, the furthest in always among them. */
const spread = <T>(all: readonly T[], most: number): readonly T[] =>
  all.length <= most ? all : Array.from({ length: most }, (_, i) => all[Math.round((i + 1) * all.length / most) - 1]!)

function firstTopic(h: HazardMet): Pick<Asked, 'topic'> {
  const topics = topicsOf(h.sort, `${h.action ?? ''} ${h.note ?? ''} ${h.where}`), topic = topics.includes('bats') ? 'bats' as const : topics[0]
  return topic === undefined ? {} : { topic }
}

/** The latest ground note of each place that found something, where nobody has found it quiet since. */
function badGround(ground: readonly Entry[], way: Way | undefined): readonly Asked[] {
  const latest = new Map<string, Entry>()
  for (const entry of [...ground].sort((a, b) => (textOf(a, 'taken') ?? '').localeCompare(textOf(b, 'taken') ?? ''))) latest.set(placeName(placeOf(entry)), entry)
  return [...latest].flatMap(([where, entry]): Asked[] => {
    const found = wordsOf(entry, 'found').filter(f => groundSigns.includes(f)), place = placeOf(entry)
    if (found.length === 0 || entry.fields.scaled === true) return []
    return [{
      part: 'on the way in', item: `Ground at ${where}`, asks: `Ground at ${where}: more, or as it was?`, good: 'as it was', bad: 'more', about: entry.id, distance: way?.distanceOf(place, undefined), byEntry: 'ground',
      topic: found.some(f => f.includes('timber')) ? 'timber' : 'ground', why: `${found.join(', ')}${textOf(entry, 'taken') === undefined ? '' : `, ${textOf(entry, 'taken')}`}`, ...place?.by === 'station' ? { station: place.station } : {},
    }]
  })
}

function answersTo(item: Omit<CheckItem, 'answers'>, checks: readonly Entry[], readings: readonly Entry[]): readonly CheckAnswered[] {
  const given = checks.filter(c => textOf(c, 'item') === item.item).map((entry): CheckAnswered => ({
    entry: entry.id, taken: textOf(entry, 'taken') ?? '', answer: textOf(entry, 'answer') as CheckAnswered['answer'], note: textOf(entry, 'note'),
    picture: entry.fields.picture as Blob | undefined, by: entry.createdBy,
  }))
  const read = item.byEntry === 'air' && item.station !== undefined ? readings.flatMap((entry): CheckAnswered[] => {
    const place = placeOf(entry)
    return place?.by === 'station' && place.station === item.station && place.along === undefined
      ? [{ entry: entry.id, taken: textOf(entry, 'taken') ?? '', answer: 'read', note: undefined, picture: undefined, by: entry.createdBy }] : []
  }) : []
  return [...given, ...read].sort((a, b) => Date.parse(b.taken) - Date.parse(a.taken)).slice(0, 12)
}
