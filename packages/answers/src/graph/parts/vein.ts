import { notEnough } from '../../answer.ts'
import type { Graph } from '../graph.ts'

/** The vein as one plane, with its widths and its fault. */
export const vein = (g: Graph) => g.node('vein drawn', () => { const found = g.vein.value; return notEnough(found) ? found : found.at })
