import { InputError, positive } from '../core/index.ts'

/** A sample of ground whose gold is in grains of one mass. */
export interface NuggetSample {
  readonly massG: number
  readonly gradeGPerT: number
  readonly grainMg: number
  /** Share of the gold that is in such grains. */
  readonly freeShare?: number
}

export interface NuggetCount {
  /** Grains in such a sample on average. */
  readonly expected: number
  /** Chance that it holds none at all. */
  readonly chanceOfNone: number
  /** One standard deviation of the count over its mean: what coarse gold alone does to one sample's grade. */
  readonly relativeSd: number
}

/**
 * How many gold grains a sample holds on average, and how often it holds none: why a small sample of coarse gold mostly reads low.
 * @throws InputError
 * Source: Poisson's law; its use for gold grains: Clifton and others, USGS Professional Paper 625-C, 1969 (from memory).
 */
export function nuggetCount({ massG, gradeGPerT, grainMg, freeShare = 1 }: NuggetSample): NuggetCount {
  if (!(freeShare > 0 && freeShare <= 1)) throw new InputError('free_share', freeShare, 'above 0, at most 1')
  const expected = positive(massG, 'mass_g') * positive(gradeGPerT, 'grade_g_t') * freeShare / (positive(grainMg, 'grain_mg') * 1000)
  return { expected, chanceOfNone: Math.exp(-expected), relativeSd: 1 / Math.sqrt(expected) }
}

/** Mass in grams that holds `grains` grains on average. Twenty give about +-45 % at 95 %. */
export function massForGrains(grains: number, { gradeGPerT, grainMg, freeShare = 1 }: Omit<NuggetSample, 'massG'>): number {
  if (!(freeShare > 0 && freeShare <= 1)) throw new InputError('free_share', freeShare, 'above 0, at most 1')
  return positive(grains, 'grains') * positive(grainMg, 'grain_mg') * 1000 / (positive(gradeGPerT, 'grade_g_t') * freeShare)
}
