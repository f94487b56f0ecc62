import type { Enu } from '@lodebook/reckon'
import { lineOf, slipMeasures, vectorOf } from '@lodebook/reckon/structure'
import type { FarSide, FittedVein, SlipEvidence } from '@lodebook/reckon/structure'
import type { Answer } from '../../answer.ts'
import { buildAnswer } from '../../build-answer.ts'
import { textOf, valueOf } from '../../read.ts'
import type { North } from '../../survey/north.ts'
import { angle, azimuth, figure, length } from '../../words.ts'
import type { CrewUnits } from '../../words.ts'
import { dot } from '../vein-data.ts'
import type { Sited } from '../vein-data.ts'
import { bySide } from './sides.ts'

export interface PiercedRead { readonly vector: NonNullable<SlipEvidence['vector']>, readonly answer: Answer }

interface PiercingInput {
  readonly fault: FittedVein
  readonly far: FarSide
  readonly structures: readonly Sited[]
  readonly north: North
  readonly units: CrewUnits
}

/** How well a crew touches the very point where a line meets a fault, on a wall of gouge: metres. Common practice, no source. */
const touch = 0.25

/**
 * The whole slip from one line that comes to the fault on both sides: the step from its near end to its far end.
 *
 * A point read away from the fault is carried to it along the line's trend and plunge where those were written; otherwise its distance from the
 * fault is doubt. With several lines the steps are averaged, each as heavily as it is sure.
 */
export function piercingPoints({ fault, far, structures, north, units }: PiercingInput): PiercedRead | undefined {
  const groups = new Map<string, Sited[]>()
  for (const s of structures) {
    if (textOf(s.entry, 'feature') !== 'piercing point') continue
    const name = textOf(s.entry, 'name') ?? ''
    groups.set(name, [...groups.get(name) ?? [], s])
  }
  const steps = [...groups].flatMap(([name, group]) => {
    const { near, beyond } = bySide(fault, far, group)
    if (near.length === 0 || beyond.length === 0) return []
    const [a, b] = [endOf(near, fault, north), endOf(beyond, fault, north)]
    const step = [0, 1, 2].map(k => b.point[k]! - a.point[k]!) as unknown as Enu
    return [{ name, step, sigma: Math.hypot(a.sigma, b.sigma), from: [...near, ...beyond].map(s => s.entry.id) }]
  })
  if (steps.length === 0) return undefined
  const total = steps.reduce((sum, s) => sum + s.sigma ** -2, 0)
  const slip = [0, 1, 2].map(k => steps.reduce((sum, s) => sum + s.step[k]! * s.sigma ** -2, 0) / total) as unknown as Enu
  const sigma = Math.sqrt(1 / total)
  const size = Math.hypot(...slip)
  const { alongStrike, downDip } = slipMeasures(fault, slip)
  const line = size > 0 ? lineOf(slip) : undefined
  return {
    vector: { slip, sigma },
    answer: buildAnswer({
      id: 'lost-part.pierced', value: size, unit: 'm',
      sentence: `${steps.map(s => s.name === '' ? 'A piercing point' : `The ${s.name.replace(/^the /i, '')}`).join(' and ')} ${steps.length === 1 ? 'comes' : 'come'} to the fault on both sides: the far side moved ${length(size, units, 2)}${line ? ` along ${azimuth(line.trend)}, ${angle(line.plunge)} ${slip[2] > 0 ? 'up' : 'down'}` : ''} (±${length(sigma, units, 2)} each way).`,
      range: { low: Math.max(0, size - 1.2816 * sigma), high: size + 1.2816 * sigma, confidence: 0.8, because: ['where the line was touched on each side'] },
      method: {
        name: 'step between piercing points', page: 'lost-part',
        working: [
          ...steps.map(s => `${s.name || 'point'}: ${s.step.map(v => figure(v, 3)).join(', ')} m east, north, up, ±${s.sigma.toFixed(2)} m`),
          `along the fault's strike ${alongStrike.toFixed(2)} m, down its dip ${downDip.toFixed(2)} m`,
        ],
      },
      sources: ['The step between piercing points is the slip itself: plane geometry'], from: steps.flatMap(s => s.from),
      cautions: size > 0 && Math.abs(dot(fault.normal, slip)) > 3 * sigma ? [`This step leaves the fault by ${length(Math.abs(dot(fault.normal, slip)), units, 2)}: the two points may not be of one line.`] : [],
    }),
  }
}

/** Where a line comes to the fault on one side: the mean of its places, each carried to the fault along the line. */
function endOf(places: readonly Sited[], fault: FittedVein, north: North): { readonly point: Enu, readonly sigma: number } {
  const ends = places.map(({ entry, located }) => {
    const off = dot(fault.normal, [0, 1, 2].map(k => located.point[k]! - fault.centroid[k]!) as unknown as Enu)
    const own = Math.hypot(touch, Math.max(...located.sigma))
    const [trend, plunge] = [valueOf(entry, 'trend'), valueOf(entry, 'plunge')]
    if (trend === undefined || plunge === undefined) return { point: located.point, sigma: Math.hypot(own, off) }
    const way = vectorOf({ trend: north.toGrid(trend, textOf(entry, 'north') ?? 'magnetic', textOf(entry, 'taken')), plunge })
    const steep = dot(fault.normal, way)
    // Where it runs along the fault nobody can say where it comes to it.
    if (Math.abs(steep) < 0.2) return { point: located.point, sigma: Math.hypot(own, off) }
    const reach = off / steep
    return { point: [0, 1, 2].map(k => located.point[k]! - reach * way[k]!) as unknown as Enu, sigma: Math.hypot(own, 0.1 * reach) }
  })
  const total = ends.reduce((sum, e) => sum + e.sigma ** -2, 0)
  const point = [0, 1, 2].map(k => ends.reduce((sum, e) => sum + e.point[k]! * e.sigma ** -2, 0) / total) as unknown as Enu
  return { point, sigma: Math.sqrt(1 / total) }
}
