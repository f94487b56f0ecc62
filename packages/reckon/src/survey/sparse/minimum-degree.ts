/**
 * An order of elimination that keeps a sparse symmetric factor sparse: approximate minimum degree on the quotient graph.
 *
 * A survey is mostly chains, and chains eliminated from their ends leave no fill at all; what remains is the small core of junctions.
 * @param adjacency  for each node the nodes it shares an equation with, without itself, each once; not modified
 * @returns the nodes in order of elimination
 * Cost: near linear for survey networks. Ties in degree are broken by node number, so the order is repeatable.
 * Source: Amestoy, Davis, Duff, 'An approximate minimum degree ordering algorithm', SIAM J. Matrix Anal. Appl. 17 (1996) 886.
 */
export function minimumDegree(adjacency: readonly (readonly number[])[]): Int32Array {
  const n = adjacency.length
  const order = new Int32Array(n)
  const variables = adjacency.map(list => [...list]) // neighbours not yet covered by an element
  const elements: number[][] = adjacency.map(() => []) // eliminated nodes whose front holds this one
  const members: number[][] = adjacency.map(() => []) // the front an eliminated node left behind
  const absorbed = new Uint8Array(n)
  const outside = new Int32Array(n) // of an element: members outside the present front
  const outsideAt = new Int32Array(n).fill(-1)
  const inFront = new Int32Array(n).fill(-1)
  const queue = degreeQueue(adjacency.map(list => list.length))

  for (let step = 0; step < n; step++) {
    const pivot = queue.takeLeast()
    order[step] = pivot

    const front: number[] = []
    inFront[pivot] = step
    const join = (node: number) => { if (inFront[node] !== step) { inFront[node] = step; front.push(node) } }
    variables[pivot]!.forEach(join)
    for (const element of elements[pivot]!) {
      members[element]!.forEach(join)
      absorbed[element] = 1
      members[element] = []
    }
    members[pivot] = front

    for (const node of front) {
      for (const element of elements[node]!) {
        if (absorbed[element]) continue
        if (outsideAt[element] !== step) { outsideAt[element] = step; outside[element] = members[element]!.length }
        outside[element]!--
      }
    }
    for (const node of front) {
      const kept = [pivot]
      let degree = front.length - 1
      for (const element of elements[node]!) {
        if (absorbed[element]) continue
        if (outside[element] === 0) continue // wholly inside the new front, which speaks for it
        kept.push(element)
        degree += outside[element]!
      }
      elements[node] = kept
      const open = variables[node]!.filter(other => inFront[other] !== step)
      variables[node] = open
      queue.move(node, Math.min(degree + open.length, n - step - 2))
    }
    variables[pivot] = []
    elements[pivot] = []
  }
  return order
}

/** Nodes in buckets by degree, least first. */
function degreeQueue(start: readonly number[]) {
  const n = start.length
  const degree = Int32Array.from(start)
  const head = new Int32Array(n + 1).fill(-1)
  const next = new Int32Array(n).fill(-1)
  const previous = new Int32Array(n).fill(-1)
  let least = 0
  const insert = (node: number, at: number) => {
    degree[node] = at
    const first = head[at]!
    next[node] = first
    previous[node] = -1
    if (first >= 0) previous[first] = node
    head[at] = node
    least = Math.min(least, at)
  }
  const remove = (node: number) => {
    const before = previous[node]!
    const after = next[node]!
    if (before >= 0) next[before] = after
    else head[degree[node]!] = after
    if (after >= 0) previous[after] = before
  }
  for (let node = n - 1; node >= 0; node--) insert(node, degree[node]!)
  return {
    takeLeast(): number {
      while (head[least]! < 0) least++
      const node = head[least]!
      remove(node)
      return node
    },
    move(node: number, to: number): void {
      remove(node)
      insert(node, Math.max(0, to))
    },
  }
}
