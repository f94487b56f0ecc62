/**
 * The axis that dots and bars of pay share. A few very rich outcomes would press all others together, so the axis ends a little after the
 * second highest and what lies beyond is drawn at its end and named.
 */
export function payAxis(outcomes: readonly number[], wage: number): { readonly low: number, readonly high: number } {
  const sorted = [...outcomes].sort((a, b) => a - b)
  const low = Math.min(0, sorted[0] ?? 0), top = Math.max(sorted.at(-2) ?? sorted.at(-1) ?? 0, wage, 1)
  const spare = (top - low) * 0.06
  return { low: low < 0 ? low - spare : 0, high: top + spare }
}
