import type { Enu } from '@lodebook/reckon'
import type { Random } from '../random.ts'
import { stated } from './stated.ts'
import { add, axesOf, dot, minus, times, type Plane } from './vectors.ts'

export interface Fault extends Plane {
  readonly normal: Enu
  /** Unit vector along the grooves on it, pointing down. */
  readonly striae: Enu
  /** How the far side (away from the portal) has moved against the near side, metres. */
  readonly slip: Enu
  /** Length of the slip, metres. */
  readonly netSlip: number
  /** Is this ground, where it lies today, beyond the fault? */
  beyond(p: Enu): boolean
  /** Where ground that was continuous before the fault moved lies today. */
  moved(p: Enu): Enu
  /** The other way: where ground lay before the fault moved. */
  restored(p: Enu): Enu
}

/** The fault that ends the vein: its far side went up and to the right by 5.5 to 8.5 m along the grooves. */
export function makeFault(rng: Random, point: Enu): Fault {
  const { strike, dip, rake } = stated.fault, axes = axesOf({ strike, dip }), r = rake * Math.PI / 180
  const striae = add(times(axes.along, Math.cos(r)), times(axes.down, Math.sin(r)))
  const netSlip = rng.uniform(5.5, 8.5), slip = times(striae, -netSlip)
  // The far side is the footwall: against the normal, which points up.
  const beyond = (p: Enu) => dot(minus(p, point), axes.normal) < 0
  return {
    strike, dip, point, normal: axes.normal, striae, slip, netSlip, beyond,
    moved: p => beyond(p) ? add(p, slip) : p,
    restored: p => beyond(p) ? minus(p, slip) : p,
  }
}
