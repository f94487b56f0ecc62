import { labOf } from '../../lab/lab.ts'
import type { Graph } from '../graph.ts'

/** What it ran, and whether it can be believed. */
export const lab = (g: Graph) => g.node('lab', () => labOf({
  of: g.of, bagged: g.looks.value, beliefs: g.beliefs.value, swaps: g.swaps.value, densities: g.densities.value, assume: g.assume.value, units: g.units.value,
}))
