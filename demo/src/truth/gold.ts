import type { Degrees, VeinPoint } from '@lodebook/reckon'
import type { Random } from '../random.ts'
import { gaussianField } from './gaussian-field.ts'
import { stated } from './stated.ts'

/** A long rich body in the vein: a bell about its centre, longer along its pitch, at the middle so many times richer than the ground around. */
export interface Shoot {
  readonly centre: VeinPoint
  /** From the strike direction towards down dip. */
  readonly pitch: Degrees
  /** One standard deviation of the bell each way, metres. */
  readonly halfLength: number
  readonly halfBreadth: number
  readonly times: number
}

export interface Gold {
  /** True thickness, metres, always between 0.2 and 0.6. */
  width(p: VeinPoint): number
  /** Grade of a channel's worth of ground at a point, before its grains are counted out: g/t over the vein's own width. */
  grade(p: VeinPoint): number
  /** Grade times true thickness, g/t m. */
  accumulation(p: VeinPoint): number
  readonly shoot: Shoot
  /** ln(accumulation) at a point, its stated law: median outside the shoot, and the deviation about the trend. */
  readonly median: number
  readonly logDeviation: number
}

/** Median accumulation outside the shoot, g/t m. */
const median = 1.2
const logDeviation = 0.7

/**
 * The gold: ln(accumulation) is a trend (a rich shoot that pitches to the right, part of which the old workers stoped) plus a
 * correlated normal field, longer down the shoot than across it.
 */
export function makeGold(rng: Random): Gold {
  const pitch = rng.normal(58, 4)
  const shoot: Shoot = {
    centre: { along: rng.normal(-27, 1.5), down: rng.normal(2, 1.5) }, pitch, times: rng.lognormal(10, 0.2),
    halfLength: rng.uniform(13, 18), halfBreadth: rng.uniform(4.5, 6),
  }
  const thickness = gaussianField(rng, { type: 'gaussian', range: 6, ratio: 0.7, pitch })
  const richness = gaussianField(rng, { type: 'exponential', range: 5, ratio: 0.6, pitch })
  const c = Math.cos(pitch * Math.PI / 180), s = Math.sin(pitch * Math.PI / 180)

  const width = (p: VeinPoint) => 0.2 + 0.4 / (1 + Math.exp(-1.1 * thickness(p)))
  function accumulation(p: VeinPoint): number {
    const a = p.along - shoot.centre.along, d = p.down - shoot.centre.down
    const bump = Math.exp(-0.5 * (((a * c + d * s) / shoot.halfLength) ** 2 + ((d * c - a * s) / shoot.halfBreadth) ** 2))
    return median * Math.exp(Math.log(shoot.times) * bump + logDeviation * richness(p))
  }
  return { width, accumulation, grade: p => accumulation(p) / width(p), shoot, median, logDeviation }
}

/** Grams of gold to one square metre of vein. */
export const gramsPerSquareMetre = (accumulation: number): number => accumulation * stated.density
