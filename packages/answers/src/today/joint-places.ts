import type { Entry } from '@lodebook/book'
import type { Enu } from '@lodebook/reckon'
import { jointSets, wedgeOn } from '@lodebook/reckon/ground'
import type { JointSet, Wedge } from '@lodebook/reckon/ground'
import { equalArea, greatCircle, normalOf, poleOf } from '@lodebook/reckon/structure'
import type { Attitude } from '@lodebook/reckon/structure'
import type { Assume, AssumedFigure } from '../assumptions.ts'
import { buildAnswer } from '../build-answer.ts'
import type { Located, StationPlace } from '../places/place-in-space.ts'
import { placeOf, textOf } from '../read.ts'
import type { HeadingShape } from '../shapes.ts'
import type { North } from '../survey/north.ts'
import { sub } from '../survey/survey.ts'
import { attitudeOf } from '../vein/vein-data.ts'
import { angle, azimuth as azimuthWords, figure, length, rock } from '../words.ts'
import type { CrewUnits } from '../words.ts'
import type { BlockAt, JointPlace } from './ground-shapes.ts'
import { sectionAt } from './sections.ts'
import type { Way } from './way-in.ts'

export interface JointInput {
  readonly structures: readonly Entry[]
  readonly at: ReadonlyMap<string, Located>
  readonly headings: readonly HeadingShape[]
  readonly stations: ReadonlyMap<string, StationPlace>
  readonly north: North
  readonly way: Way | undefined
  readonly assume: Assume
  readonly units: CrewUnits
}

/** Planes along which rock parts. */
const parting = ['joint', 'foliation', 'fault', 'contact', 'vein', 'stringer']
/** Readings within so many metres of heading are taken together; fewer than so many sets cut no block. Common practice, no source. */
const stretch = 15, mostSets = 6
/** Lighter blocks than this are scaled with a bar before they are reckoned, t. */
const lightest = 0.002

interface Plane extends Attitude { readonly entry: string, readonly feature: string, readonly chainage: number, readonly station: number }

/** Stretches of heading where planes of three directions or more were read, and the blocks these can cut from back and ribs. */
export function jointPlaces(input: JointInput): readonly JointPlace[] {
  return input.headings.filter(h => ['adit', 'drift', 'crosscut'].includes(h.sort)).flatMap(h => inHeading(h, input)).sort((a, b) => (a.distance ?? Infinity) - (b.distance ?? Infinity))
}

function inHeading(heading: HeadingShape, input: JointInput): readonly JointPlace[] {
  const points = heading.stations.map(s => input.stations.get(s)!.point), along = [0]
  points.slice(1).forEach((p, i) => along.push(along[i]! + Math.hypot(...sub(p, points[i]!))))
  const planes = input.structures.flatMap((entry): Plane[] => {
    const place = placeOf(entry), plane = parting.includes(textOf(entry, 'feature') ?? '') ? attitudeOf(entry, input.north) : undefined
    const station = place?.by === 'station' ? heading.stations.indexOf(place.station) : -1
    if (!plane || station < 0 || place?.by !== 'station') return []
    const toward = place.toward === undefined ? station + 1 : heading.stations.indexOf(place.toward), sign = toward >= 0 && toward < station ? -1 : 1
    return [{ strike: plane.strike, dip: plane.dip, entry: entry.id, feature: textOf(entry, 'feature')!, station, chainage: along[station]! + sign * (place.along?.value ?? 0) }]
  }).sort((a, b) => a.chainage - b.chainage)
  const stretches: Plane[][] = []
  for (const plane of planes) {
    const open = stretches.at(-1)
    if (open && plane.chainage - open[0]!.chainage <= stretch) open.push(plane); else stretches.push([plane])
  }
  return stretches.flatMap((group) => {
    const sets = jointSets(group).slice(0, mostSets)
    return sets.length < 3 ? [] : [placeAt(heading, group, sets, input)]
  })
}

function placeAt(heading: HeadingShape, planes: readonly Plane[], sets: readonly JointSet[], { stations, way, assume, units }: JointInput): JointPlace {
  const middle = planes[Math.floor(planes.length / 2)]!, here = Math.min(middle.station, heading.stations.length - 2)
  const from = stations.get(heading.stations[here]!)!, to = stations.get(heading.stations[here + 1]!)!
  const line = sub(to.point, from.point), azimuth = Math.atan2(line[0], line[1]) * 180 / Math.PI, { width, height } = sectionAt(from, azimuth), name = `${heading.stations[planes[0]!.station]!} to ${heading.stations[planes.at(-1)!.station]!}`
  const level = Math.hypot(line[0], line[1]), along: Enu = [line[0] / level, line[1] / level, 0], right: Enu = [along[1], -along[0], 0]
  const surfaces = [['back', [0, 0, -1], width], ['left rib', right, height], ['right rib', [-right[0], -right[1], 0], height]] as const
  const density = assume('wall density'), trace = assume('joint trace')
  let heldByWeight = 0
  const blocks = surfaces.flatMap(([surface, open, span]) => triples(sets).flatMap((three): BlockAt[] => {
    const wedge = wedgeOn({ normals: three.map(normalOf) as [Enu, Enu, Enu], open, along, span, trace: trace.value })
    if (!wedge) return []
    if (wedge.move === 'held by its weight') { heldByWeight++; return [] }
    const tonnes = wedge.volume * density.value
    return tonnes < lightest ? [] : [blockAt(surface, wedge, three, tonnes, planes, { name, span, density, trace, units })]
  })).sort((a, b) => b.answer.value - a.answer.value)
  return {
    name: `${heading.name}, ${name}`, distance: way?.distanceOf({ by: 'station', station: heading.stations[here]! }, undefined), width, height, azimuth, blocks, heldByWeight,
    sets: sets.map(s => ({ strike: s.strike, dip: s.dip, readings: s.of.length })),
    net: { poles: planes.map(p => ({ at: equalArea(poleOf(p)), entry: p.entry, feature: p.feature })), circles: sets.map(s => greatCircle(s)) },
  }
}

const triples = (sets: readonly JointSet[]): readonly (readonly [JointSet, JointSet, JointSet])[] =>
  sets.flatMap((a, i) => sets.slice(i + 1).flatMap((b, j) => sets.slice(i + j + 2).map(c => [a, b, c] as const)))

const moves = { falls: 'drops straight out', 'slides on one': 'slides on one joint', 'slides on two': 'slides on two joints', 'held by its weight': 'is held by its weight' } as const

interface BlockSetting {
  readonly name: string
  readonly span: number
  readonly density: AssumedFigure
  readonly trace: AssumedFigure
  readonly units: CrewUnits
}

function blockAt(
  surface: BlockAt['surface'], wedge: Wedge, three: readonly [JointSet, JointSet, JointSet], tonnes: number, planes: readonly Plane[],
  { name, span, density, trace, units }: BlockSetting,
): BlockAt {
  const said = three.map(s => `${azimuthWords(s.strike)}/${angle(s.dip)}`).join(', '), move = wedge.move as BlockAt['move']
  return {
    surface, move, depth: wedge.depth, planes: three.map(({ strike, dip }) => ({ strike, dip })),
    answer: buildAnswer({
      id: `ground.block.${name.replaceAll(' ', '-')}.${surface.replace(' ', '-')}.${three.map(s => s.of[0]).join('-')}`, value: tonnes, unit: 't',
      sentence: `${surface.replace(/^./, c => c.toUpperCase())}, ${name}: a block up to ${rock(tonnes, units)}, reaching ${length(wedge.depth, units, 2)} in, ${moves[wedge.move]}. Joints ${said} (strike/dip).`,
      method: { name: 'removable block of three joints', page: 'wedges', working: [
        `largest that fits ${figure(span)} m across, no edge longer than ${figure(trace.value)} m: face ${figure(wedge.face)} m², ${figure(wedge.depth)} m deep`,
        `${figure(wedge.face)} × ${figure(wedge.depth)} / 3 = ${figure(wedge.volume)} m³; × ${figure(density.value)} t/m³ = ${figure(tonnes)} t`,
        `${moves[wedge.move]}; friction and cohesion are left out`] },
      sources: ['Goodman and Shi, Block Theory and its Application to Rock Engineering, 1985 (from memory)'], from: three.flatMap(s => s.of.map(i => planes[i]!.entry)), assumed: [density, trace],
      cautions: ['It is as large as the joints allow, anywhere along this stretch; where it lies, only the bar and the eye tell.'],
    }),
  }
}
