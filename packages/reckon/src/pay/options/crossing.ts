/**
 * Where a function of one figure reaches a level, when all else is held: what must be true of that figure alone.
 * @param of  rising or falling throughout
 * @returns the figure, by bisection to 1e-9 of its size; undefined when the level is not reached between `from` and `to`
 */
export function levelReached(of: (value: number) => number, level: number, from: number, to: number): number | undefined {
  let [low, high] = [from, to]
  const [atLow, atHigh] = [of(low) - level, of(high) - level]
  if (!Number.isFinite(atLow) || !Number.isFinite(atHigh) || Math.sign(atLow) * Math.sign(atHigh) > 0) return undefined
  for (let i = 0; i < 200 && high - low > 1e-9 * Math.max(Math.abs(low), Math.abs(high)); i++) {
    const middle = (low + high) / 2
    if (Math.sign(of(middle) - level) === Math.sign(atLow)) low = middle; else high = middle
  }
  return (low + high) / 2
}
