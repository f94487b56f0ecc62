import type { Entry } from '@lodebook/book'
import type { VeinPoint } from '@lodebook/reckon'
import type { Assume } from '../assumptions.ts'
import { moneyOf, textOf } from '../read.ts'
import type { Grade, HeadingShape, VeinAt } from '../shapes.ts'
import { length } from '../words.ts'
import type { CrewUnits } from '../words.ts'
import type { NextLook } from './shapes.ts'

/** A look that could be taken, before it is weighed. */
export interface Candidate {
  readonly does: NextLook['does']
  readonly where: string
  readonly at: VeinPoint | undefined
  /** The panel whose gold its reading follows, by its place in the list; undefined for a heap. */
  readonly host: number | undefined
  readonly heap: string | undefined
  /** Variance of the log of its reading about the host's log: the ground within the panel, and the look's own error. */
  readonly noise: number
  /** How much of the host's own doubt the reading still follows; below 1 for a bag that has been looked at already. */
  readonly follows: number
  readonly hours: number
  readonly fee: number
}

export interface CandidateInput {
  readonly grade: Grade
  readonly vein: VeinAt
  readonly headings: readonly HeadingShape[]
  readonly assays: readonly Entry[]
  readonly costs: readonly Entry[]
  readonly currency: string
  readonly heaps: readonly { readonly sort: string, readonly variance: number }[]
  readonly assume: Assume
  readonly units: CrewUnits
}

const [usualPanned, usualAssayed] = [0.6, 0.35] // sd of ln(grade) before the book's own bags tell; common practice, no source
const nearVein = 2.5 // m off the plane: further away a station does not see the vein
const nextStation = 6 // m

const middle = (values: readonly number[]): number | undefined => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]
const apart = (a: VeinPoint, b: VeinPoint) => Math.hypot(a.along - b.along, a.down - b.down)

/** How much one place in a panel differs from the panel, variance of logs: from the nearest pairs of samples, their own errors taken off. */
export function withinPanels({ samples }: Grade, assume: Assume): number {
  const used = samples.filter(s => s.used && s.at && s.accumulation !== undefined && s.accumulation > 0)
  const pairs = used.flatMap((s, i) => {
    const others = used.filter((_, j) => j !== i).sort((a, b) => apart(a.at!, s.at!) - apart(b.at!, s.at!))
    const near = others[0]
    if (!near || apart(near.at!, s.at!) >= 3) return []
    return [(Math.log(s.accumulation!) - Math.log(near.accumulation!)) ** 2 / 2 - (s.logSd ** 2 + near.logSd ** 2) / 2]
  })
  const prior = assume('log variance of grade').value / 3
  // The guess counts as ten pairs.
  return Math.max(0.05, (pairs.reduce((sum, p) => sum + p, 0) + 10 * prior) / (pairs.length + 10))
}

export interface Candidates {
  readonly candidates: readonly Candidate[]
  /** Variance of logs between places within one panel. */
  readonly within: number
}

/** Every look that the crew could take at once: channels where the vein can be reached, bags not yet assayed, heaps, sweeps. */
export function candidatesOf({ grade, vein, headings, assays, costs, currency, heaps, assume, units }: CandidateInput): Candidates {
  const within = withinPanels(grade, assume)
  const assayed = new Set(assays.map(a => textOf(a, 'bag')))
  const used = grade.samples.filter(s => s.used && s.at)
  const panned = used.filter(s => !assayed.has(s.bag))
  const sdOf = (list: typeof used, usual: number) => middle(list.map(s => s.logSd)) ?? usual
  const [panError, assayError] = [sdOf(panned, usualPanned) ** 2, sdOf(used.filter(s => assayed.has(s.bag)), usualAssayed) ** 2]
  const fees = costs.map(c => textOf(c, 'per') === 'assay' ? moneyOf(c, 'amount') : undefined)
  const fee = fees.find(m => m?.currency === currency)?.amount ?? assume('assay fee').value
  const [channel, pan, sweep] = [assume('hours a channel').value, assume('hours a pan').value, assume('hours a sweep').value]
  const hostOf = (at: VeinPoint) => {
    let best = -1, least = Infinity
    grade.panels.forEach((p, i) => { const d = apart(p.centre, at); if (d < least) { least = d; best = i } })
    const side = best < 0 ? 0 : Math.sqrt(Math.max(...grade.panels.map(p => p.area)))
    return best >= 0 && least <= side ? best : undefined
  }
  const plain = { heap: undefined, follows: 1 } as const
  const seen = new Set<number>()
  const places = placesOn(vein, headings, units).flatMap(({ where, at }): Candidate[] => {
    const host = hostOf(at)
    // One place stands for its panel: to the estimate all places in it tell the same.
    if (host === undefined || seen.has(host)) return []
    seen.add(host)
    return [
      { ...plain, does: 'channel, panned', where, at, host, noise: within + panError, hours: channel + pan, fee: 0 },
      { ...plain, does: 'channel, assayed', where, at, host, noise: within + assayError, hours: channel + 0.5 * pan, fee },
      { ...plain, does: 'sweep', where, at, host, noise: within + assume('what a sweep tells').value ** 2, hours: sweep, fee: 0 },
    ]
  })
  const bags = panned.flatMap((s): Candidate[] => {
    const host = hostOf(s.at!)
    if (host === undefined) return []
    // The bag's own pan has told part of it already: what is left to tell falls off as the pan was good.
    const follows = s.logSd ** 2 / (s.logSd ** 2 + within)
    return [{ does: 'assay', where: `bag ${s.bag}`, at: s.at, host, heap: undefined, follows, noise: within * follows + assayError, hours: 0.5 * pan, fee }]
  })
  const loose = heaps.map(({ sort, variance }): Candidate => ({
    does: 'heap sample, panned', where: `the ${sort}`, at: undefined, host: undefined, heap: sort, follows: 1, noise: variance + panError, hours: 0.25 + pan, fee: 0,
  }))
  return { candidates: [...places, ...bags, ...loose], within }
}

interface Reachable { readonly where: string, readonly at: VeinPoint }

/** Places where the vein can be reached: back and sill at the stations of the headings that see it, and half-way to the next one. */
function placesOn({ stations, headings: drawn }: VeinAt, headings: readonly HeadingShape[], units: CrewUnits): readonly Reachable[] {
  const near = new Map(stations.filter(s => Math.abs(s.off) <= nearVein).map(s => [s.name, s.at]))
  return headings.flatMap((h) => {
    const lines = drawn.find(d => d.name === h.name)
    const walls = lines ? ([['back', lines.back], ['sill', lines.sill]] as const) : []
    const faces = (where: string, at: VeinPoint) => walls.flatMap(([side, line]) => {
      const nearest = [...line].sort((a, b) => apart(a, at) - apart(b, at))[0]
      return nearest && apart(nearest, at) <= nextStation / 2 ? [{ where: `${where}, ${side}`, at: { along: at.along, down: nearest.down } }] : []
    })
    return h.stations.flatMap((name, i) => {
      const at = near.get(name), next = h.stations[i + 1], after = next === undefined ? undefined : near.get(next)
      if (!at) return []
      const half = after && apart(at, after) <= nextStation ? { along: (at.along + after.along) / 2, down: (at.down + after.down) / 2 } : undefined
      return [...faces(name, at), ...half ? faces(`${name} + ${length(apart(at, half), units, 2)} toward ${next!}`, half) : []]
    })
  })
}
