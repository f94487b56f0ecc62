import type { Covariance3 } from './matrix3.ts'
import type { Degrees, Enu } from '../core/index.ts'
import { DegenerateError, degrees, finite, InputError, positive } from '../core/index.ts'
import { azimuthOf } from './angles.ts'
import { add3, apply3, dot3, invertSymmetric3, multiply3, scale3, zero3 } from './matrix3.ts'
import { reduceShot } from './reduce-shot.ts'

/** One leg of a traverse: slope length in any unit, grid azimuth, inclination (level when left out). */
export interface TraverseLeg {
  readonly from: string
  readonly to: string
  readonly length: number
  readonly azimuth: Degrees
  readonly inclination?: Degrees | undefined
}

export interface KnownStation { readonly station: string, readonly point: Enu }

export interface TraverseInput {
  /** In order; the last one ends on `start`, or on `end` when that is given. */
  readonly legs: readonly TraverseLeg[]
  readonly start: KnownStation
  readonly end?: KnownStation | undefined
  readonly rule: 'compass' | 'least-squares'
  /** For least squares: one standard deviation of every length, and of every azimuth and inclination, degrees. */
  readonly sigma?: { readonly length: number, readonly angle: Degrees } | undefined
}

export interface AdjustedTraverse {
  /** End of the traverse as measured minus where it should be. */
  readonly misclosure: Enu
  readonly misclosureLength: number
  /** Sum of the lengths over the misclosure: 5000 for one in five thousand. null when it closes exactly. */
  readonly ratio: number | null
  readonly stations: ReadonlyMap<string, Enu>
  readonly legs: readonly (TraverseLeg & { readonly inclination: Degrees })[]
  /** Of each station, least squares only; of the closing station zero. */
  readonly covariance?: ReadonlyMap<string, Covariance3>
}

/**
 * Adjusts a traverse that closes on a known station.
 *
 * The compass rule gives each leg its share of the misclosure by its length. Least squares gives each leg its share by its own covariance;
 * without `sigma` that is taken as equal in all directions and proportional to length, which is the compass rule again, with a covariance
 * scaled by the misclosure found.
 * @returns stations in the frame of `start`; legs with their adjusted length, azimuth and inclination. The size of the misclosure is never judged
 * @throws InputError naming the field: a leg that does not start where the last one ended (`legs[3].from`), a station passed twice, a traverse
 *         that does not end on a known station, a reading out of range
 * Accuracy: rounding only. The misclosure is shared out in one linear step, exact where it is small beside the legs.
 * Source: compass rule: Bowditch (1808); worked examples in Wolf & Ghilani, Elementary Surveying. Least squares: conditioned observations,
 * x = l - C Bᵀ (B C Bᵀ)⁻¹ w.
 */
export function traverse({ legs, start, end = start, rule, sigma }: TraverseInput): AdjustedTraverse {
  checkRoute(legs, start, end)
  const reduced = legs.map((leg, i) => reduceLeg(leg, `legs[${i}]`, sigma))
  const perimeter = legs.reduce((sum, leg) => sum + leg.length, 0)
  const raw = runningSum(reduced.map(leg => leg.vector), start.point, plus)
  const misclosure = minus(raw.at(-1)!, end.point)
  const misclosureLength = Math.hypot(...misclosure)

  if (sigma) { positive(sigma.length, 'sigma.length'); positive(sigma.angle, 'sigma.angle') }
  const own = rule === 'least-squares' && sigma ? reduced.map(leg => leg.covariance) : legs.map(leg => scale3(identity, leg.length))
  const spread = runningSum(own, zero3, add3)
  const weight = invertSymmetric3(spread.at(-1)!)
  if (!weight) throw new DegenerateError('no spread', 'sigma', sigma, 'standard deviations nearer to each other')
  const points = raw.map((point, i) => minus(point, apply3(multiply3(spread[i]!, weight), misclosure)))
  const stations = new Map([[start.station, start.point], ...points.map((point, i) => [legs[i]!.to, i === legs.length - 1 ? end.point : point] as const)])
  const result = {
    misclosure, misclosureLength, ratio: misclosureLength > 0 ? perimeter / misclosureLength : null, stations,
    legs: legs.map(leg => ({ ...leg, ...polar(minus(stations.get(leg.to)!, stations.get(leg.from)!)) })),
  }
  if (rule === 'compass') return result
  const scale = sigma ? 1 : dot3(misclosure, apply3(weight, misclosure)) / (misclosure[2] === 0 ? 2 : 3)
  const covariances = spread.map(s => scale3(add3(s, scale3(multiply3(multiply3(s, weight), s), -1)), scale))
  const covariance = new Map([[start.station, zero3], ...legs.map((leg, i) => [leg.to, covariances[i]!] as const), [end.station, zero3]])
  return { ...result, covariance }
}

const identity: Covariance3 = [[1, 0, 0], [0, 1, 0], [0, 0, 1]]
const plus = (a: Enu, b: Enu): Enu => [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
const minus = (a: Enu, b: Enu): Enu => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]

function runningSum<T>(terms: readonly T[], start: T, add: (a: T, b: T) => T): T[] {
  let sum = start
  return terms.map((term) => { sum = add(sum, term); return sum })
}

function polar(d: Enu): { length: number, azimuth: Degrees, inclination: Degrees } {
  return { length: Math.hypot(...d), azimuth: azimuthOf(degrees(Math.atan2(d[0], d[1]))), inclination: degrees(Math.atan2(d[2], Math.hypot(d[0], d[1]))) }
}

function reduceLeg(leg: TraverseLeg, path: string, sigma: TraverseInput['sigma']) {
  const angle = sigma?.angle ?? 1
  positive(leg.length, `${path}.length`, 'a length above zero')
  const range = (value: number, name: string, low: number, high: number) => {
    if (!(value >= low && value <= high)) throw new InputError(`${path}.${name}`, value, `degrees from ${low} to ${high}`)
  }
  range(leg.azimuth, 'azimuth', 0, 360)
  range(leg.inclination ?? 0, 'inclination', -90, 90)
  const precision = { distance: sigma?.length ?? 1, distancePerLength: 0, azimuth: angle, inclination: angle, levelling: angle, centring: 0 }
  return reduceShot({ from: leg.from, to: leg.to, distance: leg.length, azimuth: leg.azimuth, inclination: leg.inclination ?? 0 }, precision)
}

function checkRoute(legs: readonly TraverseLeg[], start: KnownStation, end: KnownStation): void {
  if (legs.length === 0) throw new InputError('legs', legs, 'one leg or more')
  start.point.forEach((x, i) => finite(x, `start.${['east', 'north', 'up'][i]}`))
  end.point.forEach((x, i) => finite(x, `end.${['east', 'north', 'up'][i]}`))
  const passed = new Set([start.station])
  legs.forEach((leg, i) => {
    const before = i === 0 ? start.station : legs[i - 1]!.to
    if (leg.from !== before) throw new InputError(`legs[${i}].from`, leg.from, `${before}, where the traverse has come to`)
    const last = i === legs.length - 1
    if (last && leg.to !== end.station) throw new InputError(`legs[${i}].to`, leg.to, `${end.station}, the known station it is to close on`)
    if (leg.to === leg.from || (!last && (passed.has(leg.to) || leg.to === end.station))) {
      throw new InputError(`legs[${i}].to`, leg.to, 'a station not passed before; a net of loops goes to the network adjustment')
    }
    passed.add(leg.to)
  })
}
