/**
 * Where a function that falls steadily passes a level, by stepping outwards from a start until the level is between two points and then halving.
 * @param step first step; its sign does not matter
 * @returns the crossing to the last digit, or an infinity when it lies beyond the numbers
 */
export function fallingThrough(f: (x: number) => number, level: number, start: number, step: number): number {
  let low = start
  let high = start
  let stride = Math.abs(step)
  if (f(start) > level) {
    while (f(high) > level) {
      low = high
      high += stride
      stride *= 2
      if (!Number.isFinite(high)) return Infinity
    }
  } else {
    while (f(low) <= level) {
      high = low
      low -= stride
      stride *= 2
      if (!Number.isFinite(low)) return -Infinity
    }
  }
  for (;;) {
    const middle = low + (high - low) / 2
    if (middle <= low || middle >= high) return middle
    if (f(middle) > level) low = middle
    else high = middle
  }
}
