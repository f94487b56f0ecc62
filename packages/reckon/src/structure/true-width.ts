import { InputError, positive } from '../core/index.ts'
import type { Degrees, Matrix3 } from '../core/index.ts'
import { checkedAttitude, normalOf } from './attitude.ts'
import type { Attitude } from './attitude.ts'
import { checkedLine, vectorOf } from './line.ts'
import type { Line } from './line.ts'
import { along, dot } from './vector.ts'

/** A width as taped: its length, which way the tape lay, and one standard deviation of each (length's unit; degrees). */
export interface TapedWidth extends Line {
  readonly length: number
  readonly lengthSigma?: number
  readonly directionSigma?: Degrees
}

export interface TrueWidth {
  readonly width: number
  /** One standard deviation, length's unit. */
  readonly sigma: number
  /** Width over taped length: the cosine of `angle`. */
  readonly factor: number
  /** Between the tape and the line square to the vein, [0, 90] degrees. */
  readonly angle: Degrees
  /** The tape lay so nearly in the vein that the direction's doubt is most of the factor: the width is then hardly known. */
  readonly alongVein: boolean
}

/** Factor below this many of its own standard deviations: the tape may as well have lain in the vein. */
const tellingTimes = 2

/**
 * True width of a vein from a tape laid across it at any angle: L |u . n|, with the doubt of the tape, of its direction and of the vein's attitude.
 *
 * Errors are carried to second order, because a tape laid nearly square to the vein has no first-order error of direction at all.
 * @param plane  attitude of the vein; `normal` its covariance as `fitPlane(...).doubt.normal` or `normalCovariance(...)` give it
 * @throws InputError
 * Source: direction cosines; error by Taylor expansion, derived here.
 */
export function trueWidth(tape: TapedWidth, plane: Attitude & { readonly normal?: Matrix3 }): TrueWidth {
  positive(tape.length, 'length')
  const sigmas = [tape.lengthSigma ?? 0, tape.directionSigma ?? 0] as const
  sigmas.forEach((sigma, i) => {
    if (!(sigma >= 0 && Number.isFinite(sigma))) throw new InputError(i === 0 ? 'lengthSigma' : 'directionSigma', sigma, 'zero or more')
  })
  const u = vectorOf(checkedLine(tape, 'tape'))
  const n = normalOf(checkedAttitude(plane, 'plane'))
  const factor = Math.min(1, Math.abs(dot(u, n)))
  const direction = (sigmas[1] * Math.PI / 180) ** 2
  const tilts = plane.normal
  // First order: how far u and n can move towards each other. Second order: the cosine's own bend.
  const first = direction * Math.max(0, 1 - factor * factor) + (tilts ? Math.max(0, along(tilts, u)) : 0)
  const total = 2 * direction + (tilts ? tilts[0][0] + tilts[1][1] + tilts[2][2] : 0)
  const bend = factor * factor * total * total / 4
  const factorVariance = first + bend
  return {
    width: tape.length * factor,
    sigma: Math.sqrt(factor * factor * sigmas[0] ** 2 + tape.length ** 2 * factorVariance),
    factor,
    angle: Math.acos(factor) * 180 / Math.PI,
    alongVein: factor < tellingTimes * Math.sqrt(factorVariance),
  }
}
