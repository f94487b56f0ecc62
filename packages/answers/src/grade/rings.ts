import type { VeinPoint } from '@lodebook/reckon'

/** A ring with the box it lies in, so that most points are told to be outside at a glance. */
export interface BoxedRing { readonly ring: readonly VeinPoint[], readonly left: number, readonly right: number, readonly top: number, readonly bottom: number }

export function boxed(ring: readonly VeinPoint[]): BoxedRing {
  let [left, right, top, bottom] = [Infinity, -Infinity, Infinity, -Infinity]
  for (const { along, down } of ring) {
    left = Math.min(left, along)
    right = Math.max(right, along)
    top = Math.min(top, down)
    bottom = Math.max(bottom, down)
  }
  return { ring, left, right, top, bottom }
}

/** Whether a point lies inside a ring, by the even-odd rule. */
export function contains(ring: readonly VeinPoint[], p: VeinPoint): boolean {
  let inside = false
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const a = ring[i]!, b = ring[j]!
    if ((a.down > p.down) !== (b.down > p.down) && p.along < a.along + (b.along - a.along) * (p.down - a.down) / (b.down - a.down)) inside = !inside
  }
  return inside
}

export const holds = ({ ring, left, right, top, bottom }: BoxedRing, p: VeinPoint): boolean =>
  p.along >= left && p.along <= right && p.down >= top && p.down <= bottom && contains(ring, p)

/** Area, by the shoelace rule. */
export const areaOf = (ring: readonly VeinPoint[]): number => Math.abs(ring.reduce((sum, a, i) => {
  const b = ring[(i + 1) % ring.length]!
  return sum + a.along * b.down - b.along * a.down
}, 0)) / 2

const ways = [[1, 0], [-1, 0], [0, 1], [0, -1]] as const

/** On how many of four sides (along the vein both ways, up and down) a ring is met within so many metres of a point. */
export function sidesShown(rings: readonly BoxedRing[], p: VeinPoint, within: number): number {
  const near = rings.filter(r => r.left <= p.along + within && r.right >= p.along - within && r.top <= p.down + within && r.bottom >= p.down - within)
  return ways.filter(([along, down]) => near.some(({ ring }) => ring.some((a, i) => {
    const b = ring[(i + 1) % ring.length]!
    // The edge's ends on either side of the line of sight, and its crossing ahead and near enough.
    const [sa, sb] = along !== 0 ? [a.down - p.down, b.down - p.down] : [a.along - p.along, b.along - p.along]
    if ((sa > 0) === (sb > 0)) return false
    const t = sa / (sa - sb)
    const far = along !== 0 ? (a.along + t * (b.along - a.along) - p.along) * along : (a.down + t * (b.down - a.down) - p.down) * down
    return far >= 0 && far <= within
  }))).length
}
