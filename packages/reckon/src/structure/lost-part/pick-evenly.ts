/**
 * Picks `count` of the weighted, each in proportion to its weight, at even steps through their running sum.
 * @param logWeights  logs of the weights, at least one above -Infinity
 * @param start  in [0, 1): where in the first step to begin
 * @returns indices, rising
 */
export function pickEvenly(logWeights: readonly number[], count: number, start: number): readonly number[] {
  const top = logWeights.reduce((a, b) => Math.max(a, b), -Infinity)
  const total = logWeights.reduce((sum, log) => sum + Math.exp(log - top), 0)
  const picked: number[] = []
  let [running, last] = [0, 0]
  for (let index = 0; index < logWeights.length && picked.length < count; index++) {
    const weight = Math.exp(logWeights[index]! - top)
    if (weight > 0) last = index
    running += weight
    while (picked.length < count && (start + picked.length) / count * total < running) picked.push(index)
  }
  while (picked.length < count) picked.push(last) // rounding in the running sum
  return picked
}
