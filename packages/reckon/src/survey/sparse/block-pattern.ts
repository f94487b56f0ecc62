/** Where the 3 x 3 blocks of a sparse symmetric matrix and of its Cholesky factor stand; lower triangle, column by column. */
export interface BlockPattern {
  /** Number of block rows. */
  readonly size: number
  /** Column k holds the blocks start[k] to start[k + 1], below the diagonal. */
  readonly start: Int32Array
  /** The block row of each block, rising within a column. */
  readonly row: Int32Array
}

/**
 * The pattern of the factor, fill included, for a matrix already put in its order of elimination.
 * @param adjacency  for each block row the rows it shares an equation with, in any order; not modified
 */
export function blockPattern(adjacency: readonly (readonly number[])[]): BlockPattern {
  const size = adjacency.length
  const columns: Int32Array[] = []
  const children: number[][] = adjacency.map(() => [])
  const seen = new Int32Array(size).fill(-1)
  const start = new Int32Array(size + 1)
  for (let k = 0; k < size; k++) {
    const rows: number[] = []
    const join = (row: number) => { if (row > k && seen[row] !== k) { seen[row] = k; rows.push(row) } }
    adjacency[k]!.forEach(join)
    for (const child of children[k]!) columns[child]!.forEach(join)
    const column = Int32Array.from(rows).sort()
    columns.push(column)
    start[k + 1] = start[k]! + column.length
    const parent = column[0]
    if (parent !== undefined) children[parent]!.push(k)
  }
  const row = new Int32Array(start[size]!)
  columns.forEach((column, k) => row.set(column, start[k]))
  return { size, start, row }
}

/** The number of the block at (row, column), row > column. It must be in the pattern. */
export function blockAt(pattern: BlockPattern, row: number, column: number): number {
  let low = pattern.start[column]!
  let high = pattern.start[column + 1]! - 1
  while (low < high) {
    const middle = (low + high) >> 1
    if (pattern.row[middle]! < row) low = middle + 1
    else high = middle
  }
  return low
}
