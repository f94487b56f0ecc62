import type { Entry } from '@lodebook/book'
import type { Enu } from '@lodebook/reckon'
import { adjustNetwork } from '@lodebook/reckon/survey'
import type { AdjustedStation, NetworkResult, NetworkShot, ShotReading, Tie } from '@lodebook/reckon/survey'
import type { Assume } from '../assumptions.ts'
import type { Assumed } from '../answer.ts'
import { placeOf, textOf, valueOf } from '../read.ts'
import { gridOf } from './grid.ts'
import type { Grid } from './grid.ts'
import { latestDate, northOf } from './north.ts'
import type { North } from './north.ts'

/** The survey as adjusted: what every place in the book hangs on. */
export interface Survey {
  readonly grid: Grid
  readonly north: North
  readonly result: NetworkResult
  /** Stations with a place: in the grid, or in a grid of their own when nothing ties them. */
  readonly stations: ReadonlyMap<string, AdjustedStation>
  readonly tied: boolean
  readonly shots: readonly Entry[]
  readonly ties: readonly Entry[]
  /** For each station the shots and ties that touch it. */
  readonly touching: ReadonlyMap<string, readonly string[]>
  readonly assumed: readonly Assumed[]
}

/** Beyond so many stations their doubt beside the first is not worked out. */
const mostPairs = 1000

/** The declination's own error is one for all shots: it turns the whole map and is no check of any shot. */
const everyAzimuth = 'declination'

const leaveOutOf = (shot: Entry): readonly ShotReading[] | 'shot' | undefined => {
  switch (textOf(shot, 'leaveOut')) {
    case 'whole shot': return 'shot'
    case 'azimuth': return ['azimuth']
    case 'backsight': return ['backAzimuth']
    default: return undefined
  }
}

/** Adjusts all shots and ties of the book together. Every reading stays in; what the crew left out is compared but carries no weight. */
export function surveyOf(shots: readonly Entry[], ties: readonly Entry[], instruments: readonly Entry[], mine: Entry | undefined, assume: Assume): Survey {
  const grid = gridOf(mine, ties)
  const north = northOf(mine, grid, latestDate(shots))
  const byName = new Map(instruments.map(entry => [textOf(entry, 'name'), entry]))
  const assumed = (['compass precision', 'clinometer precision', 'tape precision'] as const).map(assume)

  const networkShots = shots.map((shot): NetworkShot => {
    const compass = byName.get(textOf(shot, 'compass'))
    const tape = byName.get(textOf(shot, 'tape'))
    const correction = (compass && valueOf(compass, 'correction')) ?? 0
    const date = textOf(shot, 'taken')
    const toGrid = (field: string) => {
      const read = valueOf(shot, field)
      return read === undefined ? undefined : north.toGrid(read + correction, textOf(shot, 'north') ?? 'magnetic', date)
    }
    const angle = compass && valueOf(compass, 'anglePrecision')
    const length = tape && valueOf(tape, 'lengthPrecision')
    return {
      from: textOf(shot, 'from')!, to: textOf(shot, 'to')!, distance: valueOf(shot, 'distance')!,
      azimuth: toGrid('azimuth'), backAzimuth: toGrid('backAzimuth'),
      inclination: valueOf(shot, 'inclination'), backInclination: valueOf(shot, 'backInclination'),
      precision: { ...(angle === undefined ? {} : { azimuth: angle }), ...(length === undefined ? {} : { distance: length }) },
      instruments: everyAzimuth, leaveOut: leaveOutOf(shot),
    }
  })
  const networkTies = ties.flatMap((tie): Tie[] => {
    const place = placeOf(tie)
    const accuracy = valueOf(tie, 'accuracy')
    if (place?.by === 'grid') {
      const sigma = accuracy ?? place.accuracy ?? 0.05
      return [{ station: textOf(tie, 'station')!, point: [place.east, place.north, place.up ?? 0], sigma: [sigma, sigma, place.up === undefined ? Infinity : sigma] }]
    }
    if (place?.by === 'gps') {
      const point = grid.fromGps(place)
      const sigma = accuracy ?? place.accuracy ?? 5
      return point ? [{ station: textOf(tie, 'station')!, point, sigma: [sigma, sigma, place.elevation === undefined ? Infinity : 2 * sigma] }] : []
    }
    return []
  })
  const [compass, clinometer, tape] = assumed
  // How well a station is known beside the first tied one is what a crew underground needs; on the ground the GPS fix is most of the doubt.
  const anchor = networkTies[0]?.station
  const names = anchor === undefined ? [] : [...new Set(networkShots.flatMap(shot => [shot.from, shot.to]))].filter(name => name !== anchor)
  const pairs = anchor !== undefined && names.length <= mostPairs ? names.map(name => [anchor, name] as const) : []
  const result = adjustNetwork({
    shots: networkShots, ties: networkTies,
    options: {
      precision: { azimuth: compass!.value, inclination: clinometer!.value, distance: tape!.value }, pairs,
      instruments: { [everyAzimuth]: { azimuth: north.sigma } },
    },
  })
  const tied = result.stations.size > 0
  return { grid, north, result, stations: tied ? result.stations : firstPart(result), tied, shots, ties, touching: touchingOf(shots, ties), assumed }
}

/** With no tie at all the largest part has a grid of its own, from its anchor. */
function firstPart(result: NetworkResult): ReadonlyMap<string, AdjustedStation> {
  const largest = result.parts.map((part, index) => ({ index, size: part.stations.length })).sort((a, b) => b.size - a.size)[0]
  return new Map([...result.floating].filter(([, station]) => station.part === largest?.index))
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
  for (const tie of ties) add(textOf(tie, 'station'), tie.id)
  return touching
}

export const sub = (a: Enu, b: Enu): Enu => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
