import { FieldGround, fieldOutcomes, logFieldPosterior } from '@lodebook/reckon/estimate'
import type { FieldSite, LogSample } from '@lodebook/reckon/estimate'
import { drawsFrom } from '@lodebook/reckon'
import { machineLine } from './lib/machine.ts'
import { time } from './lib/timing.ts'

const prior = { variance: { median: 1.2, factor: 1.7 }, range: { median: 6, factor: 2 }, nuggetShare: { a: 2, b: 2 } }

/** A made-up vein of 2 m panels sampled along drifts 12 m apart. */
function ground(panels: number, samples: number) {
  const draws = drawsFrom(1), columns = Math.ceil(Math.sqrt(panels * 3)), high = 2 * Math.ceil(panels / columns), drifts = Math.max(2, Math.round(high / 12))
  const blocks = Array.from({ length: panels }, (_, i): FieldSite => {
    const [along, down] = [2 * (i % columns), 2 * Math.floor(i / columns)]
    return { key: `${along},${down}`, points: [0.5, 1.5].flatMap(a => [0.5, 1.5].map(d => ({ along: along + a, down: down + d }))) }
  })
  const data = Array.from({ length: samples }, (_, i): LogSample => {
    const along = draws.uniform() * columns * 2, down = (0.5 + i % drifts) * high / drifts + draws.uniform()
    const errorVariance = 0.2 + 0.3 * draws.uniform()
    return { at: { along, down }, errorVariance, logValue: 1 + 0.8 * Math.sin(along / 7) + 0.6 * Math.cos(down / 5) + 0.7 * draws.normal() }
  })
  return { blocks, data, sites: data.map((s, i): FieldSite => ({ key: `s${i}`, points: [s.at] })) }
}

/** What a new assay sets off in the estimate: the posterior of the ground again, and every panel's outcomes; what hangs on places alone is kept. */
export async function run(): Promise<void> {
  console.log(machineLine())
  console.log('Processor milliseconds, median of 3; the same kernel that the app runs in its worker, one thread.')
  console.log(['samples', 'panels', 'outcomes', 'places (once)', 'belief', 'outcomes again', 'a new assay'].join('\t'))
  for (const [samples, panels, count] of [[70, 220, 1000], [300, 2000, 400], [1000, 7000, 400], [3000, 20_000, 400]] as const) {
    const { blocks, data, sites } = ground(panels, samples), at = data.map((_, i) => i)
    const kept = new FieldGround(sites, blocks)
    const places = time(() => { new FieldGround(sites, blocks).weightsAt(6) }, 1, 0).processor
    let posterior = logFieldPosterior(data, prior)
    const belief = time(() => { posterior = logFieldPosterior(data, prior) }, 3, 1).processor
    const outcomes = time(() => { fieldOutcomes(kept, posterior, at, { count, seed: 1, companion: { seed: 2, correlation: 0.3 } }) }, 3, 1).processor
    const ms = (seconds: number) => (1000 * seconds).toFixed(0)
    console.log([samples, panels, count, ms(places), ms(belief), ms(outcomes), ms(belief + outcomes)].join('\t'))
  }
  await Promise.resolve()
}
