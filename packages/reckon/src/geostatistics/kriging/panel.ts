import { DegenerateError, finite, InputError, positive } from '../../core/index.ts'
import type { Point2 } from '../model.ts'
import { blockSupport } from '../support.ts'
import type { Discretisation, Support } from '../support.ts'

/** A part of the plane that an average is wanted of: where it is, and its points about that place. */
export interface Panel {
  readonly x: number
  readonly y: number
  readonly support: Support
}

/**
 * Equal rectangles [dx, dy], sides along the axes, centred at the given places.
 * They share one support, which `krigePanels` makes use of: covariances between like pairs are worked out once.
 * @throws InputError as `blockSupport`, or naming `centres[i][j]`
 */
export function rectangularPanels(centres: readonly Point2[], block: readonly [dx: number, dy: number], discretisation: Discretisation = 'gauss'): Panel[] {
  const support = blockSupport(block, discretisation)
  return centres.map(([x, y], i) => ({ x: finite(x, `centres[${i}][0]`), y: finite(y, `centres[${i}][1]`), support }))
}

/** Points per polygon that a lattice may have at most; beyond it a coarser spacing is right. */
const MOST_POINTS = 10_000

/**
 * A polygon as a panel: the points of a square lattice that lie inside it, all with the same weight.
 *
 * The lattice is centred on the polygon's bounding box. Where the spacing is so wide that no point falls inside, it is halved until
 * some do.
 * @param ring  three or more corners in order, closed or not, either sense; may be concave, must not cross itself; not modified
 * @param spacing  lattice spacing, the length unit of the coordinates; a fifth of the narrowest width or less gives block covariances
 *   good to a few per cent
 * @throws InputError naming `ring[i][j]` or `spacing` (also when it asks for more than 10,000 points); DegenerateError 'no area' when
 *   the corners enclose nothing
 */
export function polygonPanel(ring: readonly Point2[], spacing: number): Panel {
  positive(spacing, 'spacing', 'a length above zero')
  if (ring.length < 3) throw new InputError('ring', ring.length, 'three or more corners')
  ring.forEach((corner, i) => corner.forEach((value, j) => finite(value, `ring[${i}][${j}]`)))
  const [xs, ys] = [ring.map(corner => corner[0]), ring.map(corner => corner[1])]
  const box = { west: Math.min(...xs), east: Math.max(...xs), south: Math.min(...ys), north: Math.max(...ys) }
  const [wide, high] = [box.east - box.west, box.north - box.south]
  if (!(Math.abs(area(ring)) > 1e-12 * (wide * wide + high * high))) throw new DegenerateError('no area', 'ring', ring.length, 'corners that enclose an area')
  const [x, y] = [(box.west + box.east) / 2, (box.south + box.north) / 2]
  for (let step = spacing; ; step /= 2) {
    const [columns, rows] = [Math.max(1, Math.round(wide / step)), Math.max(1, Math.round(high / step))]
    if (columns * rows > MOST_POINTS) throw new InputError('spacing', spacing, `a spacing that puts at most ${MOST_POINTS} points into the polygon's box`)
    const inside: Point2[] = []
    for (let row = 0; row < rows; row++) {
      for (let column = 0; column < columns; column++) {
        const point: Point2 = [(column - (columns - 1) / 2) * step, (row - (rows - 1) / 2) * step]
        if (contains(ring, x + point[0], y + point[1])) inside.push(point)
      }
    }
    if (inside.length > 0) return { x, y, support: lattice(inside) }
  }
}

function lattice(points: readonly Point2[]): Support {
  return {
    isPoint: false,
    dxs: Float64Array.from(points, point => point[0]),
    dys: Float64Array.from(points, point => point[1]),
    weights: new Float64Array(points.length).fill(1 / points.length),
  }
}

function area(ring: readonly Point2[]): number {
  const [x0, y0] = ring[0]!
  return ring.reduce((sum, [x, y], i) => {
    const [nx, ny] = ring[(i + 1) % ring.length]!
    return sum + ((x - x0) * (ny - y0) - (nx - x0) * (y - y0)) / 2
  }, 0)
}

/** Even-odd rule. */
function contains(ring: readonly Point2[], x: number, y: number): boolean {
  let inside = false
  ring.forEach(([ax, ay], i) => {
    const [bx, by] = ring[(i + 1) % ring.length]!
    if ((ay > y) !== (by > y) && x < ax + (bx - ax) * (y - ay) / (by - ay)) inside = !inside
  })
  return inside
}
