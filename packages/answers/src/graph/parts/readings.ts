import { readingsOf } from '../../survey/readings.ts'
import type { Graph } from '../graph.ts'

/** Every reading of the survey against the rest, and how good each survey turned out. */
export const readings = (g: Graph) => g.node('readings', () => readingsOf(g.survey.value))
