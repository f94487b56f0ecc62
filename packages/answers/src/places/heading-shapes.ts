import type { Entry } from '@lodebook/book'
import type { Enu } from '@lodebook/reckon'
import { textOf, wordsOf } from '../read.ts'
import type { HeadingShape } from '../shapes.ts'
import type { StationPlace } from './place-in-space.ts'

const away = (point: Enu, azimuth: number, distance: number): Enu =>
  [point[0] + distance * Math.sin(azimuth * Math.PI / 180), point[1] + distance * Math.cos(azimuth * Math.PI / 180), point[2]]

/** The azimuth a heading has at one of its stations: halfway between the way in and the way on. */
function course(points: readonly Enu[], i: number): number {
  const a = points[Math.max(0, i - 1)]!, b = points[i]!, c = points[Math.min(points.length - 1, i + 1)]!
  const leg = (from: Enu, to: Enu): readonly [number, number] => {
    const length = Math.hypot(to[0] - from[0], to[1] - from[1])
    return length > 0 ? [(to[0] - from[0]) / length, (to[1] - from[1]) / length] : [0, 0]
  }
  const [e1, n1] = leg(a, b), [e2, n2] = leg(b, c)
  return Math.atan2(e1 + e2, n1 + n2) * 180 / Math.PI
}

/** The shape of each heading from the offsets taped at its stations. A heading with fewer than two surveyed stations has none yet. */
export function headingShapes(headings: readonly Entry[], stations: ReadonlyMap<string, StationPlace>): readonly HeadingShape[] {
  return headings.flatMap((heading): HeadingShape[] => {
    const names = wordsOf(heading, 'stations').filter(name => stations.has(name))
    if (names.length < 2) return []
    const points = names.map(name => stations.get(name)!.point)
    const sides = names.map((name, i) => {
      const azimuth = course(points, i)
      return { azimuth, walls: stations.get(name)!.walls(azimuth) }
    })
    return [{
      entry: heading.id, name: textOf(heading, 'name')!, sort: textOf(heading, 'sort')!, stations: names,
      left: points.map((p, i) => away(p, sides[i]!.azimuth - 90, sides[i]!.walls.left)),
      right: points.map((p, i) => away(p, sides[i]!.azimuth + 90, sides[i]!.walls.right)),
      back: points.map((p, i): Enu => [p[0], p[1], p[2] + sides[i]!.walls.up]),
      sill: points.map((p, i): Enu => [p[0], p[1], p[2] - sides[i]!.walls.down]),
      courses: sides.map(side => side.azimuth),
      rough: sides.some(s => !s.walls.taped),
    }]
  })
}
