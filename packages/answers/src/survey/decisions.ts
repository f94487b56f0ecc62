import type { Entry } from '@lodebook/book'
import { entryTitle } from '../entry-title.ts'
import { textOf, wordsOf } from '../read.ts'
import type { LeftOut } from '../shapes.ts'
import { figure, plural } from '../words.ts'
import type { Survey } from './survey.ts'

const months = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December']

/** '3 May 2026' from 2026-05-03. */
const dayText = (date: string): string => `${Number(date.slice(8, 10))} ${months[Number(date.slice(5, 7)) - 1] ?? ''} ${date.slice(0, 4)}`

/** ' (read on 3 May 2026 by Ada and Bo)', or nothing when neither is written. */
export function readWhen(entry: Entry): string {
  const taken = textOf(entry, 'taken'), people = wordsOf(entry, 'surveyors')
  const when = [taken === undefined ? '' : `on ${dayText(taken)}`, people.length === 0 ? '' : `by ${people.join(' and ')}`].filter(Boolean).join(' ')
  return when === '' ? '' : ` (read ${when})`
}

const called: Readonly<Record<string, string>> = {
  distance: 'the distance', azimuth: 'the foresight azimuth', backAzimuth: 'the backsight azimuth', inclination: 'the foresight inclination', backInclination: 'the backsight inclination',
  east: 'the easting', north: 'the northing', up: 'the elevation',
}

/** 'the backsight azimuth of C4 to C5, read on 6 May 2026'. */
export const readingSays = (entry: Entry, reading: string): string => `${called[reading] ?? reading} of ${entry.kind === 'tie' ? `the tie at ${textOf(entry, 'station')!}` : `${textOf(entry, 'from')!} to ${textOf(entry, 'to')!}`}${readWhen(entry)}`

/** What the crew has left out of the adjustment, each with its reason and how far it is from what the rest says. */
export function leftOutOf(survey: Survey): readonly LeftOut[] {
  const apart = new Map<string, string[]>()
  for (const { shot, tie, reading, residual, sigma, leftOut } of survey.result.readings) {
    const entry = !leftOut ? undefined : shot !== undefined ? survey.shots[shot] : survey.ties[tie!]
    if (!entry) continue
    const off = reading === 'distance' || tie !== undefined ? `${figure(Math.abs(residual), 2)} m` : `${figure(Math.abs(residual), 2)}°`
    apart.set(entry.id, [...apart.get(entry.id) ?? [], `${called[reading] ?? reading} is ${off} from what the rest says (${figure(Math.abs(residual) / sigma, 2)} times its doubt)`])
  }
  return [...survey.shots, ...survey.ties].flatMap((entry): LeftOut[] => {
    const what = textOf(entry, 'leaveOut') ?? 'nothing'
    if (what === 'nothing') return []
    const why = textOf(entry, 'leaveOutWhy')
    return [{
      entry: entry.id, what,
      sentence: [`${entryTitle(entry)}: ${what} left out${why === undefined ? '' : `, because ${why}`}.`, ...(apart.get(entry.id) ?? []).map(off => `${off.charAt(0).toUpperCase()}${off.slice(1)}.`)].join(' '),
    }]
  })
}

/** Stations without a place, and what would join them. */
export const adriftSays = (stations: readonly string[]): string =>
  `${plural(stations.length, 'station')} ${stations.length <= 6 ? stations.join(', ') : `${stations.slice(0, 5).join(', ')} and ${stations.length - 5} more`} ${stations.length === 1 ? 'hangs' : 'hang'} together, but on nothing else: a shot from a placed station, or a tie at one of them, would place ${stations.length === 1 ? 'it' : 'all'}.`
