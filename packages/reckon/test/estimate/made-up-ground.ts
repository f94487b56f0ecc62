import { drawsFrom } from '@lodebook/reckon'
import type { VeinPoint } from '@lodebook/reckon'
import type { FieldPrior, FieldSite, LogSample } from '@lodebook/reckon/estimate'

export const prior: FieldPrior = { variance: { median: 1.2, factor: 1.7 }, range: { median: 8, factor: 2 }, nuggetShare: { a: 2, b: 2 } }

/** A made-up vein of square panels, sampled along drifts, with values that swing along it. */
export function madeUpGround(panels: number, samples: number, seed = 1) {
  const draws = drawsFrom(seed), columns = Math.ceil(Math.sqrt(panels * 3)), side = 2
  const blocks = Array.from({ length: panels }, (_, i): FieldSite => {
    const along = (i % columns) * side, down = Math.floor(i / columns) * side
    const points: VeinPoint[] = [[0.5, 0.5], [1.5, 0.5], [0.5, 1.5], [1.5, 1.5]].map(([a, d]) => ({ along: along + a!, down: down + d! }))
    return { key: `${i % columns},${Math.floor(i / columns)}`, points }
  })
  const high = Math.ceil(panels / columns) * side, drifts = Math.max(2, Math.round(high / 12))
  const data = Array.from({ length: samples }, (_, i): LogSample => {
    const along = draws.uniform() * columns * side, down = (0.5 + i % drifts) * high / drifts + draws.uniform()
    return { at: { along, down }, errorVariance: 0.2 + 0.3 * draws.uniform(),
      logValue: 1 + 0.8 * Math.sin(along / 7) + 0.6 * Math.cos(down / 5) + 0.7 * draws.normal() }
  })
  return { blocks, data, sites: data.map((s, i): FieldSite => ({ key: `s${i}`, points: [s.at] })) }
}
