import { wayIn } from '@lodebook/reckon/earthwork'
import type { WayStation } from '@lodebook/reckon/earthwork'
import { degrees } from '@lodebook/reckon'
import type { Assume } from '../assumptions.ts'
import { buildAnswer } from '../build-answer.ts'
import type { HeadingShape } from '../shapes.ts'
import type { CrewUnits } from '../words.ts'
import { figure, length } from '../words.ts'
import type { Way } from './shapes.ts'

/** Headings that are walked; raises, winzes and stopes are climbed. */
const walked = ['adit', 'drift', 'crosscut', 'surface']

/** Depth of water that the doubt of taped sills lets seem to stand, m. Common practice, no source. */
const standing = 0.08

/** Each walked heading as a way, the adit first. */
export function waysOf(headings: readonly HeadingShape[], assume: Assume, units: CrewUnits): readonly Way[] {
  const order = (h: HeadingShape) => walked.indexOf(h.sort)
  return headings.filter(h => walked.includes(h.sort) && h.sort !== 'surface').sort((a, b) => order(a) - order(b)).flatMap((shape): Way[] => {
    const { stations, names } = stationsOf(shape)
    return stations.length < 2 ? [] : [wayOf(shape, names, stations, assume, units)]
  })
}

/** Places along a heading by level distance from its first station; two stations over each other count once. */
function stationsOf(shape: HeadingShape): { readonly stations: readonly WayStation[], readonly names: readonly string[] } {
  let at = 0
  const all = shape.sill.map((sill, i): WayStation & { name: string } => {
    const before = shape.sill[i - 1], [left, right] = [shape.left[i]!, shape.right[i]!]
    if (before) at += Math.hypot(sill[0] - before[0], sill[1] - before[1])
    const width = Math.hypot(right[0] - left[0], right[1] - left[1])
    return { at, sill: sill[2], back: Math.max(sill[2], shape.back[i]![2]), width, name: shape.stations[i]! }
  }).filter((s, i, list) => i === 0 || s.at > list[i - 1]!.at + 1e-6 * (1 + list.at(-1)!.at))
  return { stations: all.map(({ at: d, sill, back, width }) => ({ at: d, sill, back, width })), names: all.map(s => s.name) }
}

function wayOf(shape: HeadingShape, names: readonly string[], stations: readonly WayStation[], assume: Assume, units: CrewUnits): Way {
  const way = wayIn(stations), id = `access.way.${shape.name.toLowerCase().replace(/[^a-z0-9]+/g, '-')}`
  const [room, wide, steep] = [assume('head room to walk'), assume('width for a barrow'), assume('steepest barrow way')]
  const grade = (g: number) => g === 0 ? 'level' : `1 in ${figure(1 / Math.abs(g), 2)} ${g > 0 ? 'up' : 'down'} inward`
  const nearest = (at: number) => names[stations.reduce((best, s, i) => Math.abs(s.at - at) < Math.abs(stations[best]!.at - at) ? i : best, 0)]!
  const pinches = [
    ...stations.flatMap((s, i) => [
      ...(s.back - s.sill < room.value ? [{ at: s.at, station: names[i]!, says: `${length(s.back - s.sill, units, 2)} of head room` }] : []),
      ...(s.width < wide.value ? [{ at: s.at, station: names[i]!, says: `${length(s.width, units, 2)} wide` }] : []),
    ]),
    ...way.legs.filter(leg => Math.abs(degrees(Math.atan(leg.grade))) > steep.value)
      .map(leg => ({ at: leg.from, station: nearest(leg.from), says: grade(leg.grade) })),
    ...way.ponds.filter(p => p.depth > standing).map(p => ({ at: p.from, station: nearest(p.from), says: `water can stand ${length(p.depth, units, 2)} deep to ${length(p.to, units, 2)} in` })),
  ].sort((a, b) => a.at - b.at)
  const method = { name: 'sill and back along the surveyed heading', page: 'way-in' }, from = [shape.entry]
  const drains = way.ponds.every(p => p.depth <= standing) && way.fall > 0
  return {
    heading: shape.name, entry: shape.entry, rough: shape.rough, names, stations, ponds: way.ponds, pinches,
    sentence: `${shape.name}, ${length(way.length, units, 3)}: lowest ${length(way.lowest.headRoom, units, 2)} at ${nearest(way.lowest.at)}, narrowest ${length(way.narrowest.width, units, 2)} at ${nearest(way.narrowest.at)}; the sill ${drains ? `falls to the portal ${grade(way.fall).replace(/ up inward| down inward/, '')} and drains` : way.fall > 0 ? 'rises inward as a whole but holds water on the way' : 'falls inward: water stays in'}.`,
    figures: [
      { name: 'least head room', answer: buildAnswer({ id: `${id}.head-room`, value: way.lowest.headRoom, unit: 'm', sentence: `Least head room ${length(way.lowest.headRoom, units, 2)}, at ${nearest(way.lowest.at)}.`, method, from, assumed: [room] }) },
      { name: 'narrowest', answer: buildAnswer({ id: `${id}.width`, value: way.narrowest.width, unit: 'm', sentence: `Narrowest ${length(way.narrowest.width, units, 2)}, at ${nearest(way.narrowest.at)}.`, method, from, assumed: [wide] }) },
      { name: 'fall to the portal', answer: buildAnswer({
        id: `${id}.fall`, value: 100 * way.fall, unit: '%', sentence: `Over all the sill is ${grade(way.fall)}; its steepest leg is ${grade(way.steepest.grade)}.`,
        method: { ...method, working: way.legs.map(leg => `${nearest(leg.from)} to ${nearest(leg.to)}: ${grade(leg.grade)}`) }, from, assumed: [steep],
      }) },
    ],
  }
}
