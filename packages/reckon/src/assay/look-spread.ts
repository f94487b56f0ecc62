import { InputError, positive } from '../core/index.ts'

/** What decides how far one determination strays: how much of the gold's grains the portion can have held, and all else. */
export interface Determination {
  /** Mass of the portion, g. */
  readonly mass: number
  /** Mass of the grains that carry the gold, mg. */
  readonly grain: number
  /** Share of the gold that it finds; 1 unless said. */
  readonly recovery?: number
  /** Relative standard deviation of all else: analysis, weighing, recovery. */
  readonly relativeSd: number
}

/**
 * Relative standard deviation that one determination ought to have at a grade, by the count of its grains and its other errors.
 *
 * Duplicates that scatter more than this have met something that theory does not know of: a bad split, uneven ground, a mixed-up bag.
 * @param grade g/t
 * @throws InputError
 * Source: Poisson's law for grains; Clifton and others, USGS Professional Paper 625-C, 1969 (from memory).
 */
export function expectedSpread({ mass, grain, recovery = 1, relativeSd }: Determination, grade: number): number {
  if (!(recovery > 0 && recovery <= 1)) throw new InputError('recovery', recovery, 'a share above 0 and at most 1')
  if (!(relativeSd >= 0 && Number.isFinite(relativeSd))) throw new InputError('relativeSd', relativeSd, 'zero or more')
  const grains = positive(mass, 'mass') * positive(grade, 'grade') * recovery / (1000 * positive(grain, 'grain'))
  return Math.sqrt(1 / grains + relativeSd ** 2)
}
