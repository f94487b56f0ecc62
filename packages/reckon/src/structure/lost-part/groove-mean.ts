import { DegenerateError, InputError, radians } from '../../core/index.ts'
import type { Degrees } from '../../core/index.ts'

/** One reading of grooves: the angle in the fault, and one standard deviation of it. */
export interface GrooveReading { readonly rake: Degrees, readonly sigma: Degrees }

export interface GrooveMean {
  /** [0, 180) degrees from the strike direction. */
  readonly rake: Degrees
  /** One standard deviation of the mean: from the stated errors, or from the scatter where that is worse. */
  readonly sigma: Degrees
  /** How far single readings lie from the mean, one standard deviation; undefined for one reading. */
  readonly scatter: Degrees | undefined
}

/**
 * Mean of rakes, which are lines without a sense: 179 and 1 average 0, by doubling the angles. Weighted by the stated errors.
 * @throws DegenerateError("too few" | "no mean direction"); InputError
 * Source: Mardia and Jupp, Directional Statistics, 2000, section 1.1 (axial data; from memory).
 */
export function grooveMean(readings: readonly GrooveReading[]): GrooveMean {
  if (readings.length === 0) throw new DegenerateError('too few', 'readings', 0, 'one reading of grooves or more')
  let [x, y, total] = [0, 0, 0]
  readings.forEach(({ rake, sigma }, i) => {
    if (!Number.isFinite(rake)) throw new InputError(`readings[${i}].rake`, rake, 'degrees from the strike direction')
    if (!(Number.isFinite(sigma) && sigma > 0)) throw new InputError(`readings[${i}].sigma`, sigma, 'degrees above zero')
    const weight = 1 / sigma ** 2
    x += weight * Math.cos(2 * radians(rake))
    y += weight * Math.sin(2 * radians(rake))
    total += weight
  })
  if (Math.hypot(x, y) <= readings.length * Number.EPSILON * total) throw new DegenerateError('no mean direction', 'readings', readings.length, 'grooves that do not cancel out')
  const mean = Math.atan2(y, x) * 90 / Math.PI
  const off = readings.map(({ rake }) => ((rake - mean) % 180 + 270) % 180 - 90)
  const stated = 1 / Math.sqrt(total)
  if (readings.length < 2) return { rake: (mean + 180) % 180, sigma: stated, scatter: undefined }
  const spare = readings.length - 1
  const misfit = off.reduce((sum, angle, i) => sum + (angle / readings[i]!.sigma) ** 2, 0) / spare
  return {
    rake: (mean + 180) % 180, sigma: stated * Math.sqrt(Math.max(1, misfit)),
    scatter: Math.sqrt(off.reduce((sum, angle) => sum + angle ** 2, 0) / spare),
  }
}
