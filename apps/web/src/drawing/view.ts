/** A drawing's own coordinates, metres: x to the right, y up. Plan and section each have their own; the scale is the same both ways. */
export interface Bounds { readonly minX: number, readonly minY: number, readonly maxX: number, readonly maxY: number }
export interface Point { readonly x: number, readonly y: number }

/** How a drawing lies on the screen: `k` pixels a metre; (x, y) is where the drawing's origin falls, pixels from the top left. */
export interface View { readonly k: number, readonly x: number, readonly y: number }

/** From drawing to screen. True to scale: one factor for both directions, y turned over. */
export const toScreen = (view: View, p: Point): Point => ({ x: view.x + p.x * view.k, y: view.y - p.y * view.k })
/** From screen to drawing. */
export const toDrawing = (view: View, p: Point): Point => ({ x: (p.x - view.x) / view.k, y: (view.y - p.y) / view.k })

/** The smallest box round the points, or undefined when there are none. */
export function boundsOf(points: Iterable<Point>): Bounds | undefined {
  let minX = Infinity, minY = Infinity, maxX = -Infinity, maxY = -Infinity
  for (const { x, y } of points) {
    if (!Number.isFinite(x) || !Number.isFinite(y)) continue
    minX = Math.min(minX, x); maxX = Math.max(maxX, x); minY = Math.min(minY, y); maxY = Math.max(maxY, y)
  }
  return minX <= maxX ? { minX, minY, maxX, maxY } : undefined
}

/** A view at a further zoom, as pinched or wheeled: `t` is applied to the screen of the base view. */
export const zoomed = (base: View, t: View): View => ({ k: base.k * t.k, x: t.x + base.x * t.k, y: t.y + base.y * t.k })
