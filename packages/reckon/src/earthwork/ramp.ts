import { InputError, positive, radians } from '../core/index.ts'

export interface Ramp {
  /** Along the ground plan, from its foot to its top. */
  readonly length: number
  /** Packed fill, volume. */
  readonly fill: number
  /** Of which the crown on top of a flat way. */
  readonly crown: number
  /** How far its foot reaches out to each side at the highest place. */
  readonly reach: number
}

interface RampOptions { readonly ground?: number, readonly sidesDeg: number, readonly crown?: number }

/**
 * Fill for a ramp built up against a slope: a way of even grade that starts level with the ground and climbs until it has gained the rise.
 *
 * Under the way the fill at a distance s from the foot is s (grade - ground) deep, its sides stand at their own slope, and the crown adds
 * width x crown / 2 along it. With depth d linear in s: V = L (w d/2 + d² / (3 tan sides)) + crown; exact on even ground.
 * @param rise  height gained, above zero
 * @param width  of the way
 * @param grade  rise over run, above zero
 * @param options.ground  rise over run of the ground under it, below the grade; 0 for level
 * @param options.sidesDeg  slope of its sides
 * @param options.crown  height of the middle of the way above its edges
 * @throws InputError for sizes out of bounds; a ground as steep as the way needs no ramp
 */
export function rampFill(rise: number, width: number, grade: number, options: RampOptions): Ramp {
  const { ground = 0, sidesDeg, crown = 0 } = options
  positive(rise, 'rise')
  positive(width, 'width')
  positive(grade, 'grade')
  if (!(Number.isFinite(ground) && ground < grade && ground >= 0)) throw new InputError('ground', ground, `a slope from 0 to less than the grade, ${grade}`)
  if (!(sidesDeg > 0 && sidesDeg <= 90)) throw new InputError('sides', sidesDeg, 'an angle above 0, up to 90')
  if (!(crown >= 0 && Number.isFinite(crown))) throw new InputError('crown', crown, 'a height of zero or more')
  const length = rise / grade, deep = length * (grade - ground), out = sidesDeg === 90 ? 0 : 1 / Math.tan(radians(sidesDeg))
  const crowned = length * width * crown / 2
  return { length, fill: length * (width * deep / 2 + out * deep * deep / 3) + crowned, crown: crowned, reach: deep * out }
}

/**
 * Fill for a washed-out gully of even shape: length x width x depth times how full its cross section is of that oblong.
 * @param shape  'V' 1/2, 'round' 2/3 (a parabola), 'flat' 1
 * @throws InputError for sizes that are not above zero
 */
export function gullyFill(length: number, width: number, depth: number, shape: 'V' | 'round' | 'flat'): number {
  return positive(length, 'length') * positive(width, 'width') * positive(depth, 'depth') * { V: 1 / 2, round: 2 / 3, flat: 1 }[shape]
}
