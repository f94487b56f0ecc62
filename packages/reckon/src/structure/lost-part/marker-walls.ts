import { DegenerateError, positive } from '../../core/index.ts'
import type { Enu, Matrix3 } from '../../core/index.ts'
import { checkedCovariance } from '../covariance.ts'
import { checkPoints } from '../spread.ts'
import { dot, length, subtract } from '../vector.ts'
import { checkedUnit } from './doubtful-plane.ts'
import { fitWalls, turnsOf } from './fit-walls.ts'
import type { WallPlace } from './fit-walls.ts'
import type { MarkerLook } from './marker-offset.ts'

/** Places where a marker was touched on either side of a fault; which of its two walls, nobody wrote. */
export interface MarkerPlaces {
  /** As readings of strike and dip on it say, with their covariance. The places then have their say too. */
  readonly normal: Enu
  readonly covariance: Matrix3
  readonly near: readonly Enu[]
  readonly far: readonly Enu[]
  /** One standard deviation of a place, square to the marker. */
  readonly sigma: number
}

/** A way to read the offset that is less likely than this is left out. */
const leastChance = 1e-3
/** Of more places than these the nearest to the other side are taken: 2048 ways to give them to walls are enough. */
const [mostPlaces, mostFar] = [12, 6]

/**
 * How far a marker is set off, when places on both of its walls are mixed.
 *
 * Every way to give the places to the two walls is weighed by how well it fits, all alike beforehand, against a marker too thin to matter, which
 * has even odds. Seen on both walls on one side and once on the other, it may be set off in two ways: both are kept, each with its chance. Normal,
 * offset and thickness are found together; the scatter comes from the places themselves, with the stated sigma worth four readings. Where no side
 * shows two walls, one wall is assumed.
 * @returns ways to read the offset, likeliest first, chances summing to 1
 * @throws DegenerateError("too few") without a place on either side; InputError
 * Source: normal regression with a conjugate prior on the variance (Gelman et al., Bayesian Data Analysis, ch. 14; from memory).
 */
export function markerWalls({ normal: read, covariance, near, far, sigma }: MarkerPlaces): readonly MarkerLook[] {
  const normal = checkedUnit(read, 'normal')
  checkedCovariance(covariance, 'covariance')
  checkPoints(near, 'near')
  checkPoints(far, 'far')
  positive(sigma, 'sigma')
  if (near.length === 0 || far.length === 0) throw new DegenerateError('too few', near.length === 0 ? 'near' : 'far', 0, 'a place on each side of the fault')
  const beyond = nearest(far, near, mostFar)
  const before = nearest(near, far, mostPlaces - beyond.length)
  const origin = beyond[0]!
  const placed = (far: boolean) => (p: Enu): WallPlace => ({ step: subtract(p, origin), height: dot(subtract(p, origin), normal), far })
  const sides = [before.map(placed(false)), beyond.map(placed(true))]
  const reach = Math.max(...sides.map(side => Math.max(...side.map(p => p.height)) - Math.min(...side.map(p => p.height))))
  const given = { normal, turns: turnsOf(normal, covariance), sigma }
  const walls = reach > 0 ? waysOf(before.length, beyond.length) : []
  // Half the thickness, either way round, may be anything up to half of what one side spans.
  const thin = walls.length > 0 ? 0.5 : 1
  const ways = [undefined, ...walls].map(way => ({ fit: fitWalls(sides.flat(), way, given), prior: way ? 0.5 / walls.length / reach : thin }))
  const logs = ways.map(({ fit, prior }) => fit.log + Math.log(prior))
  const top = Math.max(...logs)
  const sum = (numbers: readonly number[]) => numbers.reduce((a, b) => a + b, 0)
  const total = sum(logs.map(log => Math.exp(log - top)))
  const kept = ways.map(({ fit }, i) => ({ ...fit.look, chance: Math.exp(logs[i]! - top) / total })).filter(look => look.chance >= leastChance)
  const left = sum(kept.map(look => look.chance))
  return kept.map(look => ({ ...look, chance: look.chance / left })).sort((a, b) => b.chance - a.chance)
}

/** At most so many of the places, those nearest to the middle of the others. */
function nearest(places: readonly Enu[], others: readonly Enu[], most: number): readonly Enu[] {
  const middle = [0, 1, 2].map(k => others.reduce((sum, p) => sum + p[k]!, 0) / others.length) as unknown as Enu
  return [...places].sort((a, b) => length(subtract(a, middle)) - length(subtract(b, middle))).slice(0, most)
}

/** All ways to give places to two walls, -1 and 1, but for those in which neither side shows both. Turning all round is the same way. */
function waysOf(near: number, far: number): readonly (readonly number[])[] {
  const count = near + far
  return Array.from({ length: 2 ** (count - 1) }, (_, code) => Array.from({ length: count }, (__, i) => (code >> i) % 2 === 0 ? 1 : -1))
    .filter(way => [way.slice(0, near), way.slice(near)].some(side => side.includes(1) && side.includes(-1)))
}
