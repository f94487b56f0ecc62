import type { Entry } from '@lodebook/book'
import { declination } from '@lodebook/reckon/survey'
import type { Answer } from '../answer.ts'
import { buildAnswer } from '../build-answer.ts'
import { numberOf, textOf, valueOf } from '../read.ts'
import { figure } from '../words.ts'
import type { Grid } from './grid.ts'

/** What to add to an azimuth so that it is from grid north. */
export interface North {
  /** @param date YYYY-MM-DD of the reading, when known */
  readonly toGrid: (azimuth: number, from: string | undefined, date: string | undefined) => number
  readonly declination: Answer
  /** One standard deviation of the declination, which turns every azimuth alike; 0 when the crew wrote it. */
  readonly sigma: number
  readonly known: boolean
}

const east = (degrees: number) => `${figure(Math.abs(degrees), 3)}° ${degrees < 0 ? 'west' : 'east'}`

/** Magnetic declination from the mine's own figure, or by the World Magnetic Model from its place and each reading's date. */
export function northOf(mine: Entry | undefined, grid: Grid, lastDate: string | undefined): North {
  const given = mine && valueOf(mine, 'declination')
  const latitude = grid.origin?.latitude ?? (mine && numberOf(mine, 'latitude'))
  const longitude = grid.origin?.longitude ?? (mine && numberOf(mine, 'longitude'))
  const height_m = (mine && valueOf(mine, 'elevation')) ?? 0
  const turn = (azimuth: number, from: string | undefined, magnetic: number) =>
    wrap(azimuth + (from === 'grid' ? 0 : (from === 'true' ? 0 : magnetic) - grid.rotation))

  if (given !== undefined) {
    return {
      known: true, sigma: 0, toGrid: (azimuth, from) => turn(azimuth, from, given),
      declination: buildAnswer({
        id: 'workings.declination', sentence: `Magnetic north is ${east(given)} of true north, as the crew wrote it.`, value: given, unit: '°',
        method: { name: 'as written', page: 'survey' }, from: [mine!.id],
      }),
    }
  }
  if (latitude === undefined || longitude === undefined || lastDate === undefined) {
    const lack = latitude === undefined || longitude === undefined ? 'no latitude and longitude of the mine' : 'no date on any shot'
    return {
      known: false, sigma: 0, toGrid: (azimuth, from) => turn(azimuth, from, 0),
      declination: buildAnswer({
        id: 'workings.declination', sentence: `Azimuths are taken from magnetic north as read: there is ${lack} to work the declination out from.`, value: 0, unit: '°',
        method: { name: 'none', page: 'declination' }, from: mine ? [mine.id] : [],
        cautions: [`With ${lack}, and no declination written for the mine, the map may be turned by the whole declination, easily 10° or more.`],
      }),
    }
  }
  const cache = new Map<string, number>()
  const on = (date: string) => {
    let value = cache.get(date)
    if (value === undefined) { value = declination({ latitude, longitude, height_m, date }).declination; cache.set(date, value) }
    return value
  }
  const last = declination({ latitude, longitude, height_m, date: lastDate })
  return {
    known: true, sigma: last.sigma,
    toGrid: (azimuth, from, date) => turn(azimuth, from, on(date ?? lastDate)),
    declination: buildAnswer({
      id: 'workings.declination', sentence: `Magnetic north is ${east(last.declination)} of true north on ${lastDate}.`, value: last.declination, unit: '°',
      range: { low: last.declination - 1.2816 * last.sigma, high: last.declination + 1.2816 * last.sigma, confidence: 0.8, because: ['the model\'s own error; rock and steel nearby come on top'] },
      method: { name: last.model, page: 'declination', working: [`latitude ${latitude}, longitude ${longitude}, ${lastDate}`] },
      sources: ['World Magnetic Model 2025, NOAA NCEI and BGS'], from: [...(mine ? [mine.id] : []), ...grid.from],
    }),
  }
}

const wrap = (degrees: number) => ((degrees % 360) + 360) % 360

/** The latest date among entries, as text. */
export function latestDate(entries: readonly Entry[]): string | undefined {
  return entries.map(entry => textOf(entry, 'taken')).filter(date => date !== undefined).sort().at(-1)
}
