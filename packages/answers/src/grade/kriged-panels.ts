import { InputError } from '@lodebook/reckon'
import type { VeinPoint } from '@lodebook/reckon'
import { experimentalVariogram, fitVariogram, krigePanels, totalOver } from '@lodebook/reckon/geostatistics'
import type { Panel, VariogramModel } from '@lodebook/reckon/geostatistics'
import type { VariogramDrawn } from '../shapes.ts'
import { figure, plural } from '../words.ts'
import type { Ground } from './panels.ts'

/** A value at a place with the variance of its own error. */
export interface Measured { readonly at: VeinPoint, readonly value: number, readonly errorVariance: number }

/** Below this many samples a variogram is noise drawn as a curve. Common practice, no source. */
export const fewest = 10

export interface KrigedGround {
  readonly drawn: VariogramDrawn
  /** Panel means; undefined when there were too few samples for a variogram or it could not be fitted. */
  readonly means: readonly number[] | undefined
  readonly errors: readonly number[] | undefined
  /** Sum over panels of factor times mean, with its variance. */
  readonly total: (factors: readonly number[]) => { readonly mean: number, readonly variance: number } | undefined
}

const unfit = (of: string, sentence: string, lags: VariogramDrawn['lags'] = []): KrigedGround =>
  ({ drawn: { of, lags, model: undefined, sentence }, means: undefined, errors: undefined, total: () => undefined })

/** Ordinary kriging of panel averages with a variogram fitted to the same samples, each sample's own error taken into account. */
export function krigeGround(of: string, measured: readonly Measured[], ground: readonly Ground[]): KrigedGround {
  if (measured.length < fewest) {
    return unfit(of, `${plural(measured.length, 'sample')}: too few for a variogram to mean anything (fewer than ${fewest}).`)
  }
  const points = measured.map(m => [m.at.along, m.at.down, m.value] as const)
  const span = Math.hypot(extent(measured.map(m => m.at.along)), extent(measured.map(m => m.at.down)))
  if (!(span > 0)) return unfit(of, 'All samples are at one place: nothing can be said of how the ground changes.')
  // Half the span: beyond it the same few samples make all the pairs.
  const lags = experimentalVariogram(points, { cutoff: span / 2, width: span / 2 / 12 })
  let model: VariogramModel
  let drawnModel: VariogramDrawn['model']
  let unbounded: boolean
  try {
    const fit = fitVariogram(lags, { type: 'exponential' })
    // What the samples' own errors put into the variogram is known; only the rest is the ground's nugget.
    const own = measured.reduce((sum, m) => sum + m.errorVariance, 0) / measured.length
    const nugget = Math.max(0, fit.nugget - own)
    unbounded = fit.rangeAtBound !== undefined
    drawnModel = { type: 'exponential', nugget: fit.nugget, partialSill: fit.partialSill, range: fit.range }
    if (!(fit.partialSill > 0 || nugget > 0)) return unfit(of, 'All samples are alike: there is no variogram to fit.', lags)
    model = { nugget, structures: fit.partialSill > 0 ? [{ type: 'exponential', partialSill: fit.partialSill, range: fit.range }] : [] }
  } catch (error) {
    if (error instanceof InputError) return unfit(of, `No variogram could be fitted: ${error.message}.`, lags)
    throw error
  }
  const kriged = krigePanels(points, ground.map(panelOf), model, { kind: 'ordinary', errorVariance: measured.map(m => m.errorVariance) })
  const m = ground.length
  return {
    drawn: {
      of, lags, model: drawnModel,
      sentence: unbounded ? `${plural(measured.length, 'sample')}: over this ground they do not say how far one resembles another.` : `Samples resemble each other over about ${figure(3 * drawnModel.range, 2)} m; ${figure(100 * drawnModel.nugget / (drawnModel.nugget + drawnModel.partialSill), 2)} % of the difference has no reach at all (${plural(measured.length, 'sample')}).`,
    },
    means: [...kriged.means], errors: ground.map((_, i) => Math.sqrt(Math.max(0, kriged.covariance[i * m + i]!))),
    total: factors => totalOver(kriged, factors),
  }
}

const extent = (values: readonly number[]) => Math.max(...values) - Math.min(...values)

const panelOf = ({ centre, points }: Ground): Panel => ({
  x: centre.along, y: centre.down,
  support: {
    isPoint: false, dxs: Float64Array.from(points, p => p.along - centre.along), dys: Float64Array.from(points, p => p.down - centre.down),
    weights: new Float64Array(points.length).fill(1 / points.length),
  },
})
