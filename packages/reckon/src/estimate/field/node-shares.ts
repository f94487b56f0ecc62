import type { FieldNode } from '../log-field.ts'

/** A description of the ground and the columns from..to-1 of the outcomes that are drawn under it. */
export interface NodeShare { readonly node: FieldNode, readonly from: number, readonly to: number }

/**
 * Shares columns out among descriptions in proportion to belief, by systematic resampling into so many slots, those of one range side by side;
 * and which outcome each column is. Outcomes that follow each other are of different descriptions, so that the first few are a fair lot too.
 */
export function shareOut(nodes: readonly FieldNode[], count: number, slots: number): { readonly shares: readonly NodeShare[], readonly outcomeOf: Int32Array } {
  const ordered = [...nodes].sort((a, b) => a.range - b.range || a.variance - b.variance || a.nuggetShare - b.nuggetShare)
  const shares: NodeShare[] = []
  let reached = 0, slot = 0, from = 0
  for (const node of ordered) {
    reached += node.weight
    const before = slot
    while (slot < slots && (slot + 0.5) / slots < reached + 1e-12) slot++
    if (slot === before) continue
    const to = Math.round(count * slot / slots)
    if (to > from) shares.push({ node, from, to })
    from = to
  }
  const golden = (Math.sqrt(5) - 1) / 2
  const place = Float64Array.from({ length: count }, (_, k) => (k * golden) % 1)
  return { shares, outcomeOf: Int32Array.from(place.keys()).sort((a, b) => place[a]! - place[b]!) }
}
