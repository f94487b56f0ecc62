import type { VeinAt } from '@lodebook/answers'
import type { Enu } from '@lodebook/reckon'
import { plus } from '../../drawing/vector.ts'

type Line = readonly [Enu, Enu]

/** A point of the vein, from its own coordinates to the grid. */
export const inGrid = (vein: VeinAt, along: number, down: number): Enu => plus(plus(vein.origin, vein.alongAxis, along), vein.downAxis, down)

/**
 * The line in which the vein cuts a level, as far along as the workings go, ending at the fault that cuts it off.
 * @param up  elevation of the level, metres
 * @returns undefined for a vein that lies flat, or that has none of its length on the near side of the fault
 */
export function veinAtLevel(vein: VeinAt, up: number, from: number, to: number): Line | undefined {
  if (Math.abs(vein.downAxis[2]) < 0.1) return undefined
  const down = (up - vein.origin[2]) / vein.downAxis[2]
  let low = from, high = to
  if (vein.fault) {
    const { point, direction, keep } = vein.fault
    if (Math.abs(direction.down) > 1e-6) {
      const cut = point.along + direction.along * (down - point.down) / direction.down
      // Which end is kept: the side on which the turn from the fault's direction has the sign of `keep`.
      const side = Math.sign(direction.along * (down - point.down) - direction.down * (low - point.along))
      if (side === keep) high = Math.min(high, cut); else low = Math.max(low, cut)
    }
  }
  return low < high ? [inGrid(vein, low, down), inGrid(vein, high, down)] : undefined
}

/** The line in which the fault cuts a level: its strike through where the fault stands there, so far to either side of the vein. */
export function faultAtLevel(vein: VeinAt, up: number, reach: number): Line | undefined {
  const { fault } = vein
  if (!fault) return undefined
  const strike = fault.strike.value * Math.PI / 180, dip = fault.dip.value * Math.PI / 180
  const on = inGrid(vein, fault.point.along, fault.point.down)
  const shift = (on[2] - up) / Math.tan(Math.max(dip, 0.02))
  const foot: Enu = [on[0] + Math.cos(strike) * shift, on[1] - Math.sin(strike) * shift, up]
  const way: Enu = [Math.sin(strike), Math.cos(strike), 0]
  return [plus(foot, way, -reach), plus(foot, way, reach)]
}

/** The line in which the fault cuts the vein, between two depths down the dip. */
export function faultOnVein(vein: VeinAt, downFrom: number, downTo: number): Line | undefined {
  const { fault } = vein
  if (!fault || Math.abs(fault.direction.down) < 1e-6) return undefined
  const at = (down: number): Enu => inGrid(vein, fault.point.along + fault.direction.along * (down - fault.point.down) / fault.direction.down, down)
  return [at(downFrom), at(downTo)]
}
