import type { Random } from '../random.ts'

/**
 * Gold by size of grain: its share of the metal, the weight of one grain and how much of it a careful panner keeps. Coarse gold
 * carries a tenth of the metal in a few grains, so that small samples are erratic. Stated for this invented vein; no source.
 */
export interface GrainClass {
  readonly class: 'coarse' | 'medium' | 'fine' | 'flour'
  readonly share: number
  readonly mgEach: number
  /** Share of such grains that a panner keeps, and of those the share that is seen and counted. */
  readonly kept: number
  readonly counted: number
  /** How many pieces the laboratory's pulveriser makes of one. */
  readonly pieces: number
}

export const grainClasses: readonly GrainClass[] = [
  { class: 'coarse', share: 0.1, mgEach: 3, kept: 0.99, counted: 1, pieces: 24 },
  { class: 'medium', share: 0.25, mgEach: 0.7, kept: 0.97, counted: 1, pieces: 8 },
  { class: 'fine', share: 0.35, mgEach: 0.1, kept: 0.88, counted: 0.97, pieces: 2 },
  { class: 'flour', share: 0.3, mgEach: 0.01, kept: 0.45, counted: 0.85, pieces: 1 },
]

/** Number of grains of each class, in the order of `grainClasses`. */
export type Grains = readonly number[]

/** Grains in so many grams of material of this grade (g/t): each class by Poisson's law. */
export const drawGrains = (rng: Random, grams: number, grade: number): Grains =>
  grainClasses.map(g => rng.poisson(grams * grade * 1e-3 * g.share / g.mgEach))

/** The grains that go with a share of the material when it is split. */
export const splitGrains = (rng: Random, grains: Grains, share: number): Grains => grains.map(n => rng.binomial(n, share))

export const lessGrains = (grains: Grains, taken: Grains): Grains => grains.map((n, i) => n - taken[i]!)
export const addGrains = (a: Grains, b: Grains): Grains => a.map((n, i) => n + b[i]!)

/** Milligrams of gold. */
export const goldIn = (grains: Grains): number => grains.reduce((sum, n, i) => sum + n * grainClasses[i]!.mgEach, 0)

/** Share of all the metal that panning keeps. */
export const panRecovery: number = grainClasses.reduce((sum, g) => sum + g.share * g.kept, 0)
