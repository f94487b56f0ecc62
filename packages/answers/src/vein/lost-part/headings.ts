import type { Enu } from '@lodebook/reckon'
import { bearingOf, chanceWithin, lengthFor, meetHeading, shortestHeading, thinned } from '@lodebook/reckon/structure'
import type { LostPartFamily, ShortestHeading } from '@lodebook/reckon/structure'
import type { Answer } from '../../answer.ts'
import { buildAnswer } from '../../build-answer.ts'
import type { HeadingShape, LostHeading } from '../../shapes.ts'
import type { Survey } from '../../survey/survey.ts'
import { azimuth, figure, length } from '../../words.ts'
import type { CrewUnits } from '../../words.ts'
import { dot } from '../vein-data.ts'

/** A place from which a heading could be driven. */
export interface Face { readonly station: string, readonly point: Enu }

/** The stations underground: those of headings that are not on the surface. */
export function facesOf(headings: readonly HeadingShape[], survey: Survey): readonly Face[] {
  const names = new Set(headings.filter(h => h.sort !== 'surface').flatMap(h => h.stations))
  return [...names].flatMap((station) => { const found = survey.stations.get(station); return found ? [{ station, point: found.point }] : [] })
}

const looked = 60 // cases of all for a first look at every station
const tried = 6 // stations looked at closely

/** The stations nearest to the lost part, by the square way to it in half of the cases; nearest first. */
export function nearestFaces(family: LostPartFamily, faces: readonly Face[]): readonly Face[] {
  const few = { ...family, draws: thinned(family.draws, looked) }
  const { normal } = few.draws[0]!
  const square = (sign: 1 | -1) => bearingOf([sign * normal[0], sign * normal[1], sign * normal[2]])
  const way = (sign: 1 | -1, from: Enu) => lengthFor(meetHeading(few, { from, ...square(sign) }).lengths, 0.5)
  return faces.map(face => ({ face, away: Math.min(way(1, face.point), way(-1, face.point)) }))
    .sort((a, b) => a.away - b.away).slice(0, tried).map(({ face }) => face)
}

/** A level heading from each face that meets the lost part with four chances in five, the shortest first. */
export function levelHeadings(family: LostPartFamily, faces: readonly Face[]): readonly (ShortestHeading & Face)[] {
  return faces.flatMap((face) => {
    const found = shortestHeading(family, face.point, { inclination: 0 })
    return found ? [{ ...found, ...face }] : []
  }).sort((a, b) => a.length - b.length)
}

/** A heading as it is told and drawn. */
export function headingTold(family: LostPartFamily, found: ShortestHeading & Face, units: CrewUnits, parts: readonly Answer<unknown>[]): LostHeading {
  const { lengths } = meetHeading(family, found)
  const [low, middle, high] = [0.1, 0.5, 0.9].map(share => lengthFor(lengths, share)) as [number, number, number]
  const meets = chanceWithin(lengths, Number.MAX_VALUE)
  const tilt = Math.round(found.inclination)
  const way = `${azimuth(found.bearing)}${tilt === 0 ? ' level' : `, ${Math.abs(tilt)}° ${tilt > 0 ? 'up' : 'down'}`}`
  const range = Number.isFinite(high) ? { range: { low, high, confidence: 0.8, because: ['how far the fault moved the vein', 'how vein and fault lie'] } } : {}
  const { trend, plunge } = { trend: found.bearing * Math.PI / 180, plunge: found.inclination * Math.PI / 180 }
  const step: Enu = [Math.cos(plunge) * Math.sin(trend), Math.cos(plunge) * Math.cos(trend), Math.sin(plunge)]
  return {
    station: found.station, from: found.point, bearing: found.bearing, inclination: found.inclination, meets,
    to: [0, 1, 2].map(k => found.point[k]! + middle * step[k]!) as unknown as Enu,
    length: buildAnswer({
      id: `lost-part.heading.${found.station}.${tilt === 0 ? 'level' : 'shortest'}`, value: middle, unit: 'm', ...range,
      sentence: `From ${found.station} at ${way} the vein is met within ${length(middle, units)} with even chances, within ${length(found.length, units)} with four in five${meets < 0.995 ? `; in ${figure(100 - 100 * meets, 2)} of 100 cases it is never met that way` : ''}.`,
      method: {
        name: 'shortest heading over all cases', page: 'lost-part',
        working: [`the direction in which four in five of ${family.draws.length} cases are met soonest: ${way}`, `one in ten within ${low.toFixed(1)} m, half within ${middle.toFixed(1)} m, nine in ten within ${Number.isFinite(high) ? `${high.toFixed(1)} m` : 'no length'}`],
      },
      parts,
    }),
    chance: chances(lengths, Number.isFinite(high) ? high : found.length),
  }
}

/** Chances at even, round steps up to a length. */
function chances(lengths: readonly number[], upTo: number): LostHeading['chance'] {
  const rough = Math.max(upTo, 1e-6) / 40 // fine enough to be drawn as a curve
  const power = 10 ** Math.floor(Math.log10(rough))
  const step = [1, 2, 5, 10].map(k => k * power).find(k => k >= rough)!
  return Array.from({ length: Math.ceil(upTo / step) + 1 }, (_, i) => (i + 1) * step).map(within => ({ within, chance: chanceWithin(lengths, within) }))
}

/** Share of cases in which the lost part crosses a heading already driven beyond the fault, and which headings those are. */
export function alreadyCrossed(
  { draws, far }: LostPartFamily, headings: readonly HeadingShape[], survey: Survey,
): { readonly share: number, readonly names: readonly string[] } {
  const legs = headings.filter(h => h.sort !== 'surface').flatMap(h => h.stations.slice(1).flatMap((name, i) => {
    const [a, b] = [survey.stations.get(h.stations[i]!)?.point, survey.stations.get(name)?.point]
    return a && b ? [{ name: h.name, a, b }] : []
  }))
  const names = new Set<string>()
  const crossed = draws.filter((draw) => {
    const hit = legs.filter(({ a, b }) => {
      const [u, v] = [a, b].map(p => dot(draw.normal, less(p, draw.point))) as [number, number]
      if (u * v > 0 || u === v) return false
      const at = [0, 1, 2].map(k => a[k]! + (b[k]! - a[k]!) * u / (u - v)) as unknown as Enu
      return far * dot(draw.fault.normal, less(at, draw.fault.point)) > 0
    })
    hit.forEach(leg => names.add(leg.name))
    return hit.length > 0
  })
  return { share: crossed.length / draws.length, names: [...names] }
}

const less = (a: Enu, b: Enu): Enu => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
