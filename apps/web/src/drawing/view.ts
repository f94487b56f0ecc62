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

/**
 * The view that shows all of the bounds in a room of width by height pixels, with a margin left free on every side.
 * @param least  metres; a smaller drawing is shown as if it were this wide and high, so that one station does not fill the sheet
 */
export function fit(bounds: Bounds, width: number, height: number, margin: number, least = 5): View {
  const wide = Math.max(bounds.maxX - bounds.minX, least), high = Math.max(bounds.maxY - bounds.minY, least)
  const k = Math.max(Math.min((width - 2 * margin) / wide, (height - 2 * margin) / high), Number.MIN_VALUE)
  const cx = (bounds.minX + bounds.maxX) / 2, cy = (bounds.minY + bounds.maxY) / 2
  return { k, x: width / 2 - cx * k, y: height / 2 + cy * k }
}

/** A view at a further zoom, as pinched or wheeled: `t` is applied to the screen of the base view. */
export const zoomed = (base: View, t: View): View => ({ k: base.k * t.k, x: t.x + base.x * t.k, y: t.y + base.y * t.k })
