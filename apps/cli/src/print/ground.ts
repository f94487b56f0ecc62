import type { CrewUnits, GroundSeen } from '@lodebook/answers'
import { length } from '@lodebook/answers'
import { cautionsPart, figuresPart, page, under } from './page-parts.ts'
import { sentences } from './problems.ts'
import { table } from './table.ts'

/** The ground: notes by distance, classifications, blocks, the scaling log. */
export function groundPage({ sentence, places, rock, joints, scaling, cautions }: GroundSeen, units: CrewUnits, width: number): string {
  const far = (distance: number | undefined) => distance === undefined ? 'not placed' : length(distance, units, 2), rows = (body: readonly (readonly string[])[]) => table(body, { width, indent: 2 })
  return page(sentences([sentence], width),
    under('Last look at each place', rows(places.map(p => [far(p.distance), p.name, p.notes[0]!.taken ?? '', p.notes[0]!.found.join(', '), p.notes[0]!.scaled ? 'scaled' : p.notes[0]!.action ?? '']))),
    under('Rock mass', figuresPart(rock.flatMap(r => [...r.rating ? [r.rating] : [], ...r.quality ? [r.quality] : []]), width)),
    under('At that width', sentences(rock.flatMap(r => r.says.map(s => `${r.where}. ${s}`)), width)),
    under('Blocks that joints can cut loose, heaviest first', figuresPart(joints.flatMap(j => j.blocks.slice(0, 3).map(b => b.answer)), width)),
    under('Scaling log', rows(scaling.map(s => [s.taken.slice(0, 10), s.where, s.pieces === undefined ? '' : `${s.pieces} pieces`, s.left ?? '']))),
    cautionsPart(cautions, width))
}
