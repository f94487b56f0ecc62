import { convert } from '@lodebook/reckon/units'
import { buildAnswer, quantile, rangeOf } from '../build-answer.ts'
import { said } from '../rounding.ts'
import { grade as gradeWords, plural } from '../words.ts'
import type { CrewUnits } from '../words.ts'
import type { GroundAt } from './ground-at.ts'
import { notResource } from './notice.ts'
import type { GroundOutcomes } from './outcomes.ts'
import type { Slot } from './panel-answers.ts'
import type { AboveCutOff, Panel } from './shapes.ts'
import { gramsPerOunce } from './troy.ts'

/** Cut-offs that a crew would name: round figures in its own unit, as g/t, rising: from below what the leanest ground runs to above the richest. */
export function roundCutOffs(units: CrewUnits, lowest: number, highest: number): readonly number[] {
  const lead = [1, 1.5, 2, 3, 4, 5, 6, 8], all: number[] = []
  for (let power = units.grade === 'g/t' ? -1 : -2; power < 4; power++) all.push(...lead.map(l => convert(l * 10 ** power, units.grade, 'g/t')))
  const from = Math.max(0, all.findIndex(c => c > lowest)), to = all.findIndex(c => c > highest)
  return [0, ...all.slice(from, Math.max(from + 4, to < 0 ? all.length : to))]
}

/**
 * What is left above each cut-off: panels are chosen on their expected grade as broken, never on an outcome, so that the range is of what
 * those panels may really hold.
 */
export function aboveCutOffs(cutOffs: readonly number[], panels: readonly Panel[], ground: GroundAt,
  outcomes: GroundOutcomes, slot: Slot, units: CrewUnits): readonly AboveCutOff[] {
  const count = outcomes.density.length, tonnes = new Float64Array(count), ounces = new Float64Array(count)
  const order = ground.panels.map((_, i) => i).sort((a, b) => panels[b]!.broken.grade - panels[a]!.broken.grade)
  const found: AboveCutOff[] = []
  let next = 0
  for (const cutOff of [...cutOffs].reverse()) {
    for (; next < order.length && panels[order[next]!]!.broken.grade >= cutOff; next++) {
      const i = order[next]!, a = outcomes.accumulation[i]!, w = outcomes.width[i]!, { area } = ground.panels[i]!
      for (let k = 0; k < count; k++) {
        const wall = Math.max(0, slot.width - w[k]!) * slot.wallDensity
        tonnes[k]! += area * (w[k]! * outcomes.density[k]! + wall)
        ounces[k]! += area * (a[k]! * outcomes.density[k]! + wall * slot.wallGrade) / gramsPerOunce
      }
    }
    found.unshift(answersAt(cutOff, next, [...tonnes], [...ounces], units))
  }
  return found
}

function answersAt(cutOff: number, panels: number, tonnes: readonly number[], ounces: readonly number[], units: CrewUnits): AboveCutOff {
  const middle = (values: readonly number[]) => quantile([...values].sort((a, b) => a - b), 0.5)
  const where = `${plural(panels, 'panel')} above ${gradeWords(cutOff, units)} as broken`
  const method = { name: 'panels chosen on their expected grade, then counted outcome by outcome', page: 'grade', working: [where] }
  const make = (id: string, values: readonly number[], unit: string, shown: string) => {
    const value = values.length > 0 ? middle(values) : 0, range = rangeOf(values, ['grade and width between samples'])
    const s = said({ value, range }, unit, shown)
    return buildAnswer({ id: `grade.above.${cutOff.toPrecision(3)}.${id}`, value, unit, range, method, cautions: [notResource], sentence: `${where}: ${s.value} ${s.unit} (80 %: ${s.low} to ${s.high}).` })
  }
  return {
    cutOff, panels, tonnes: make('tonnes', tonnes, 't', units.rock), ounces: make('ounces', ounces, 'ozt', 'ozt'),
    grade: make('grade', ounces.map((oz, k) => tonnes[k]! > 0 ? oz * gramsPerOunce / tonnes[k]! : 0), 'g/t', units.grade),
  }
}
