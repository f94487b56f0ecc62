import type { Graph } from '../graph.ts'

/** Where everything is. */
export const workings = (g: Graph) => g.workings
