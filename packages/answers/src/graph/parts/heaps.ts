import { heapsOf } from '../../grade/heaps.ts'
import type { Graph } from '../graph.ts'

/** What the heaps of broken rock hold. */
export const heaps = (g: Graph) => g.node('heaps', () => heapsOf({
  heaps: g.of('heap'), samples: g.of('sample'), beliefs: g.beliefs.value, assume: g.assume.value, units: g.units.value,
}))
