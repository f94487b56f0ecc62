import type { Grade } from '../shapes.ts'
import { mean } from '../build-answer.ts'
import { gramsPerOunce } from '../grade/troy.ts'

/** Panels picked to be worked, and what breaking them at the least working width brings down in each outcome. */
export interface Plan {
  readonly panels: readonly string[]
  /** Rock broken, t, one an outcome. */
  readonly tonnes: readonly number[]
  /** Gold in it, ounces, one an outcome. */
  readonly ounces: readonly number[]
}

export interface Slot { readonly width: number, readonly wallDensity: number, readonly wallGrade: number }

type PanelOutcome = Grade['outcomes']['panels'][number]

/** Rock and gold of one panel worked at least so wide, outcome by outcome: the vein and as much wall as the slot needs. */
function worked(panel: PanelOutcome, density: readonly number[], slot: Slot): { tonnes: number[], ounces: number[] } {
  const tonnes: number[] = []
  const ounces: number[] = []
  for (let k = 0; k < panel.ounces.length; k++) {
    const wall = Math.max(0, slot.width - panel.width[k]!) * slot.wallDensity
    tonnes.push(panel.area * (panel.width[k]! * density[k]! + wall))
    ounces.push(panel.ounces[k]! + panel.area * wall * slot.wallGrade / gramsPerOunce)
  }
  return { tonnes, ounces }
}

/**
 * The panels whose expected gold pays for their own rock at `breakEven` ounces a tonne, worked together. What is chosen rests on the
 * averages only, never on an outcome. When none pays, the richest that make at least `least` tonnes together, so that there is something to judge.
 */
export function planOf(grade: Grade, slot: Slot, breakEven: number, least: number): Plan & { readonly pays: boolean } {
  const ranked = grade.outcomes.panels
    .map((panel) => { const w = worked(panel, grade.outcomes.density, slot); return { panel, w, expected: mean(w.ounces) / mean(w.tonnes) } })
    .sort((a, b) => b.expected - a.expected)
  const paying = ranked.filter(p => p.expected >= breakEven)
  const chosen = [...paying]
  let tonnes = chosen.reduce((sum, p) => sum + mean(p.w.tonnes), 0)
  for (const p of ranked.slice(chosen.length)) {
    if (tonnes >= least) break
    chosen.push(p)
    tonnes += mean(p.w.tonnes)
  }
  const sum = (key: 'tonnes' | 'ounces') => grade.outcomes.density.map((_, k) => chosen.reduce((total, p) => total + p.w[key][k]!, 0))
  return { panels: chosen.map(p => p.panel.name), tonnes: sum('tonnes'), ounces: sum('ounces'), pays: paying.length > 0 }
}
