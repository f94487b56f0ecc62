import { todayOf } from '../../today/today.ts'
import type { Graph } from '../graph.ts'

/** What the book says before anybody goes in. */
export const today = (g: Graph) => g.node('today', () => todayOf({
  survey: g.survey.value, headings: g.headings.value, mine: g.mine.value, of: g.of, at: kind => g.placings.get(kind)!.value.at,
}))
