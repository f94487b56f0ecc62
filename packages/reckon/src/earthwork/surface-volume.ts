import Delaunator from 'delaunator'
import type { Enu } from '../core/index.ts'
import { DegenerateError, finite, InputError } from '../core/index.ts'
import type { CutAndFill } from './profile-areas.ts'

export interface SurfaceVolume extends CutAndFill {
  /** Plan area on which both surfaces are known, square metres. */
  readonly area: number
}

type Flat = readonly [x: number, y: number]
type Raised = readonly [x: number, y: number, above: number]
type Triangle = readonly [Enu, Enu, Enu]

/**
 * Cut and fill between two surveyed surfaces, each a scatter of spot heights joined by Delaunay's triangles, where both are known in plan.
 *
 * Exact for the two triangulated surfaces: every triangle of one is clipped by every triangle of the other and their straight difference is
 * summed, parted along the line where they cross. Doubt lies in the ground between the spots, not here.
 * @param found  three or more points [east, north, up] not in one line; of two on the same spot the first counts
 * @param wanted  as `found`, or one height for a level floor wanted everywhere
 * @returns in cubic and square units of the coordinates
 * @throws InputError for fewer than three points or numbers that are not finite; DegenerateError("collinear") when no triangle can be made
 */
export function surfaceVolume(found: readonly Enu[], wanted: readonly Enu[] | number): SurfaceVolume {
  const ground = triangles(found, 'found')
  const floor: readonly Triangle[] | number = typeof wanted === 'number' ? finite(wanted, 'wanted') : triangles(wanted, 'wanted')
  let cut = 0, fill = 0, area = 0
  const add = (corners: readonly Flat[], above: (p: Flat) => number): void => {
    const raised = corners.map((p): Raised => [p[0], p[1], above(p)])
    cut += under(half(raised, 1))
    fill -= under(half(raised, -1))
    area += shoelace(corners)
  }
  for (const a of ground) {
    const zA = planeOf(a), flat = a.map(flatten)
    if (typeof floor === 'number') { add(flat, p => zA(p) - floor); continue }
    for (const b of floor) {
      if (apart(a, b)) continue
      const shared = clipped(flat, b.map(flatten))
      if (shared.length < 3) continue
      const zB = planeOf(b)
      add(shared, p => zA(p) - zB(p))
    }
  }
  return { cut, fill, area }
}

/** Triangles anticlockwise in plan; slivers whose area is lost in rounding are left out. */
function triangles(points: readonly Enu[], field: string): readonly Triangle[] {
  if (points.length < 3) throw new InputError(field, points, 'three or more spot heights')
  points.forEach((point, i) => point.forEach((value, j) => { finite(value, `${field}[${i}][${j}]`) }))
  // Measured from the first point, so that large grid coordinates keep their small differences.
  const [east, north] = points[0]!
  const near = points.map(([e, n, u]): Enu => [e - east, n - north, u])
  const size = Math.max(...near.map(([e, n]) => Math.hypot(e, n)))
  const { triangles: corners } = Delaunator.from(near.map(([e, n]) => [e, n]))
  const made: Triangle[] = []
  for (let i = 0; i < corners.length; i += 3) {
    const [a, b, c] = [near[corners[i]!]!, near[corners[i + 1]!]!, near[corners[i + 2]!]!]
    const twice = cross(flatten(a), flatten(b), flatten(c))
    if (Math.abs(twice) > sliver * size * size) made.push(twice > 0 ? back([a, b, c], east, north) : back([a, c, b], east, north))
  }
  if (made.length === 0) throw new DegenerateError('collinear', field, points, 'spot heights that do not all stand in one line')
  return made
}

/** Twice the area of a triangle is nothing beside the square of the whole when it falls below this share of it. */
const sliver = 1e-13

const back = (triangle: Triangle, east: number, north: number): Triangle => triangle.map(([e, n, u]): Enu => [e + east, n + north, u]) as unknown as Triangle
const flatten = ([e, n]: Enu): Flat => [e, n]
const cross = (a: Flat, b: Flat, c: Flat): number => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])

function apart(a: Triangle, b: Triangle): boolean {
  return [0, 1].some((axis) => {
    const [p, q] = [a.map(v => v[axis]!), b.map(v => v[axis]!)]
    return Math.max(...p) <= Math.min(...q) || Math.max(...q) <= Math.min(...p)
  })
}

/** Height of a triangle's plane over a point of the plan. */
function planeOf([a, b, c]: Triangle): (p: Flat) => number {
  const whole = cross(flatten(a), flatten(b), flatten(c))
  return (p) => {
    const [toB, toC] = [cross(flatten(a), p, flatten(c)) / whole, cross(flatten(a), flatten(b), p) / whole]
    return a[2] + toB * (b[2] - a[2]) + toC * (c[2] - a[2])
  }
}

/** A convex outline cut down to another (Sutherland and Hodgman, Comm. ACM 17, 1974, 32; from memory). Both anticlockwise. */
function clipped(outline: readonly Flat[], by: readonly Flat[]): readonly Flat[] {
  return by.reduce<readonly Flat[]>((left, from, i) => {
    const to = by[(i + 1) % by.length]!
    return left.flatMap((p, j): Flat[] => {
      const q = left[(j + 1) % left.length]!, [sp, sq] = [cross(from, to, p), cross(from, to, q)]
      const meet = (): Flat => { const t = sp / (sp - sq); return [p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])] }
      return [...(sp >= 0 ? [p] : []), ...(sp * sq < 0 ? [meet()] : [])]
    })
  }, outline)
}

/** The part of an outline on which `above` has the given sign. */
function half(outline: readonly Raised[], sign: 1 | -1): readonly Raised[] {
  return outline.flatMap((p, j): Raised[] => {
    const q = outline[(j + 1) % outline.length]!
    const meet = (): Raised => { const t = p[2] / (p[2] - q[2]); return [p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1]), 0] }
    return [...(sign * p[2] >= 0 ? [p] : []), ...(p[2] * q[2] < 0 ? [meet()] : [])]
  })
}

/** Signed volume between an outline and the height 0: each triangle of its fan is its plan area times the mean of its corners. */
function under(outline: readonly Raised[]): number {
  const [first] = outline
  if (!first) return 0
  return outline.slice(1, -1).reduce((sum, p, i) => {
    const q = outline[i + 2]!
    return sum + cross([first[0], first[1]], [p[0], p[1]], [q[0], q[1]]) / 2 * (first[2] + p[2] + q[2]) / 3
  }, 0)
}

const shoelace = (outline: readonly Flat[]): number => outline.slice(1, -1).reduce((sum, p, i) => sum + cross(outline[0]!, p, outline[i + 2]!) / 2, 0)
