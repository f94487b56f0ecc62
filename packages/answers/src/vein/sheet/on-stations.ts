import type { VeinPoint } from '@lodebook/reckon'
import type { VeinAt } from '../../shapes.ts'

/** The station nearest along the vein; undefined when none lies near it. */
export function stationNear(stations: VeinAt['stations'], along: number, down?: number): string | undefined {
  const off = (at: VeinPoint) => Math.hypot(at.along - along, down === undefined ? 0 : at.down - down)
  return stations.reduce<VeinAt['stations'][number] | undefined>((best, s) => !best || off(s.at) < off(best.at) ? s : best, undefined)?.name
}

/** 'between L4 and R5', 'about L4', or '' where no station lies near. */
export function between(stations: VeinAt['stations'], from: number, to: number): string {
  const [a, b] = [stationNear(stations, from), stationNear(stations, to)]
  return a === undefined || b === undefined ? '' : a === b ? `about ${a}` : `between ${a} and ${b}`
}
