import type { Entry } from '@lodebook/book'
import { errorEllipse } from '@lodebook/reckon/survey'
import type { AdjustedStation, Covariance3, ShotReading, Suspect as NetworkSuspect } from '@lodebook/reckon/survey'
import type { Answer, NotEnough } from '../answer.ts'
import { buildAnswer } from '../build-answer.ts'
import { isLocated, locate } from '../places/place-in-space.ts'
import type { PlaceContext } from '../places/place-in-space.ts'
import type { Placing } from '../places/placed-entries.ts'
import { placesOf, textOf, valueOf } from '../read.ts'
import type { HeadingShape, Leg, StationAt, Suspect, Workings } from '../shapes.ts'
import { figure, length, plural } from '../words.ts'
import { adriftSays, leftOutOf, readingSays, readWhen } from './decisions.ts'
import { pacedOutlines } from './paced-outlines.ts'
import { leavingOf } from './shots-of.ts'
import type { CrewUnits } from '../words.ts'
import type { Survey } from './survey.ts'

const sources = ['Least squares with a priori weights and data snooping: W. Baarda, Netherlands Geodetic Commission, New Series 2(5), 1968 (from memory)']

/** Of readings that fit a trouble as well as the one named, so many are offered. */
const mostOthers = 4

/** Where everything is: the adjusted survey, what hangs on it, and which readings the rest disagrees with. */
export function workingsOf(
  survey: Survey, context: PlaceContext, headings: readonly HeadingShape[], placings: readonly Placing[], workedOut: readonly Entry[], units: CrewUnits,
  renamed: readonly string[] = [],
): Workings | NotEnough {
  if (survey.stations.size === 0) {
    return {
      notEnough: true, sentence: 'Nothing has been surveyed yet, so nothing can be put on a map.',
      wanted: [{ kind: 'shot', why: 'the first shot starts the map' }, { kind: 'tie', why: 'a GPS fix or grid coordinates at one station put it on the ground' }], cautions: [],
    }
  }
  const closure = closureAnswer(survey), besides = besideOf(survey)
  const surveyed = lengthAnswer(survey, units)
  const doubt = doubtAnswer(survey, units)
  const placed = placings.flatMap(p => p.placed)
  const notPlaced = placings.flatMap(p => p.notPlaced)
  const suspects = survey.result.suspects.flatMap(suspect => nameSuspect(suspect, survey))
  const loose = survey.result.parts.filter(part => !part.located && part.stations.some(name => survey.adrift.has(name)))
  return {
    sentence: [
      `${plural(survey.stations.size, 'station')} placed along ${length(surveyed.value, units)} of survey, the least known of them good to ±${length(doubt.value, units, 2)} (95 %).`,
      suspects.length > 0 ? `${plural(suspects.length, 'reading')} disagree${suspects.length === 1 ? 's' : ''} with the rest.` : '',
      notPlaced.length > 0 ? `${plural(notPlaced.length, 'entry', 'entries')} not placed yet.` : '',
    ].filter(Boolean).join(' '),
    stations: [...survey.stations].map(([name, station]) => stationAt(name, station, survey, besides.get(name), units)),
    legs: legsOf(survey), headings, paced: pacedOutlines(survey), placed, notPlaced, suspects, leftOut: leftOutOf(survey),
    adrift: loose.map(part => ({ stations: part.stations, sentence: adriftSays(part.stations) })),
    datum: survey.datum,
    workedOut: workedOut.map(entry => ({
      entry: entry.id, name: textOf(entry, 'name') ?? '',
      corners: placesOf(entry, 'corners').flatMap((place) => { const found = locate(place, context); return isLocated(found) ? [found.point] : [] }),
    })),
    norths: {
      trueNorth: -survey.grid.rotation || 0, magneticNorth: survey.north.declination.value - survey.grid.rotation, answer: survey.north.declination,
    },
    figures: [surveyed, closure, doubt, survey.north.declination],
    cautions: [
      ...(survey.tied ? [] : ['No station is tied to GPS or grid coordinates: the map has its own origin and may be turned.']),
      ...(loose.length > 0 ? [`${plural(loose.length, 'part')} of the survey ${loose.length === 1 ? 'hangs' : 'hang'} on no tie and ${loose.length === 1 ? 'is' : 'are'} not drawn: ${loose.map(p => p.stations.slice(0, 3).join(', ')).join('; ')}.`] : []),
      ...renamed, ...survey.cautions, ...survey.result.cautions.map(asSentence), ...survey.north.declination.cautions,
    ],
  }
}

type Beside = NonNullable<StationAt['beside']>

/** For each station its doubt beside the first tied one. */
const besideOf = (survey: Survey): ReadonlyMap<string, Beside> => new Map(survey.result.pairs.flatMap((pair): [string, Beside][] =>
  pair ? [[pair.b, { from: pair.a, covariance: pair.relative, ellipse: errorEllipse(pair.relative, 0.95) }]] : []))

function stationAt(name: string, station: AdjustedStation, survey: Survey, beside: Beside | undefined, units: CrewUnits): StationAt {
  const ellipse = errorEllipse(station.covariance, 0.95)
  const from = survey.touching.get(name) ?? []
  const [e, n, u] = station.point
  return {
    name, point: station.point, covariance: station.covariance, ellipse, part: station.part, tied: survey.tied, ...beside === undefined ? {} : { beside },
    rough: survey.roughStations.has(name),
    answer: buildAnswer({
      id: `workings.station.${name}`, value: station.point, unit: 'm',
      sentence: `Station ${name} is at ${length(e, units, 4)} east, ${length(n, units, 4)} north, ${length(u, units, 5)} up${survey.datum === '' ? '' : ` (${survey.datum})`}, in ${survey.grid.sentence}; 95 % ellipse ${length(ellipse.major, units, 2)} by ${length(ellipse.minor, units, 2)} on the ground${beside ? `, ${length(beside.ellipse.major, units, 2)} by ${length(beside.ellipse.minor, units, 2)} beside ${beside.from}` : ''}.`,
      method: {
        name: 'least squares over the whole survey', page: 'survey',
        working: [`one standard deviation: ${station.sigma.map(s => s.toFixed(3)).join(', ')} m (east, north, up)`, `95 % ellipse: ${ellipse.major.toFixed(3)} by ${ellipse.minor.toFixed(3)} m, long axis at ${ellipse.azimuth.toFixed(0)}°`],
      },
      sources, from: [...from, ...survey.grid.from], parts: [survey.north.declination], assumed: survey.assumed,
    }),
  }
}

function legsOf(survey: Survey): readonly Leg[] {
  return survey.shots.flatMap((shot): Leg[] => {
    const from = textOf(shot, 'from')!, to = textOf(shot, 'to')!
    const a = survey.stations.get(from), b = survey.stations.get(to)
    return a && b ? [{ entry: shot.id, from, to, a: a.point, b: b.point, leftOut: textOf(shot, 'leaveOut') ?? 'nothing' }] : []
  })
}

const entryOf = ({ shot, tie }: { readonly shot?: number, readonly tie?: number }, survey: Survey): Entry | undefined =>
  shot !== undefined ? survey.shots[shot] ?? survey.paced[shot - survey.shots.length] : tie !== undefined ? survey.ties[tie] : undefined

function nameSuspect(suspect: NetworkSuspect, survey: Survey): Suspect[] {
  const entry = entryOf(suspect, survey)
  if (!entry) return []
  const leave = entry.kind === 'tie' ? 'whole tie' : entry.kind === 'shot' ? leavingOf[suspect.reading as ShotReading] : undefined
  return [{
    entry: entry.id, sentence: `${suspect.says}${readWhen(entry)}`, times: Math.abs(suspect.w), reading: suspect.reading, ...leave === undefined ? {} : { leave },
    others: suspect.alternatives.flatMap((other) => {
      const one = entryOf(other, survey)
      return one && (one.id !== entry.id || other.reading !== suspect.reading) && one.kind !== 'paced'
        ? [{ entry: one.id, reading: other.reading, leave: one.kind === 'tie' ? 'whole tie' : leavingOf[other.reading as ShotReading], says: readingSays(one, other.reading) }] : []
    }).slice(0, mostOthers),
  }]
}

function lengthAnswer(survey: Survey, units: CrewUnits): Answer {
  const shots = survey.shots.filter(shot => survey.stations.has(textOf(shot, 'from')!) && survey.stations.has(textOf(shot, 'to')!))
  const value = shots.reduce((sum, shot) => sum + (valueOf(shot, 'distance') ?? 0), 0)
  return buildAnswer({
    id: 'workings.length', sentence: `${length(value, units)} taped in ${plural(shots.length, 'shot')}.`, value, unit: 'm',
    method: { name: 'sum of slope distances', page: 'survey' }, from: shots.map(shot => shot.id),
  })
}

/** Fewer spare readings than this say nothing of how good the rest are. Common practice, no source. */
const fewestSpare = 5

function closureAnswer(survey: Survey): Answer {
  const { redundancy, varianceFactor, p } = survey.result.test
  const value = varianceFactor ?? 0
  const says = varianceFactor === null || redundancy < fewestSpare ? `Too little checks the survey to say (${plural(redundancy, 'spare reading')}): without loops, backsights or a second tie its errors are only what the instruments should do.`
    : p !== null && p < 0.05 ? `The readings disagree more than the instruments should: ${figure(Math.sqrt(value), 2)} times as much as stated.`
      : `The readings agree about as well as the instruments should (${figure(Math.sqrt(value), 2)} times the stated error).`
  return buildAnswer({
    id: 'workings.closure', sentence: says, value: Math.sqrt(value), unit: 'times the stated error',
    method: { name: 'global test of the adjustment', page: 'survey', working: [`sum of squares over ${redundancy} spare readings${p === null ? '' : `; chance of as much by luck ${figure(p, 2)}`}`] },
    sources, from: survey.shots.map(shot => shot.id), assumed: survey.assumed,
  })
}

/** The station least well known beside the first tied one, and how well the whole map lies on the ground. */
function doubtAnswer(survey: Survey, units: CrewUnits): Answer {
  const wide = (name: string, covariance: Covariance3) => ({ name, major: errorEllipse(covariance, 0.95).major })
  const onGround = [...survey.stations].map(([name, station]) => wide(name, station.covariance)).sort((a, b) => b.major - a.major)[0]!
  const beside = survey.result.pairs.flatMap(pair => pair ? [{ ...wide(pair.b, pair.relative), from: pair.a }] : []).sort((a, b) => b.major - a.major)[0]
  const worst = beside ?? onGround
  return buildAnswer({
    id: 'workings.doubt', value: worst.major, unit: 'm',
    sentence: beside ? `${beside.name} is the least well known: within ${length(beside.major, units, 2)} of its place beside ${beside.from} (95 %). The whole map lies within ${length(onGround.major, units, 2)} on the ground.`
      : `${onGround.name} is the least well known: within ${length(onGround.major, units, 2)} (95 %).`,
    method: { name: 'largest 95 % ellipse', page: 'survey' }, sources, from: survey.touching.get(worst.name) ?? [], assumed: survey.assumed,
  })
}

const asSentence = (caution: string): string => `${caution.charAt(0).toUpperCase()}${caution.slice(1)}${/[.!]$/.test(caution) ? '' : '.'}`
