import { bagsOf } from '../../bags/bags.ts'
import type { Graph } from '../graph.ts'

/** Whether every bag can be accounted for. */
export const bags = (g: Graph) => g.node('bags', () => bagsOf({
  rolls: g.of('label-roll'), samples: g.of('sample'), splits: g.of('split'), pans: g.of('pan'), assays: g.of('assay'), densities: g.of('density'), custody: g.of('custody'),
}))
