import { mean } from '../build-answer.ts'
import { grade as gradeWords, plural } from '../words.ts'
import { gramsPerOunce } from '../grade/troy.ts'
import type { GroundedOption } from './crew-options.ts'
import type { PayInput } from './input.ts'
import { addRock, noRock, worked } from './slot.ts'
import type { Slot } from './slot.ts'

/** With no panel that pays, at least so much rock is judged, t. */
const leastTonnes = 5

/**
 * What is judged while the crew has made no option: the panels whose expected gold pays for their own rock at `breakEven` ounces a tonne, worked together.
 * What is chosen rests on the averages only, never on an outcome. When none pays, the richest that make five tonnes together.
 */
export function bestPanels({ grade, units }: PayInput, slot: Slot, breakEven: number): GroundedOption & { readonly pays: boolean } {
  const ranked = grade.outcomes.panels
    .map((panel, i) => {
      const w = worked(panel, grade.outcomes.density, slot)
      return { i, w, tonnes: mean(w.tonnes), expected: mean(w.ounces) / mean(w.tonnes) }
    })
    .sort((a, b) => b.expected - a.expected)
  const paying = ranked.filter(p => p.expected >= breakEven)
  const chosen = [...paying]
  let tonnes = chosen.reduce((sum, p) => sum + p.tonnes, 0)
  for (const p of ranked.slice(chosen.length)) {
    if (tonnes >= leastTonnes) break
    chosen.push(p)
    tonnes += p.tonnes
  }
  const rocks = noRock(grade.outcomes.density.length)
  for (const p of chosen) addRock(rocks, p.w)
  const names = chosen.map(p => grade.panels[p.i]!.name)
  return {
    ...rocks, name: paying.length > 0 ? 'the panels that should pay' : 'the richest panels', entry: undefined, pays: paying.length > 0, panels: chosen.map(p => p.i), heap: undefined, metres: 0, waste: 0,
    ground: `${plural(names.length, 'panel')} (${names.length <= 6 ? names.join(', ') : `${names.slice(0, 6).join(', ')} and ${names.length - 6} more`})`,
    steps: ['break', 'muck', 'tram', 'crush', 'wash', 'clean up'], parts: [grade.ounces, ...chosen.map(p => grade.panels[p.i]!.answer)],
    cautions: [`Panels are picked that are expected to carry ${gradeWords(breakEven * gramsPerOunce, units)} as worked. Write an option of work to judge what you would really do.`],
  }
}
