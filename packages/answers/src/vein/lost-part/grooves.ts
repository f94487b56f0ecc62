import { degrees } from '@lodebook/reckon'
import type { Enu } from '@lodebook/reckon'
import { axesOf, grooveMean, normalOf, vectorOf } from '@lodebook/reckon/structure'
import type { FittedVein, Grooves } from '@lodebook/reckon/structure'
import type { Answer, Assumed } from '../../answer.ts'
import { buildAnswer } from '../../build-answer.ts'
import { textOf, valueOf } from '../../read.ts'
import type { North } from '../../survey/north.ts'
import { angle, plural } from '../../words.ts'
import { attitudeOf, dot } from '../vein-data.ts'
import type { Sited } from '../vein-data.ts'

/** One reading of grooves on rock, one standard deviation by how good the crew calls it. Common practice, no source. */
const sigmaOf = { good: 5, fair: 7, poor: 12 } as const

export interface GroovesRead { readonly grooves: Grooves, readonly answer: Answer }

/**
 * The grooves on a fault as one line in it, from readings of rake or of trend and plunge; undefined without any.
 * @param off  how far the whole slip may run from the last movement's grooves
 */
export function groovesOn(fault: FittedVein, striae: readonly Sited[], north: North, off: Assumed & { readonly value: number }): GroovesRead | undefined {
  const read = striae.flatMap(({ entry }) => {
    const rake = rakeIn(fault, entry, north)
    const quality = textOf(entry, 'quality')
    return rake === undefined ? [] : [{ entry: entry.id, rake, sigma: quality === 'good' || quality === 'poor' ? sigmaOf[quality] : sigmaOf.fair }]
  })
  if (read.length === 0) return undefined
  const mean = grooveMean(read)
  const sigma = Math.hypot(mean.sigma, Math.max(0, off.value))
  const { strike, dip } = axesOf(fault)
  const turn = mean.rake * Math.PI / 180
  const line: Enu = [0, 1, 2].map(k => Math.cos(turn) * strike[k]! + Math.sin(turn) * dip[k]!) as unknown as Enu
  return {
    grooves: { line, sigma },
    answer: buildAnswer({
      id: 'lost-part.grooves', value: mean.rake, unit: '°',
      sentence: `The grooves rake ${angle(mean.rake)} in the fault, from ${plural(read.length, 'reading')}, good to ±${angle(sigma)}.`,
      range: { low: mean.rake - 1.2816 * sigma, high: mean.rake + 1.2816 * sigma, confidence: 0.8, because: ['how far single readings lie apart'] },
      method: {
        name: 'mean of lines without a sense', page: 'lost-part',
        working: [`${plural(read.length, 'rake')}, mean ${mean.rake.toFixed(1)}°${mean.scatter === undefined ? '' : `, scatter ${mean.scatter.toFixed(1)}°`}, mean good to ${mean.sigma.toFixed(1)}°`],
      },
      from: read.map(r => r.entry), assumed: [off],
    }),
  }
}

/** The rake of a reading in the fitted fault: as written, or from its trend and plunge. */
function rakeIn(fault: FittedVein, entry: Sited['entry'], north: North): number | undefined {
  const rake = valueOf(entry, 'rake')
  if (rake !== undefined) {
    // On a steep fault the surface at hand may dip the other way: its strike, and so its rake, is then the other way round.
    const own = attitudeOf(entry, north)
    return own && dot(normalOf(own), fault.normal) < 0 ? 180 - rake : rake
  }
  const trend = valueOf(entry, 'trend')
  const plunge = valueOf(entry, 'plunge')
  if (trend === undefined || plunge === undefined) return undefined
  const line = vectorOf({ trend: north.toGrid(trend, textOf(entry, 'north') ?? 'magnetic', textOf(entry, 'taken')), plunge })
  const { strike, dip } = axesOf(fault)
  return (degrees(Math.atan2(dot(line, dip), dot(line, strike))) + 180) % 180
}
