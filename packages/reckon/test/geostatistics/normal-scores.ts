import quantile from '@stdlib/stats-base-dists-normal-quantile'

/** Normal scores as the reference has them: quantile of (average rank - 0.5) / n. */
export function normalScores(values: readonly number[]): number[] {
  return values.map((value) => {
    const below = values.filter(other => other < value).length
    const same = values.filter(other => other === value).length
    return quantile((below + (same + 1) / 2 - 0.5) / values.length, 0, 1)
  })
}
