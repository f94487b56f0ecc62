import { drawsFrom } from '@lodebook/reckon'
import { positiveAt } from '@lodebook/reckon/pay'
import type { Assume } from '../assumptions.ts'
import { gramsPerOunce } from '../grade/troy.ts'
import type { Grade } from '../shapes.ts'

/** How rock comes down: at least so wide, with wall rock of this density and grade. Widths one a ground outcome. */
export interface Slot { readonly widths: Float64Array, readonly wallDensity: number, readonly wallGrade: number }

/** Rock to be treated, t, and fine ounces in it, one a ground outcome. */
export interface Rocks { readonly tonnes: Float64Array, readonly ounces: Float64Array }

type PanelOutcome = Grade['outcomes']['panels'][number]

const seed = 1893

export function slotOf(assume: Assume, count: number): Slot {
  const draws = drawsFrom(seed), width = assume('minimum width')
  return {
    widths: Float64Array.from({ length: count }, () => positiveAt({ median: width.value, low: width.low, high: width.high }, draws.normal())),
    wallDensity: assume('wall density').value, wallGrade: assume('wall grade').value,
  }
}

/** Rock and gold of one panel worked at least so wide, outcome by outcome: the vein and as much wall as the slot needs. */
export function worked(panel: PanelOutcome, density: readonly number[], { widths, wallDensity, wallGrade }: Slot): Rocks {
  const count = panel.ounces.length
  const tonnes = new Float64Array(count), ounces = new Float64Array(count)
  for (let k = 0; k < count; k++) {
    const wall = Math.max(0, widths[k]! - panel.width[k]!) * wallDensity
    tonnes[k] = panel.area * (panel.width[k]! * density[k]! + wall)
    ounces[k] = panel.ounces[k]! + panel.area * wall * wallGrade / gramsPerOunce
  }
  return { tonnes, ounces }
}

export const noRock = (count: number): Rocks => ({ tonnes: new Float64Array(count), ounces: new Float64Array(count) })

export function addRock(into: Rocks, { tonnes, ounces }: Rocks): void {
  for (let k = 0; k < into.tonnes.length; k++) {
    into.tonnes[k]! += tonnes[k]!
    into.ounces[k]! += ounces[k]!
  }
}
