import type { Panel } from '@lodebook/answers'
import type { BookState } from '../../bookkeeper/desk.ts'
import { crewUnit, crewValue } from '../../words/crew-value.ts'
import { figures } from '../../words/number.ts'

export const quantities = ['grade', 'width', 'accumulation', 'doubt'] as const
export type Quantity = typeof quantities[number]

interface Shown { readonly label: string, readonly unit: string, readonly of: (panel: Panel) => number, readonly text: (value: number) => string }

/** What can be drawn on the panels, in the crew's units. */
export function shownAs(quantity: Quantity, units: BookState['units']): Shown {
  const length = crewUnit('m', units), grade = crewUnit('g/t', units)
  const inFeet = (metres: number) => crewValue(metres, 'm', units).value, inOunces = (g: number) => crewValue(g, 'g/t', units).value
  switch (quantity) {
    case 'grade': return { label: 'Grade over the vein', unit: grade, of: p => inOunces(p.grade), text: v => figures(v, 2) }
    case 'width': return { label: 'True width', unit: length, of: p => inFeet(p.width), text: v => v.toFixed(2) }
    case 'accumulation': return { label: 'Accumulation: grade times width', unit: `${grade} × ${length}`, of: p => inFeet(inOunces(p.accumulation)), text: v => figures(v, 2) }
    case 'doubt': return { label: 'Doubt: one standard deviation as a share of the figure', unit: '%', of: p => p.doubt * 100, text: v => figures(v, 2) }
  }
}
