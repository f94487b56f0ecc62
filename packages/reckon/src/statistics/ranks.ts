/** Ranks from 1, equal values sharing the middle of theirs, and how many share each tied value. */
export function ranked(values: readonly number[]): { readonly ranks: readonly number[], readonly ties: readonly number[] } {
  const order = values.map((_, i) => i).sort((a, b) => values[a]! - values[b]!)
  const ranks = new Array<number>(values.length).fill(0)
  const ties: number[] = []
  for (let start = 0; start < order.length;) {
    let end = start
    while (end + 1 < order.length && values[order[end + 1]!] === values[order[start]!]) end++
    for (let k = start; k <= end; k++) ranks[order[k]!] = (start + end) / 2 + 1
    if (end > start) ties.push(end - start + 1)
    start = end + 1
  }
  return { ranks, ties }
}

/** Sum of t³ - t over the ties: what ties take off the variance of ranks. */
export const tieSum = (ties: readonly number[]): number => ties.reduce((sum, t) => sum + t ** 3 - t, 0)
