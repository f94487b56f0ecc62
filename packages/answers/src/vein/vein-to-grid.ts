import type { Enu, VeinPoint } from '@lodebook/reckon'
import type { VeinAt } from '../shapes.ts'

/** A place on the vein's own plane as a grid point, metres. */
export const veinToGrid = ({ origin, alongAxis, downAxis }: Pick<VeinAt, 'origin' | 'alongAxis' | 'downAxis'>, { along, down }: VeinPoint): Enu =>
  [0, 1, 2].map(i => origin[i]! + along * alongAxis[i]! + down * downAxis[i]!) as unknown as Enu
