import { radians, type Degrees, type VeinPoint } from '@lodebook/reckon'
import type { Random } from '../random.ts'

export interface FieldShape {
  /** exponential: correlation exp(-h/a), rough; gaussian: exp(-(h/a)²), smooth. */
  readonly type: 'exponential' | 'gaussian'
  /** The parameter a along the longer axis, metres. */
  readonly range: number
  /** Shorter axis over longer axis, in (0, 1]. */
  readonly ratio?: number
  /** Of the longer axis in the vein, from the strike direction towards down dip. */
  readonly pitch?: Degrees
}

/** More waves come nearer to the Gaussian law and cost more; with 100 the kurtosis of one point is 2.985. */
const waves = 100

/**
 * A random function over the vein with mean 0, variance 1 and the stated correlation, as a sum of plane waves whose wave numbers are
 * drawn from the spectrum of that correlation, one from each hundredth of it.
 * Source: M. Shinozuka and C.-M. Jan, Digital simulation of random processes and its applications, J. Sound Vib. 25 (1972) 111-128 (from memory).
 */
export function gaussianField(rng: Random, shape: FieldShape): (p: VeinPoint) => number {
  const pitch = radians(shape.pitch ?? 0), c = Math.cos(pitch), s = Math.sin(pitch), across = shape.range * (shape.ratio ?? 1)
  const kAlong = new Float64Array(waves), kDown = new Float64Array(waves), phase = new Float64Array(waves)
  for (let i = 0; i < waves; i++) {
    const u = (i + rng.uniform()) / waves
    // Radial wave number for a = 1: inverse of the share of the spectrum below it, in two dimensions.
    const k = shape.type === 'exponential' ? Math.sqrt(1 / (1 - u) ** 2 - 1) : 2 * Math.sqrt(-Math.log(1 - u))
    const angle = rng.uniform(0, 2 * Math.PI), kLong = k * Math.cos(angle) / shape.range, kShort = k * Math.sin(angle) / across
    kAlong[i] = kLong * c - kShort * s
    kDown[i] = kLong * s + kShort * c
    phase[i] = rng.uniform(0, 2 * Math.PI)
  }
  const scale = Math.sqrt(2 / waves)
  return ({ along, down }) => {
    let sum = 0
    for (let i = 0; i < waves; i++) sum += Math.cos(kAlong[i]! * along + kDown[i]! * down + phase[i]!)
    return sum * scale
  }
}
