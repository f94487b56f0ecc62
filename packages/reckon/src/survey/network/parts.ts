/** Sets of stations joined by shots, by union and find. */
export function joinedParts(count: number, edges: readonly (readonly [number, number])[]): { readonly partOf: Int32Array, readonly parts: number[][] } {
  const parent = Int32Array.from({ length: count }, (_, i) => i)
  const root = (node: number): number => {
    let at = node
    while (parent[at] !== at) {
      parent[at] = parent[parent[at]!]!
      at = parent[at]!
    }
    return at
  }
  for (const [a, b] of edges) {
    const [ra, rb] = [root(a), root(b)]
    if (ra !== rb) parent[Math.max(ra, rb)] = Math.min(ra, rb) // the earliest station stands for its part
  }
  const partOf = new Int32Array(count)
  const parts: number[][] = []
  for (let node = 0; node < count; node++) {
    const top = root(node)
    if (top === node) { partOf[node] = parts.length; parts.push([]) } else partOf[node] = partOf[top]!
    parts[partOf[node]!]!.push(node)
  }
  return { partOf, parts }
}
