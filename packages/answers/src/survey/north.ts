import type { Entry } from '@lodebook/book'
import type { Declination } from '@lodebook/reckon/survey'
import { declination } from '@lodebook/reckon/survey'
import type { Answer } from '../answer.ts'
import { buildAnswer } from '../build-answer.ts'
import { numberOf, textOf, valueOf } from '../read.ts'
import { figure } from '../words.ts'
import type { Grid } from './grid.ts'

/** What to add to an azimuth so that it is from grid north. */
export interface North {
  /**
   * @param from  the north it was read from; magnetic when not said
   * @param date  YYYY-MM-DD of the reading, when known
   * @param own  the declination that the reading's own survey used, when that is known
   */
  readonly toGrid: (azimuth: number, from: string | undefined, date: string | undefined, own?: number) => number
  readonly declination: Answer
  /** One standard deviation of the declination on a day, which turns every azimuth of that day alike; 0 when the crew wrote it. */
  readonly sigmaOn: (date: string | undefined) => number
  readonly known: boolean
}

const east = (degrees: number) => `${figure(Math.abs(degrees), 3)}° ${degrees < 0 ? 'west' : 'east'}`
/** Readings so many years apart need a declination each. */
const longApart = 5

/**
 * Magnetic declination from the mine's own figure, or by the World Magnetic Model from its place and each reading's date.
 * @param dates  of the readings, in any order
 */
export function northOf(mine: Entry | undefined, grid: Grid, dates: readonly string[]): North {
  const given = mine && valueOf(mine, 'declination')
  const latitude = grid.origin?.latitude ?? (mine && numberOf(mine, 'latitude'))
  const longitude = grid.origin?.longitude ?? (mine && numberOf(mine, 'longitude'))
  const height_m = (mine && valueOf(mine, 'elevation')) ?? 0
  const sorted = [...new Set(dates)].sort(), lastDate = sorted.at(-1), firstDate = sorted[0]
  const turn = (azimuth: number, from: string | undefined, magnetic: number) =>
    wrap(azimuth + (from === 'grid' ? 0 : (from === 'true' ? 0 : magnetic) - grid.rotation))

  if (given !== undefined) {
    const apart = firstDate === undefined ? 0 : yearOf(lastDate!) - yearOf(firstDate)
    return {
      known: true, sigmaOn: () => 0, toGrid: (azimuth, from, _, own) => turn(azimuth, from, own ?? given),
      declination: buildAnswer({
        id: 'workings.declination', sentence: `Magnetic north is ${east(given)} of true north, as the crew wrote it.`, value: given, unit: '°',
        method: { name: 'as written', page: 'survey' }, from: [mine!.id],
        cautions: apart > longApart ? [`One declination is written for readings from ${yearOf(firstDate!)} to ${yearOf(lastDate!)}, while the needle moves by a degree or more in such a time: write under Survey which declination each used.`] : [],
      }),
    }
  }
  if (latitude === undefined || longitude === undefined || lastDate === undefined) {
    const lack = latitude === undefined || longitude === undefined ? 'no latitude and longitude of the mine' : 'no date on any shot'
    return {
      known: false, sigmaOn: () => 0, toGrid: (azimuth, from, _, own) => turn(azimuth, from, own ?? 0),
      declination: buildAnswer({
        id: 'workings.declination', sentence: `Azimuths are taken from magnetic north as read: there is ${lack} to work the declination out from.`, value: 0, unit: '°',
        method: { name: 'none', page: 'declination' }, from: mine ? [mine.id] : [],
        cautions: [`With ${lack}, and no declination written for the mine, the map may be turned by the whole declination, easily 10° or more.`],
      }),
    }
  }
  const cache = new Map<string, Declination>()
  const on = (date: string) => {
    let value = cache.get(date)
    if (!value) { value = declination({ latitude, longitude, height_m, date }); cache.set(date, value) }
    return value
  }
  const last = on(lastDate), outside = sorted.filter(date => on(date).extrapolated > 0)
  return {
    known: true, sigmaOn: date => on(date ?? lastDate).sigma,
    toGrid: (azimuth, from, date, own) => turn(azimuth, from, own ?? on(date ?? lastDate).declination),
    declination: buildAnswer({
      id: 'workings.declination', sentence: `Magnetic north is ${east(last.declination)} of true north on ${lastDate}.`, value: last.declination, unit: '°',
      range: { low: last.declination - 1.2816 * last.sigma, high: last.declination + 1.2816 * last.sigma, confidence: 0.8, because: ['the model\'s own error; rock and steel nearby come on top'] },
      method: { name: last.model, page: 'declination', working: [`latitude ${latitude}, longitude ${longitude}, ${lastDate}`] },
      sources: ['World Magnetic Model 2025, NOAA NCEI and BGS'], from: [...(mine ? [mine.id] : []), ...grid.from],
      cautions: outsideDates(outside, on),
    }),
  }
}

/** What to know when readings lie before or after the years that the model is meant for. */
function outsideDates(outside: readonly string[], on: (date: string) => Declination): readonly string[] {
  const worst = [...outside].sort((a, b) => on(b).extrapolated - on(a).extrapolated)[0]
  if (worst === undefined) return []
  const { model, extrapolated, sigma } = on(worst)
  return [`Readings of ${worst} lie ${figure(extrapolated, 2)} years outside the dates of ${model}: its yearly change is carried on, and the declination there may be out by ${figure(sigma, 2)}° (one standard deviation). Write the declination that survey used, or sight a line whose azimuth is known.`]
}

const yearOf = (date: string): number => Number(date.slice(0, 4))
const wrap = (degrees: number) => ((degrees % 360) + 360) % 360

/** The dates of entries, as text. */
export const datesOf = (entries: readonly Entry[]): readonly string[] => entries.flatMap(entry => textOf(entry, 'taken') ?? [])
