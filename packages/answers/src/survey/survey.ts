import type { Entry } from '@lodebook/book'
import type { Enu } from '@lodebook/reckon'
import { adjustNetwork } from '@lodebook/reckon/survey'
import type { AdjustedStation, NetworkResult } from '@lodebook/reckon/survey'
import type { Assume } from '../assumptions.ts'
import type { Assumed } from '../answer.ts'
import { placeOf, textOf } from '../read.ts'
import { gridOf } from './grid.ts'
import type { Grid } from './grid.ts'
import { datesOf, northOf } from './north.ts'
import type { North } from './north.ts'
import { pacedOf } from './paced-of.ts'
import { byName, dayOf, shotOf } from './shots-of.ts'
import type { Shared } from './shots-of.ts'
import { tiesOf } from './ties-of.ts'

/** The survey as adjusted: what every place in the book hangs on. */
export interface Survey {
  readonly grid: Grid
  readonly north: North
  readonly result: NetworkResult
  /** Stations with a place: in the grid, or in a grid of their own when nothing ties them. */
  readonly stations: ReadonlyMap<string, AdjustedStation>
  /** Stations that are surveyed but joined to nothing that is drawn. */
  readonly adrift: ReadonlySet<string>
  readonly tied: boolean
  readonly shots: readonly Entry[]
  /** Stepped legs in use; the adjustment's shots after `shots`. */
  readonly paced: readonly Entry[]
  /** Ties in use, in the adjustment's order. */
  readonly ties: readonly Entry[]
  /** For each station the shots and ties that touch it. */
  readonly touching: ReadonlyMap<string, readonly string[]>
  readonly surveys: ReadonlyMap<string, Entry>
  readonly assumed: readonly Assumed[]
  /** Stations that only stepped legs place. */
  readonly roughStations: ReadonlySet<string>
  /** What zero elevation is, in the crew's words; '' when nobody said. */
  readonly datum: string
  readonly cautions: readonly string[]
}

export interface SurveyEntries {
  readonly shots: readonly Entry[]
  readonly ties: readonly Entry[]
  readonly instruments?: readonly Entry[]
  readonly surveys?: readonly Entry[]
  readonly paced?: readonly Entry[]
  readonly mine?: Entry | undefined
}

/** Beyond so many stations their doubt beside the first is not worked out. */
const mostPairs = 1000

/**
 * Adjusts all shots, stepped legs and ties of the book together, of whatever year and quality, each by its own precision. Every reading stays
 * in; what the crew left out is compared but carries no weight.
 */
export function surveyOf({ shots, ties, instruments = [], surveys: surveyEntries = [], paced: legs = [], mine }: SurveyEntries, assume: Assume): Survey {
  const grid = gridOf(mine, ties), surveys = byName(surveyEntries)
  const days = shots.flatMap(shot => dayOf(shot, surveys.get(textOf(shot, 'survey') ?? '')) ?? [])
  const north = northOf(mine, grid, [...days, ...datesOf(legs)])
  const assumed = (['compass precision', 'clinometer precision', 'tape precision'] as const).map(assume)
  const [compass, clinometer, tape] = assumed

  const shared: Shared = {}
  const context = { north, instruments: byName(instruments), surveys }
  const networkShots = shots.map(shot => shotOf(shot, context, shared))
  const read = tiesOf(ties, grid, mine)
  const surveyed = new Set([...networkShots.flatMap(shot => [shot.from, shot.to]), ...read.ties.map(tie => tie.station)])
  const paced = pacedOf(legs, surveyed, north, assume('pace'))

  // How well a station is known beside the first tied one is what a crew underground needs; on the ground the GPS fix is most of the doubt.
  const anchor = read.ties.find(tie => !tie.leaveOut)?.station
  const names = anchor === undefined ? [] : [...new Set(networkShots.flatMap(shot => [shot.from, shot.to]))].filter(name => name !== anchor)
  const pairs = anchor !== undefined && names.length <= mostPairs ? names.map(name => [anchor, name] as const) : []
  const result = adjustNetwork({
    shots: [...networkShots, ...paced.shots], ties: read.ties,
    options: { precision: { azimuth: compass!.value, inclination: clinometer!.value, distance: tape!.value }, pairs, instruments: shared },
  })
  const tied = result.stations.size > 0, stations = tied ? result.stations : firstPart(result)
  return {
    grid, north, result, stations, tied, shots, paced: paced.entries, ties: read.entries, surveys, assumed: paced.entries.length > 0 ? [...assumed, assume('pace')] : assumed,
    adrift: new Set([...result.floating.keys(), ...result.undetermined].filter(name => !stations.has(name))),
    roughStations: new Set(paced.shots.flatMap(leg => [leg.from, leg.to]).filter(name => !surveyed.has(name))), datum: (mine && textOf(mine, 'datum')) ?? '',
    touching: touchingOf([...shots, ...paced.entries], ties), cautions: [...read.cautions, ...unknownNames(shots, context)],
  }
}

/** With no tie at all the largest part has a grid of its own, from its anchor. */
function firstPart(result: NetworkResult): ReadonlyMap<string, AdjustedStation> {
  const largest = result.parts.map((part, index) => ({ index, size: part.stations.length })).sort((a, b) => b.size - a.size)[0]
  return new Map([...result.floating].filter(([, station]) => station.part === largest?.index))
}

/** Surveys that shots name and nobody has described: their shots count as the crew's own. */
function unknownNames(shots: readonly Entry[], { surveys }: { readonly surveys: ReadonlyMap<string, Entry> }): readonly string[] {
  const unknown = new Set(shots.flatMap(shot => textOf(shot, 'survey') ?? []).filter(name => !surveys.has(name)))
  return [...unknown].map(name => `Shots name the survey ‘${name}’, of which nothing is written: they count as good as your own until an entry says how good it was.`)
}

function touchingOf(shots: readonly Entry[], ties: readonly Entry[]): Map<string, string[]> {
  const touching = new Map<string, string[]>()
  const add = (station: string | undefined, entry: string) => {
    if (station === undefined) return
    const list = touching.get(station)
    if (list) list.push(entry)
    else touching.set(station, [entry])
  }
  for (const shot of shots) { add(textOf(shot, 'from'), shot.id); add(textOf(shot, 'to'), shot.id) }
  for (const tie of ties) if (placeOf(tie)) add(textOf(tie, 'station'), tie.id)
  return touching
}

export const sub = (a: Enu, b: Enu): Enu => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
