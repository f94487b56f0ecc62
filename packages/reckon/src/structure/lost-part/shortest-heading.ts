import type { Degrees, Enu } from '../../core/index.ts'
import { InputError } from '../../core/index.ts'
import { wrapped } from '../attitude.ts'
import { checkedPoint } from '../spread.ts'
import { lengthFor } from './lengths.ts'
import type { LostPartDraw, LostPartFamily } from './lost-part-family.ts'
import { headingDirection, lengthTo } from './meet-heading.ts'
import type { Heading } from './meet-heading.ts'

export interface HeadingChoice {
  /** Share of draws in which the heading is to meet the vein; 0.8 unless stated. */
  readonly share?: number
  /** Holds the inclination, such as 0 for a level crosscut; free between the steepest ones unless stated. */
  readonly inclination?: Degrees
}

export interface ShortestHeading extends Heading {
  /** Length that meets the vein in `share` of the draws. */
  readonly length: number
  readonly share: number
}

const usualShare = 0.8
const mostDrawsLookedAt = 250 // of many, at even steps: the direction needs no more
const [bearingStep, inclinationStep, steepest] = [6, 15, 75]
const finest = 0.25 // degrees; a heading is not held better

/**
 * The straight heading from a face that meets the lost part of a vein, with a stated chance, in the least length.
 *
 * Where the fault does not cut it off, that is nearly the square way to the continuation. One direction is chosen for all draws, because it has
 * to be driven before anyone knows which of them is so.
 * @returns undefined when no direction meets it in that share of draws
 * @throws InputError
 */
export function shortestHeading({ draws, far }: LostPartFamily, from: Enu, choice: HeadingChoice = {}): ShortestHeading | undefined {
  const { share = usualShare, inclination: held } = choice
  checkedPoint(from, 'from')
  if (held !== undefined && !(held >= -90 && held <= 90)) throw new InputError('inclination', held, '-90 to 90 degrees, up positive')
  const few = thinned(draws, mostDrawsLookedAt)
  const needed = (bearing: Degrees, inclination: Degrees) => {
    const direction = headingDirection({ bearing, inclination })
    return lengthFor(few.map(draw => lengthTo(draw, far, from, direction)), share)
  }
  let best = { bearing: 0, inclination: held ?? 0, length: Infinity }
  const look = (bearing: Degrees, inclination: Degrees): boolean => {
    const length = needed(bearing, inclination)
    if (!(length < best.length)) return false
    best = { bearing, inclination, length }
    return true
  }
  for (let inclination = held ?? -steepest; inclination <= (held ?? steepest); inclination += inclinationStep) {
    for (let bearing = 0; bearing < 360; bearing += bearingStep) look(bearing, inclination)
  }
  if (best.length === Infinity) return undefined
  for (let step = bearingStep / 2; step >= finest; step /= 2) {
    let moved = true
    while (moved) {
      const { bearing, inclination } = best
      moved = [-step, step].map(turn => look(bearing + turn, inclination)).includes(true)
      if (held === undefined) moved = [-step, step].map(lift => Math.abs(inclination + lift) <= 90 && look(bearing, inclination + lift)).includes(true) || moved
    }
  }
  const chosen = { from, bearing: wrapped(best.bearing), inclination: best.inclination }
  const direction = headingDirection(chosen)
  return { ...chosen, share, length: lengthFor(draws.map(draw => lengthTo(draw, far, from, direction)), share) }
}

/** At most so many, at even steps. */
export function thinned(draws: readonly LostPartDraw[], most: number): readonly LostPartDraw[] {
  if (draws.length <= most) return draws
  return Array.from({ length: most }, (_, i) => draws[Math.floor(i * draws.length / most)]!)
}
