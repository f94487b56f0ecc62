import type { View } from '../../drawing/view.ts'

/**
 * The other view, after one has been moved or enlarged: the same scale, and the same distance along when they stand under each other; what
 * was half-way up it stays there.
 */
export function follow(lead: View, other: View, height: number, aligned: boolean): View {
  const times = lead.k / other.k
  return { k: lead.k, x: aligned ? lead.x : other.x * times, y: height / 2 + (other.y - height / 2) * times }
}
