import { drawsFrom } from '@lodebook/reckon'
import type { Answer, NotEnough } from '../answer.ts'
import { buildAnswer } from '../build-answer.ts'
import type { Grade, LostPart } from '../shapes.ts'
import { figure, length } from '../words.ts'
import type { CrewUnits } from '../words.ts'
import { worked } from './slot.ts'
import type { Rocks, Slot } from './slot.ts'

const seed = 1911

/** Chance that a heading from the best station meets the lost part within so many metres; undefined while nothing tells where it is. */
export function chanceMet(lostPart: LostPart | NotEnough, metres: number): number | undefined {
  if ('notEnough' in lostPart || 'notEnough' in lostPart.heading) return undefined
  const { chance, meets } = lostPart.heading
  const after = chance.findIndex(c => c.within >= metres)
  if (after < 0) return Math.max(meets, chance.at(-1)?.chance ?? 0)
  const [a, b] = [chance[after - 1] ?? { within: 0, chance: 0 }, chance[after]!]
  return a.chance + (b.chance - a.chance) * (metres - a.within) / Math.max(b.within - a.within, 1e-9 * b.within)
}

export interface LostInput {
  readonly chance: number
  readonly area: number
  readonly grade: Grade
  readonly slot: Slot
  readonly units: CrewUnits
  readonly metres: number
}

/**
 * Rock and gold past the fault, outcome by outcome: nothing where the heading misses; where it meets, so much vein of the kind that one panel of this
 * side holds, another panel in each outcome. One panel stands for all of it, so that the doubt is that of ground not seen.
 */
export function lostGround({ chance, area, grade, slot, units, metres }: LostInput): Rocks & { readonly answer: Answer } {
  const draws = drawsFrom(seed)
  const { panels, density } = grade.outcomes
  const count = density.length
  const tonnes = new Float64Array(count), ounces = new Float64Array(count)
  const known = panels.map(p => worked(p, density, slot))
  for (let k = 0; k < count; k++) {
    const [met, which] = [draws.uniform() < chance, Math.floor(draws.uniform() * panels.length)]
    const panel = panels[which]
    if (!met || !panel) continue
    tonnes[k] = known[which]!.tonnes[k]! * area / panel.area
    ounces[k] = known[which]!.ounces[k]! * area / panel.area
  }
  return {
    tonnes, ounces,
    answer: buildAnswer({
      id: 'pay.lost', value: chance, unit: 'chance', sentence: `${length(metres, units, 2)} of heading meets the lost part in ${Math.round(100 * chance)} of 100 cases; then ${figure(area, 2)} m² of vein is worked, as rich as some panel of this side.`,
      method: { name: 'chance of meeting the lost part times ground like this side\'s', page: 'pay', working: [`chance within ${figure(metres, 3)} m: ${figure(chance, 2)}`, `${panels.length} panels, one drawn for each outcome, seed ${seed}`] },
      parts: [grade.ounces],
      cautions: ['Past the fault nothing has been sampled.'],
    }),
  }
}
