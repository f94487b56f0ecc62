export interface Dot { readonly value: number, readonly column: number, readonly row: number }

/**
 * Stacks equally likely outcomes as dots, so that doubt can be counted: three of twenty beat a price.
 * Each dot falls in the column its value falls in; columns are as wide as a dot.
 * Source: M. Kay, T. Kola, J. Hullman, S. Munson, 'When (ish) is my bus?', CHI 2016.
 * @param outcomes  one value a dot, in any order
 * @param columns  how many dots go side by side between low and high
 */
export function stackDots(outcomes: readonly number[], low: number, high: number, columns: number): readonly Dot[] {
  const rows = new Map<number, number>()
  return [...outcomes].sort((a, b) => a - b).map((value) => {
    const share = high > low ? (value - low) / (high - low) : 0.5
    const column = Math.min(columns - 1, Math.max(0, Math.floor(share * columns)))
    const row = rows.get(column) ?? 0
    rows.set(column, row + 1)
    return { value, column, row }
  })
}
