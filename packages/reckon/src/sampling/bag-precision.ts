import { positive } from '../core/index.ts'
import { fundamentalVariance, samplingError } from './sampling-error.ts'
import type { GoldLot } from './sampling-error.ts'

/** What is known of the rock before a bag is filled. */
export type RockOfGrains = Omit<GoldLot, 'nominalSizeCm' | 'massG' | 'lotMassG'>

/**
 * Relative variance that one gram of sample has from pieces of a size, g: C d³ of Gy's formula. Below the size of the gold it stays as it is there:
 * a mortar flattens gold and does not break it, so finer crushing buys nothing more.
 */
export function variancePerGram(rock: RockOfGrains, sizeCm: number): number {
  const size = Math.max(positive(sizeCm, 'size_cm'), rock.liberationSizeCm)
  const { samplingConstant } = samplingError({ ...rock, nominalSizeCm: size, massG: 1 } satisfies GoldLot)
  return fundamentalVariance({ samplingConstant, sizeCm: size, massG: 1 })
}

export interface BagPrecision {
  /** One standard deviation over the grade, if every gold grain lay singly: no bag of this mass can do better. */
  readonly atBest: number
  /** The same for rock thrown into the bag in pieces of this size. */
  readonly asBroken: number
  /** Grains such as carry most of the gold, on average, and the chance that the bag holds none. */
  readonly grains: number
  readonly chanceOfNone: number
}

/**
 * What precision a bag can have at best, before it is filled.
 *
 * The grains counted are those that have as much effect as the whole mixture of sizes: 1/variance of them.
 * @throws InputError
 * Source: Gy's formula in the gold form (see sampling-error.ts) and Poisson's law; that gold does not break finer is common practice, no source.
 */
export function bagPrecision(rock: RockOfGrains, massG: number, fragmentCm: number): BagPrecision {
  const single = variancePerGram(rock, rock.liberationSizeCm) / positive(massG, 'mass_g')
  return { atBest: Math.sqrt(single), asBroken: Math.sqrt(variancePerGram(rock, fragmentCm) / massG), grains: 1 / single, chanceOfNone: Math.exp(-1 / single) }
}
