import type { VeinAt, Workings } from '@lodebook/answers'
import type { Enu } from '@lodebook/reckon'
import { turned } from '../../drawing/turn.ts'
import type { Point } from '../../drawing/view.ts'

/**
 * The azimuth that runs to the right in the long section: along the vein when it is known, else the way the workings stretch most.
 * @returns degrees, [0, 360)
 */
export function sectionAzimuth(workings: Workings, vein: VeinAt | undefined): number {
  const azimuth = vein ? Math.atan2(vein.alongAxis[0], vein.alongAxis[1]) : stretch(workings.stations.map(s => s.point))
  return ((azimuth * 180 / Math.PI) % 360 + 360) % 360
}

/** The direction in which points are spread most, radians from north; east when they show none. */
function stretch(points: readonly Enu[]): number {
  const n = points.length
  if (n < 2) return Math.PI / 2
  const e0 = points.reduce((sum, p) => sum + p[0], 0) / n, n0 = points.reduce((sum, p) => sum + p[1], 0) / n
  let ee = 0, nn = 0, en = 0
  for (const [e, north] of points) { ee += (e - e0) ** 2; nn += (north - n0) ** 2; en += (e - e0) * (north - n0) }
  return ee + nn > 0 ? Math.PI / 2 - Math.atan2(2 * en, ee - nn) / 2 : Math.PI / 2
}

/** A point of the grid on the plan turned by an azimuth, and on the section along it. */
export const onPlan = ([east, north]: Enu, azimuth: number): Point => turned(east, north, azimuth)
export const onSection = ([east, north, up]: Enu, azimuth: number): Point => ({ x: turned(east, north, azimuth).x, y: up })
