import { samplePlanning } from '../../sampling/sample-planning.ts'
import type { Graph } from '../graph.ts'

/** How much to take, and how, for the crew's own material. */
export const samplePlan = (g: Graph) => g.node('sample plan', () => samplePlanning({
  samples: g.of('sample'), pans: g.of('pan'), beliefs: g.beliefs.value, assume: g.assume.value, units: g.units.value,
}))
