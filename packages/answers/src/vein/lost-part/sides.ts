import type { Enu } from '@lodebook/reckon'
import { planeSigmaAt } from '@lodebook/reckon/structure'
import type { FarSide, FittedVein } from '@lodebook/reckon/structure'
import { textOf } from '../../read.ts'
import type { Sited } from '../vein-data.ts'
import { dot } from '../vein-data.ts'

/** Within so many standard deviations of the fault a place may be on either side. */
const unsure = 2

/** Parts places by the side of the fault on which they lie, as written or by where they are; those too near to it to say are left out. */
export function bySide(fault: FittedVein, far: FarSide, places: readonly Sited[]): { readonly near: readonly Sited[], readonly beyond: readonly Sited[] } {
  const side = (s: Sited) => {
    const written = textOf(s.entry, 'side')
    if (written !== undefined) return written === 'far side' ? 1 : -1
    const p = s.located.point
    const off = far * dot(fault.normal, [p[0] - fault.centroid[0], p[1] - fault.centroid[1], p[2] - fault.centroid[2]] as Enu)
    return Math.abs(off) <= unsure * (planeSigmaAt(fault, p) ?? 0) ? 0 : Math.sign(off)
  }
  return { near: places.filter(s => side(s) < 0), beyond: places.filter(s => side(s) > 0) }
}
