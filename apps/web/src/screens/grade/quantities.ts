import type { AboveCutOff, Panel, Realisation } from '@lodebook/answers'
import type { BookState } from '../../bookkeeper/desk.ts'
import { crewText, crewUnit, crewValue } from '../../words/crew-value.ts'
import { figures } from '../../words/number.ts'

export const quantities = ['grade', 'width', 'accumulation', 'chance', 'range'] as const
export type Quantity = typeof quantities[number]

interface Shown {
  readonly label: string
  readonly unit: string
  readonly of: (panel: Panel) => number
  /** The same in one realisation, for panel i; undefined where a realisation has no such thing. */
  readonly inCase?: (r: Realisation, i: number) => number
  readonly text: (value: number) => string
}

/** What can be drawn on the panels, in the crew's units. */
export function shownAs(quantity: Quantity, units: BookState['units'], cutOffs: readonly AboveCutOff[], cut: number): Shown {
  const length = crewUnit('m', units), grade = crewUnit('g/t', units)
  const inFeet = (metres: number) => crewValue(metres, 'm', units).value, inOunces = (g: number) => crewValue(g, 'g/t', units).value
  switch (quantity) {
    case 'grade': return { label: 'Grade over the vein', unit: grade, of: p => inOunces(p.grade), inCase: (r, i) => inOunces(r.grade[i]!), text: v => figures(v, 2) }
    case 'width': return { label: 'True width', unit: length, of: p => inFeet(p.width), inCase: (r, i) => inFeet(r.width[i]!), text: v => v.toFixed(2) }
    case 'accumulation': return {
      label: 'Accumulation: grade times width', unit: `${grade} × ${length}`, of: p => inFeet(inOunces(p.accumulation)),
      inCase: (r, i) => inFeet(inOunces(r.accumulation[i]!)), text: v => figures(v, 2),
    }
    case 'chance': return { label: `Chance that it runs above ${crewText(cutOffs[cut]?.cutOff ?? 0, 'g/t', units)} as broken`, unit: '%', of: p => 100 * (p.chances[cut] ?? 1), text: v => v.toFixed(0) }
    case 'range': return { label: 'Width of the 8-in-10 range of its gold', unit: 'oz', of: p => p.rangeWidth, text: v => figures(v, 2) }
  }
}
