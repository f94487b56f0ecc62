import type { Enu } from '@lodebook/reckon'
import type { Bounds3 } from './scene.ts'
import type { Point } from '../../../drawing/view.ts'

/**
 * A way of looking at the mine without perspective: lengths square to the eye are true to scale everywhere, as on a drawing.
 * Azimuth is the way one looks, tilt how far down; `k` pixels a metre; the target stands in the middle.
 */
export interface Camera { readonly azimuth: number, readonly tilt: number, readonly k: number, readonly target: Enu }

/** The sheet's own axes in the grid: to the right, up the screen, and away from the eye. */
export interface Axes { readonly right: Enu, readonly up: Enu, readonly away: Enu }

export function axesOf({ azimuth, tilt }: Camera): Axes {
  const [a, t] = [azimuth * Math.PI / 180, tilt * Math.PI / 180]
  const [sa, ca, st, ct] = [Math.sin(a), Math.cos(a), Math.sin(t), Math.cos(t)]
  return { right: [ca, -sa, 0], up: [sa * st, ca * st, ct], away: [sa * ct, ca * ct, -st] }
}

export interface Room { readonly width: number, readonly height: number }

/** From the grid to pixels from the top left. */
export function projector(camera: Camera, room: Room): (p: Enu) => Point {
  const { right, up } = axesOf(camera), { target: t, k } = camera
  return p => ({
    x: room.width / 2 + k * ((p[0] - t[0]) * right[0] + (p[1] - t[1]) * right[1] + (p[2] - t[2]) * right[2]),
    y: room.height / 2 - k * ((p[0] - t[0]) * up[0] + (p[1] - t[1]) * up[1] + (p[2] - t[2]) * up[2]),
  })
}

/** The camera that shows everything. */
export function fit(bounds: Bounds3, room: Room, azimuth: number, tilt: number): Camera {
  const target = [0, 1, 2].map(i => (bounds.min[i]! + bounds.max[i]!) / 2) as unknown as Enu
  const at = projector({ azimuth, tilt, k: 1, target }, { width: 0, height: 0 })
  const { min, max } = bounds
  const corners = [0, 1, 2, 3, 4, 5, 6, 7].map(i => at([i & 1 ? max[0] : min[0], i & 2 ? max[1] : min[1], i & 4 ? max[2] : min[2]]))
  const wide = Math.max(...corners.map(c => Math.abs(c.x))) * 2, high = Math.max(...corners.map(c => Math.abs(c.y))) * 2
  return { azimuth, tilt, target, k: Math.max(0.01, Math.min((room.width - 60) / Math.max(wide, 5), (room.height - 60) / Math.max(high, 5))) }
}

export const turnedBy = (c: Camera, azimuth: number, tilt: number): Camera =>
  ({ ...c, azimuth: (c.azimuth + azimuth + 360) % 360, tilt: Math.max(-89.9, Math.min(89.9, c.tilt + tilt)) })

/** Moves what is seen by so many pixels. */
export function movedBy(c: Camera, dx: number, dy: number): Camera {
  const { right, up } = axesOf(c)
  return { ...c, target: [0, 1, 2].map(i => c.target[i]! - (dx * right[i]! - dy * up[i]!) / c.k) as unknown as Enu }
}

/** Enlarges about a place on the screen, pixels from its middle. */
export function enlargedBy(c: Camera, factor: number, x = 0, y = 0): Camera {
  const k = Math.max(0.01, Math.min(2000, c.k * factor)), held = 1 / c.k - 1 / k
  const { right, up } = axesOf(c)
  return { ...c, k, target: [0, 1, 2].map(i => c.target[i]! + held * (x * right[i]! - y * up[i]!)) as unknown as Enu }
}
