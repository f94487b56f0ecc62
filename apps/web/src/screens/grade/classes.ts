/** A class of a legend: values from `from` up to but not with `to`; how dark it is drawn, 0 to 1. */
export interface Class { readonly from: number, readonly to: number, readonly share: number, readonly count: number }

const most = 6

/**
 * Divides values into at most six classes with round limits and counts each. Values that run over more than one power of ten get limits of
 * 1, 2, 5, 10, 20…, since what matters in gold is by how many times; others get even steps.
 */
export function classesOf(values: readonly number[]): readonly Class[] {
  const finite = values.filter(Number.isFinite)
  if (finite.length === 0) return []
  const low = Math.min(...finite), high = Math.max(...finite)
  const limits = low > 0 && high / low > 10 ? oneTwoFive(low, high) : even(low, high)
  return limits.slice(0, -1).map((from, i, all) => {
    const to = limits[i + 1]!, last = i === all.length - 1
    return { from, to, share: all.length > 1 ? i / (all.length - 1) : 0.5, count: finite.filter(v => (v >= from || i === 0) && (v < to || last)).length }
  })
}

/** How dark a value is drawn. */
export const shareOf = (classes: readonly Class[], value: number): number =>
  (classes.find(c => value < c.to) ?? classes.at(-1))?.share ?? 0

function oneTwoFive(low: number, high: number): readonly number[] {
  const limits: number[] = []
  for (let power = Math.floor(Math.log10(low)); limits.length === 0 || limits.at(-1)! <= high; power++)
    for (const lead of [1, 2, 5]) if (limits.length === 0 || limits.at(-1)! <= high) limits.push(Number(`${lead}e${power}`))
  const first = limits.findLastIndex(l => l <= low)
  const kept = limits.slice(Math.max(0, first))
  return kept.length - 1 > most ? [kept[0]!, ...kept.slice(kept.length - most)] : kept
}

function even(low: number, high: number): readonly number[] {
  const span = high - low
  if (!(span > 0)) return [low, low + Math.max(Math.abs(low), 1)]
  const power = 10 ** Math.floor(Math.log10(span / (most - 1)))
  const step = [1, 2, 5, 10].map(l => l * power).find(s => Math.floor(high / s) - Math.floor(low / s) + 1 <= most)!
  const first = Math.floor(low / step), count = Math.floor(high / step) - first + 1
  return Array.from({ length: count + 1 }, (_, i) => Number(((first + i) * step).toPrecision(12)))
}
