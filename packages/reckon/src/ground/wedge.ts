import type { Enu } from '../core/index.ts'
import { DegenerateError, InputError, positive } from '../core/index.ts'
import { add, cross, dot, length, scaled, subtract, unit } from '../structure/vector.ts'

/** How a wedge may move under its own weight. */
export type WedgeMove = 'falls' | 'slides on one' | 'slides on two' | 'held by its weight'

export interface Wedge {
  /** Edges from the apex to the corners on the surface of the opening. */
  readonly apex: Enu
  readonly corners: readonly [Enu, Enu, Enu]
  /** m3. */
  readonly volume: number
  /** How far it reaches into the rock, square to the surface, metres. */
  readonly depth: number
  /** Area on the surface, m2. */
  readonly face: number
  readonly move: WedgeMove
  /** Indices of the planes it slides on. */
  readonly slidesOn: readonly number[]
  /** Direction in which it moves first; undefined when it does not. */
  readonly direction: Enu | undefined
}

export interface WedgeInput {
  /** Unit normals of three joint planes; which way they point does not matter. */
  readonly normals: readonly [Enu, Enu, Enu]
  /** Unit normal of the surface of the opening, pointing into the open. */
  readonly open: Enu
  /** Unit vector in the surface along the heading; the wedge is as wide as `span` across it at most. */
  readonly along: Enu
  /** Width of the surface across the heading, metres. */
  readonly span: number
  /** How far a joint runs, metres: no edge of the block is longer; unbounded when left out. */
  readonly trace?: number
}

const down: Enu = [0, 0, -1]
/** Edges nearer than this sine to the surface, or to each other, make needles of no end: no wedge is reckoned from them. */
const flattest = 0.02

/**
 * The one removable block that three joints cut from a flat surface, as large as the opening lets it be, and how it would move.
 *
 * Block theory: of the eight corners that three planes make, only the one whose three edges all point into the open can come out (its joint
 * pyramid does not meet the rock side of the surface). It is a tetrahedron with its face on the surface. Its size is free; the largest that
 * fits across the heading, and no edge of which is longer than `trace`, is taken. It falls when straight down lies inside its pyramid; else it
 * slides down one plane or down the line of two if that leads out of the rock and away from the others; else its weight holds it in place.
 * Friction, cohesion and stress are left out: what can move is named, however rough its joints.
 * @returns undefined when the planes make no finite wedge there (nearly parallel to each other or to the surface)
 * @throws InputError for a span that is not above zero; DegenerateError("parallel") for planes that share one line
 * Source: Goodman and Shi, Block Theory and its Application to Rock Engineering, 1985 (from memory).
 */
export function wedgeOn({ normals, open, along, span, trace }: WedgeInput): Wedge | undefined {
  positive(span, 'span', 'a width above zero')
  if (trace !== undefined) positive(trace, 'trace')
  const n = unit(open), axis = unit(subtract(along, scaled(n, dot(along, n)))), across = cross(n, axis)
  if (!axis.every(Number.isFinite)) throw new InputError('along', along, 'a direction that lies in the surface')
  const pairs = [[0, 1], [1, 2], [2, 0]] as const
  const lines = pairs.map(([i, j]) => cross(normals[i], normals[j]))
  if (lines.some(line => length(line) < flattest)) return undefined
  const edges = lines.map((line) => { const u = unit(line), into = dot(u, n); return scaled(u, into < 0 ? -1 : 1) })
  if (edges.some(e => dot(e, n) < flattest) || Math.abs(dot(edges[0]!, cross(edges[1]!, edges[2]!))) < flattest ** 2) return undefined
  // With the apex one metre inside: where the edges come out of the surface.
  const outlets = edges.map(e => scaled(e, 1 / dot(e, n))) as unknown as readonly [Enu, Enu, Enu]
  // A joint that runs so far and no further bounds the block inside the rock as well as on the surface.
  const sides = [...pairs.map(([i, j]) => length(subtract(outlets[i], outlets[j]))), ...outlets.map(length)]
  const reach = outlets.map(p => dot(p, across)), wide = Math.max(...reach) - Math.min(...reach)
  const depth = Math.min(span / wide, trace === undefined ? Infinity : trace / Math.max(...sides))
  if (!Number.isFinite(depth)) throw new DegenerateError('parallel', 'normals', normals, 'three planes that cut a block from the surface')
  const corners = outlets.map(p => scaled(p, depth)) as unknown as readonly [Enu, Enu, Enu]
  const face = length(cross(subtract(corners[1], corners[0]), subtract(corners[2], corners[0]))) / 2
  // Normals turned to look into the block: each plane has the edge that is not its own on its inner side.
  const inward = normals.map((normal, i) => {
    const other = edges[pairs.findIndex(p => !(p as readonly number[]).includes(i))]!
    return scaled(unit(normal), dot(normal, other) < 0 ? -1 : 1)
  })
  return { apex: scaled(n, -depth), corners: corners.map(c => add(c, scaled(n, -depth))) as unknown as readonly [Enu, Enu, Enu],
    volume: face * depth / 3, depth, face, ...movesBy(inward, n) }
}

/** How a block between planes moves under its weight; `inward` look into the block, `open` into the opening. */
function movesBy(inward: readonly Enu[], open: Enu): Pick<Wedge, 'move' | 'slidesOn' | 'direction'> {
  const slack = -1e-9
  const leads = (d: Enu, besides: readonly number[]): boolean => dot(d, open) > 1e-9 && inward.every((v, i) => besides.includes(i) || dot(d, v) >= slack)
  if (inward.every(v => dot(down, v) >= slack) && dot(down, open) > 1e-9) return { move: 'falls', slidesOn: [], direction: down }
  for (let i = 0; i < 3; i++) {
    const v = inward[i]!, push = dot(down, v)
    if (push >= 0) continue
    const slope = subtract(down, scaled(v, push)), size = length(slope)
    if (size > 1e-9 && leads(scaled(slope, 1 / size), [i])) return { move: 'slides on one', slidesOn: [i], direction: scaled(slope, 1 / size) }
  }
  for (const [i, j] of [[0, 1], [1, 2], [2, 0]] as const) {
    const line = unit(cross(inward[i]!, inward[j]!)), d = line[2] < 0 ? line : scaled(line, -1)
    // Pressed against both: its weight off the line leans on each of the two planes.
    const rest = subtract(down, scaled(d, dot(down, d))), c = dot(inward[i]!, inward[j]!), [a, b] = [-dot(rest, inward[i]!), -dot(rest, inward[j]!)]
    const [onI, onJ] = [(a - c * b) / (1 - c * c), (b - c * a) / (1 - c * c)]
    if (d[2] < -1e-9 && onI >= slack && onJ >= slack && leads(d, [i, j])) return { move: 'slides on two', slidesOn: [i, j], direction: d }
  }
  return { move: 'held by its weight', slidesOn: [], direction: undefined }
}
