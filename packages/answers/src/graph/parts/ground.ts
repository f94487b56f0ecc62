import { groundSeen } from '../../today/ground-seen.ts'
import { wayIn } from '../../today/way-in.ts'
import type { Graph } from '../graph.ts'

/** What was seen, measured and done about the ground. */
export const ground = (g: Graph) => g.node('ground seen', () => groundSeen({
  notes: g.of('ground'), rocks: g.of('rock'), scaling: g.of('scaling'), structures: g.of('structure'), at: g.placings.get('structure')!.value.at, headings: g.headings.value, stations: g.stations.value,
  north: g.survey.value.north, way: wayIn(g.survey.value, g.headings.value), assume: g.assume.value, units: g.units.value,
}))
