import type { AnswerOr, CrewUnits, VeinSheet } from '@lodebook/answers'
import { isAnswer } from '@lodebook/answers'
import { sentences } from './problems.ts'
import { table } from './table.ts'

/** What the vein does, how thick it is and what it is made of, figures by the names under which they open. */
export function veinSheetPage({ sentence, lie, thickness, materials, gouge, walls, net, faults, cautions }: VeinSheet, _: CrewUnits, width: number): string {
  const means = net.groups.flatMap(g => g.mean ? [g.mean.answer] : [])
  const moved = faults.flatMap(f => [f.strike, f.dip, ...(f.grooves ? [f.grooves] : []), ...(f.sense ? [f.sense] : [])])
  const figures: readonly AnswerOr<unknown>[] = [
    lie.answer, thickness.answer, ...(thickness.swells ? [thickness.swells] : []), ...materials.slice(0, 8).map(m => m.answer), gouge, ...walls,
    ...(net.cutoff ? [net.cutoff.answer] : []), ...moved, ...means,
  ]
  const rows = table(figures.map(a => [isAnswer(a) ? a.id : '', a.sentence]), { width, indent: 2 })
  return [sentences([sentence], width), rows, ...(cautions.length > 0 ? [`Take care\n${sentences(cautions, width)}`] : [])].filter(part => part !== '').join('\n')
}
