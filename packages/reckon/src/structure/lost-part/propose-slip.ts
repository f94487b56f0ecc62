import { radians } from '../../core/index.ts'
import type { Draws, Enu } from '../../core/index.ts'
import { add, cross, dot, length, scaled, subtract, unit } from '../vector.ts'
import { normalsOf } from './doubtful-plane.ts'
import type { MarkerLook, MarkerOffset } from './marker-offset.ts'
import { logDensity, proposeAmount } from './propose-amount.ts'
import type { Pull } from './propose-amount.ts'
import type { CheckedEvidence, SlipSense } from './slip-evidence.ts'

/** The vein as drawn for one proposal: where its near part has moved to beside the given one, along the drawn normal. */
export interface DrawnVein { readonly normal: Enu, readonly shift: number }

/** A marker with its normal drawn: what is left is one number and its doubt. */
export interface DrawnMarker { readonly normal: Enu, readonly offset: number, readonly sigma: number }

/** A source of one marker as it may be. The vein's own second part takes the vein's drawn normal and place, so that the two errors go together. */
export function drawnMarkers({ looks, isVein = false }: MarkerOffset): (vein: DrawnVein, draws: Draws) => DrawnMarker {
  const normals = looks.map(normalsOf)
  return (vein, draws) => {
    const index = pickLook(looks, draws.uniform())
    const look = looks[index]!
    const normal = isVein ? vein.normal : normals[index]!(draws)
    const turned = dot(normal, look.normal) < 0 ? -1 : 1 // the same plane told by its other normal
    const offset = turned * look.offset + dot(subtract(normal, scaled(look.normal, turned)), look.arm)
    return { normal, offset: offset - (isVein ? vein.shift : 0), sigma: look.sigma * widening(look.freedom, draws) }
  }
}

function pickLook(looks: readonly MarkerLook[], u: number): number {
  let left = u
  for (const [index, look] of looks.entries()) {
    left -= look.chance
    if (left < 0) return index
  }
  return looks.length - 1
}

/** A t distribution is a normal one whose doubt is itself in doubt: the root of freedom over chi-square. */
function widening(freedom: number | undefined, draws: Draws): number {
  if (freedom === undefined) return 1
  let sum = 0
  for (let k = 0; k < freedom; k++) sum += draws.normal() ** 2
  return Math.sqrt(freedom / sum)
}

export interface ProposedSlip { readonly slip: Enu, readonly logWeight: number }

/** Draws one slip in a drawn fault, with the weight that the evidence gives it. */
export function proposeSlip(evidence: CheckedEvidence, fault: Enu, markers: readonly DrawnMarker[], draws: Draws): ProposedSlip {
  if (evidence.vector) return fromVector(evidence, evidence.vector, fault, markers, draws)
  const [first, second] = basisIn(fault, evidence.grooves?.line ?? evidence.senses[0]?.toward ?? evidence.markers[0]?.looks[0]?.normal)
  const angle = evidence.grooves
    ? radians(evidence.grooves.sigma) * draws.normal() + (draws.uniform() < 0.5 ? 0 : Math.PI)
    : 2 * Math.PI * draws.uniform()
  const direction = add(scaled(first, Math.cos(angle)), scaled(second, Math.sin(angle)))
  const pulls = markers.map((m): Pull => ({ offset: m.offset, sigma: m.sigma, share: dot(m.normal, direction) }))
  const { amount, logWeight } = proposeAmount(pulls, evidence.amount, draws)
  return { slip: scaled(direction, amount), logWeight: logWeight + logSenses(evidence.senses, fault, direction) }
}

function fromVector(
  evidence: CheckedEvidence, { slip: given, sigma }: { readonly slip: Enu, readonly sigma: number }, fault: Enu, markers: readonly DrawnMarker[], draws: Draws,
): ProposedSlip {
  const slip = add(given, [sigma * draws.normal(), sigma * draws.normal(), sigma * draws.normal()])
  let logWeight = markers.reduce((sum, m) => sum + logDensity({ offset: m.offset, sigma: m.sigma, share: 1 }, dot(m.normal, slip)), 0)
  const size = length(slip)
  if (size > 0) {
    const direction = scaled(slip, 1 / size)
    logWeight += logSenses(evidence.senses, fault, direction)
    if (evidence.grooves && evidence.grooves.sigma > 0) {
      const [first, second] = basisIn(fault, evidence.grooves.line)
      const off = Math.atan(Math.abs(dot(direction, second)) / Math.abs(dot(direction, first)))
      logWeight -= (off / radians(evidence.grooves.sigma)) ** 2 / 2
    }
  }
  return { slip, logWeight }
}

/** Two unit vectors in a plane, square to each other, the first as near as may be to a given direction. */
function basisIn(normal: Enu, toward: Enu = [1, 0, 0]): readonly [Enu, Enu] {
  const flat = subtract(toward, scaled(normal, dot(toward, normal)))
  const other: Enu = Math.abs(normal[0]) < 0.6 ? [1, 0, 0] : [0, 1, 0]
  const first = unit(length(flat) > 1e-9 ? flat : cross(normal, other))
  return [first, cross(normal, first)]
}

/** A direction agrees with a named one by the cosine between them; against it, by what trust is left over. */
function logSenses(senses: readonly SlipSense[], fault: Enu, direction: Enu): number {
  return senses.reduce((sum, { toward, trust }) => {
    const flat = subtract(toward, scaled(fault, dot(toward, fault)))
    const size = length(flat)
    if (size === 0) return sum
    const cosine = dot(direction, flat) / size
    return sum + Math.log((cosine >= 0 ? trust : 1 - trust) * Math.abs(cosine))
  }, 0)
}
