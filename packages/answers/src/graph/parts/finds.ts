import { findsOf } from '../../finds/finds.ts'
import type { Graph } from '../graph.ts'

/** What was found, where, and what swept ground was silent. */
export const finds = (g: Graph) => g.node('finds', () => findsOf({
  targets: g.of('target'), samples: g.of('sample'), sweeps: g.of('sweep'), checks: g.of('target-check'), splits: g.of('split'), pans: g.of('pan'), assays: g.of('assay'),
  relics: g.of('relic'), photos: g.of('photo'), shots: g.of('shot'), ties: g.of('tie'), headings: g.of('heading'),
  context: g.context.value, placed: [...g.placings.values()].flatMap(p => p.value.placed), units: g.units.value,
}))
