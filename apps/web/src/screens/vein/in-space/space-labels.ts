import type { Workings } from '@lodebook/answers'
import type { Enu } from '@lodebook/reckon'
import { placeLabels } from '../../../drawing/labels.ts'
import type { Point } from '../../../drawing/view.ts'
import type { Room } from './camera.ts'

export interface SpaceLabel { readonly text: string, readonly x: number, readonly y: number, readonly heading: boolean }

const stationsFrom = 5 // pixels a metre from which stations are named
const most = 400 // on the screen at once; more would only be refused for want of room

/** Names of headings and, near enough, of stations, where there is room for them. */
export function spaceLabels(workings: Workings, project: (p: Enu) => Point, k: number, room: Room): readonly SpaceLabel[] {
  const inside = (p: Point) => p.x > 0 && p.y > 0 && p.x < room.width && p.y < room.height
  const headings = workings.headings.flatMap((h) => {
    const middle = h.sill[Math.floor(h.sill.length / 2)]
    return middle && h.sort !== 'surface' ? [{ text: h.name, ...project(middle), heading: true }] : []
  }).filter(inside)
  const stations = k < stationsFrom ? [] : workings.stations.map(s => ({ text: s.name, ...project(s.point), heading: false })).filter(inside).slice(0, most)
  const all = [...headings, ...stations], byId = new Map(all.map((l, i) => [String(i), l]))
  const wanted = all.map((l, i) => ({ id: String(i), x: l.x, y: l.y, reach: 4, width: l.text.length * 7.4 + 2, height: 15, weight: l.heading ? 2 : 1 }))
  return placeLabels(wanted, room.width, room.height)
    .map(({ id, x, y }) => ({ ...byId.get(id)!, x, y }))
}
