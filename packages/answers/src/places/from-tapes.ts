import type { Place } from '@lodebook/book'
import type { Enu } from '@lodebook/reckon'
import { twoTapes } from '@lodebook/reckon/survey'
import { figure } from '../words.ts'
import { noStation, together } from './located.ts'
import type { Located, PlaceContext, Unlocated } from './located.ts'

/** Two places nearer together than so many metres are one, whichever hand it was. */
const same = 0.5

/**
 * A mark taped from two stations. Two tapes meet twice: the hand, or above or below, says where; without it the mark has no place unless
 * both lie close together.
 */
export function fromTapes(place: Extract<Place, { by: 'tapes' }>, context: PlaceContext): Located | Unlocated {
  const a = context.stations.get(place.first.station), b = context.stations.get(place.second.station)
  if (!a) return { why: noStation(place.first.station, context) }
  if (!b) return { why: noStation(place.second.station, context) }
  const sill = a.point[2] - a.walls(0).down, up = place.height?.value == null ? a.point[2] : sill + place.height.value
  const written = `${place.first.distance.text} from ${place.first.station} and ${place.second.distance.text} from ${place.second.station}`
  const fromA = place.first.distance.value ?? 0, fromB = place.second.distance.value ?? 0
  const found = fromA > 0 && fromB > 0 ? twoTapes({ a: a.point, b: b.point, fromA, fromB, turn: place.turn, up, sigma: context.precision }) : []
  const [one, other] = found
  if (!one) return { why: `tapes of ${written} do not meet` }
  const apart = other ? Math.hypot(...other.point.map((value, i) => value - one.point[i]!)) : 0
  if (other && apart > same) {
    return { why: `tapes of ${written} meet at two places ${figure(apart, 2)} m apart: say whether it is left or right of the line from ${place.first.station} to ${place.second.station}, or above or below it` }
  }
  const point = other ? one.point.map((value, i) => (value + other.point[i]!) / 2) as unknown as Enu : one.point
  const own: Enu = one.sigma.map(s => Math.max(s, context.precision, apart / 2)) as unknown as Enu
  const sigma = place.accuracy?.value != null ? together(a.sigma, place.accuracy.value) : a.sigma.map((s, i) => Math.hypot(s, own[i]!)) as unknown as Enu
  return { point, sigma, how: `taped from ${place.first.station} and ${place.second.station}`, from: [...a.entries, ...b.entries] }
}
