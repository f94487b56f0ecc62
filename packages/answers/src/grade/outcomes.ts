import { drawsFrom } from '@lodebook/reckon'
import type { VeinPoint } from '@lodebook/reckon'
import { fieldOutcomes, logFieldPosterior } from '@lodebook/reckon/estimate'
import type { FieldPrior, LogSample } from '@lodebook/reckon/estimate'
import type { Assume, AssumedFigure } from '../assumptions.ts'
import type { GroundAt } from './ground-at.ts'
import { outcomesDrawn } from './notice.ts'

/** A sample as the estimate sees it. Logs of accumulation (g/t m) and of true width (m), with the variance of each one's own error. */
export interface GroundSample {
  readonly at: VeinPoint
  readonly logAccumulation: number
  readonly accumulationError: number
  readonly logWidth: number
  readonly widthError: number
}

export interface GroundOutcomes {
  /** One array a block (panels, then those drawn by hand), one number an outcome. */
  readonly accumulation: readonly Float64Array[]
  readonly width: readonly Float64Array[]
  /** t/m3, one an outcome. */
  readonly density: readonly number[]
  /** Most believable variance, range and nugget share of the logs of accumulation. */
  readonly ground: { readonly variance: number, readonly range: number, readonly nuggetShare: number }
}

const factorOf = ({ value, high }: AssumedFigure) => Math.max(1.05, (high / value) ** (1 / 1.2816))
const nuggetShare = { a: 2, b: 2 } // as likely either way, extremes unlikely

/** What is thought of the ground before any sample. */
export function priors(assume: Assume): { accumulation: FieldPrior, width: FieldPrior, assumed: readonly AssumedFigure[] } {
  const [grade, range, width] = [assume('log variance of grade'), assume('range of grade'), assume('log variance of width')]
  const spread = { median: range.value, factor: factorOf(range) }
  return {
    accumulation: { variance: { median: grade.value, factor: factorOf(grade) }, range: spread, nuggetShare },
    width: { variance: { median: width.value, factor: factorOf(width) }, range: spread, nuggetShare },
    assumed: [grade, range, width],
  }
}

/** One stated seed: the same book gives the same numbers on every machine. */
export const seed = 1881
const seeds = { width: seed, accumulation: seed + 100, density: seed + 200 }

/** Above so many panels fewer outcomes are drawn, so that an answer comes while one waits: 400, whose deciles are good to a sixtieth of their rank. */
const manyPanels = 600
export const outcomesFor = (panels: number): number => panels > manyPanels ? 400 : outcomesDrawn

/** Width over the blocks, outcome by outcome. It hangs on no assay. */
export const widthOutcomes = (ground: GroundAt, widths: readonly (LogSample & { readonly site: number })[], assume: Assume): readonly Float64Array[] =>
  fieldOutcomes(ground.field, logFieldPosterior(widths, priors(assume).width), widths.map(w => w.site),
    { count: outcomesFor(ground.panels.length), seed: seeds.width }).blocks

/**
 * Equally likely outcomes of accumulation over the blocks, moving with those of width as much as the samples' own logs do.
 * Sample i lies at site i of the ground.
 */
export function groundOutcomes(samples: readonly GroundSample[], width: readonly Float64Array[], ground: GroundAt, assume: Assume): GroundOutcomes {
  const count = outcomesFor(ground.panels.length), draws = drawsFrom(seeds.density)
  const posterior = logFieldPosterior(samples.map(s => ({ at: s.at, logValue: s.logAccumulation, errorVariance: s.accumulationError })),
    priors(assume).accumulation)
  const accumulation = fieldOutcomes(ground.field, posterior, samples.map((_, i) => i),
    { count, seed: seeds.accumulation, companion: { seed: seeds.width, correlation: correlation(samples) } }).blocks
  const density = assume('vein density')
  const sigma = (density.high - density.low) / (2 * 1.2816)
  const best = (key: 'variance' | 'range' | 'nuggetShare') => Math.exp(posterior.nodes.reduce((sum, node) => sum + node.weight * Math.log(node[key]), 0))
  return {
    accumulation, width, density: Array.from({ length: count }, () => density.value + sigma * draws.normal()),
    ground: { variance: best('variance'), range: best('range'), nuggetShare: best('nuggetShare') },
  }
}

/** Correlation of the logs of accumulation and width among samples, drawn towards none when there are few. */
function correlation(samples: readonly GroundSample[]): number {
  const n = samples.length
  const [ma, mw] = [samples.reduce((s, x) => s + x.logAccumulation, 0) / n, samples.reduce((s, x) => s + x.logWidth, 0) / n]
  let aa = 0, ww = 0, aw = 0
  for (const s of samples) {
    aa += (s.logAccumulation - ma) ** 2
    ww += (s.logWidth - mw) ** 2
    aw += (s.logAccumulation - ma) * (s.logWidth - mw)
  }
  return aa > 0 && ww > 0 ? Math.min(0.95, Math.max(-0.95, aw / Math.sqrt(aa * ww) * n / (n + 10))) : 0
}
