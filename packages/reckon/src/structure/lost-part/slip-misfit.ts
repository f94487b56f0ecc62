import { radians } from '../../core/index.ts'
import type { Enu } from '../../core/index.ts'
import { add, along, cross, dot, length, scaled, subtract, unit } from '../vector.ts'
import type { DoubtfulPlane } from './doubtful-plane.ts'
import type { MarkerOffset } from './marker-offset.ts'
import type { CheckedEvidence } from './slip-evidence.ts'

const steps = 720 // half a degree: grooves are never read better

/**
 * How many standard deviations the pieces of evidence are apart where they agree best.
 *
 * The planes are taken as given, their errors added to those of the offsets. Of a marker that can be read in more than one way the likeliest is
 * taken. Senses and the prior on the amount are left out: they forbid little.
 * @returns 0 when there is no more evidence than it takes to fix a slip
 */
export function slipMisfit({ vector, grooves, markers }: CheckedEvidence, vein: DoubtfulPlane, fault: DoubtfulPlane): number {
  if (vector) return 0
  const pulls = markers.map(marker => pullOf(marker, vein))
  let best = Infinity
  const first = unit(cross(fault.normal, Math.abs(fault.normal[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0]))
  const second = cross(fault.normal, first)
  for (let k = 0; k < steps; k++) {
    const angle = 2 * Math.PI * k / steps
    const direction = add(scaled(first, Math.cos(angle)), scaled(second, Math.sin(angle)))
    let [precision, pulled] = [0, 0]
    for (const { normal, offset, sigma } of pulls) {
      const share = dot(normal, direction)
      precision += (share / sigma) ** 2
      pulled += share * offset / (sigma * sigma)
    }
    const amount = precision > 0 ? Math.max(0, pulled / precision) : 0
    const offMarkers = pulls.reduce((sum, p) => sum + ((p.offset - amount * dot(p.normal, direction)) / p.sigma) ** 2, 0)
    const offGrooves = grooves && grooves.sigma > 0 ? (angleFrom(grooves.line, fault.normal, direction) / radians(grooves.sigma)) ** 2 : 0
    best = Math.min(best, offMarkers + offGrooves)
  }
  return Math.sqrt(best)
}

/** Angle in the fault between a direction in it and a line, radians, [0, pi/2]. */
function angleFrom(line: Enu, fault: Enu, direction: Enu): number {
  const flat = subtract(line, scaled(fault, dot(line, fault)))
  const size = length(flat)
  return size === 0 ? 0 : Math.acos(Math.min(1, Math.abs(dot(flat, direction)) / size))
}

function pullOf(marker: MarkerOffset, vein: DoubtfulPlane) {
  const { normal, covariance, offset, sigma, arm } = marker.looks[0]!
  const turning = covariance ? Math.max(0, along(covariance, arm)) : 0
  return { normal, offset, sigma: Math.sqrt(sigma ** 2 + turning + (marker.isVein ? (vein.sigma ?? 0) ** 2 : 0)) }
}
