import type { Degrees } from '../core/index.ts'
import geomagnetism from 'geomagnetism'
import { degrees, finite, InputError } from '../core/index.ts'
import { signedAngle } from './angles.ts'

export interface Declination {
  /** Magnetic north from true north, east positive. */
  readonly declination: Degrees
  /** Dip of the field, down positive. */
  readonly inclination: Degrees
  readonly total_nT: number
  readonly horizontal_nT: number
  readonly model: string
  /** One standard deviation of the declination, degrees, by the model's own error formula; rock and steel nearby come on top. */
  readonly sigma: Degrees
  /** Degrees a year, over the year about the date. */
  readonly change: Degrees
  /** Years beyond the model's dates; 0 within them. */
  readonly extrapolated: number
  readonly cautions: readonly string[]
}

/** A five-year model: the dates it is meant for, and the terms of its error formula. */
interface FieldModel {
  readonly name: string
  readonly from: number
  readonly to: number
  readonly dates: readonly [string, string]
  readonly base: number
  readonly horizontal: number
}

/**
 * Newest first. `dates` are two days on which the library uses that model; the model is linear in time, so two days give all days, also those
 * on which the library refuses to answer.
 */
const models: readonly FieldModel[] = [
  { name: 'WMM2025', from: 2025, to: 2030, dates: ['2025-01-01', '2029-01-01'], base: 0.26, horizontal: 5417 },
  { name: 'WMM2020', from: 2020, to: 2025, dates: ['2020-01-01', '2024-01-01'], base: 0.26, horizontal: 5625 },
  { name: 'WMM2015', from: 2015, to: 2020, dates: ['2018-10-01', '2019-10-01'], base: 0.23, horizontal: 5430 },
]

/** Below these horizontal strengths a compass is unreliable, or of no use (M: WMM technical report, caution and blackout zones). */
const weakField = 6000
const noField = 2000

export interface PlaceAndDate {
  readonly latitude: Degrees
  readonly longitude: Degrees
  readonly height_m?: number | undefined
  readonly date: string | number
}

/**
 * Magnetic declination by the World Magnetic Model at a place and date. It never refuses a date: outside the models' dates the nearest model is
 * carried on by its own yearly change, `extrapolated` says how far, sigma grows by the whole change carried over, and a caution says so.
 * @param latitude  [-90, 90], WGS84; longitude [-180, 360], east positive
 * @param height_m  above the ellipsoid; above the sea will do
 * @param date  YYYY-MM-DD, or a year with a fraction such as 2027.5
 * @throws InputError for a place or date that is none
 * Accuracy: the model's published test values to their printed 0.01°.
 * Source: NOAA NCEI and British Geological Survey, World Magnetic Model 2025; sigma_D = sqrt(0.26² + (5417/H)²) degrees with H in nT (M:
 * technical report), for the older models 0.26 and 5625 (2020), 0.23 and 5430 (2015) (M).
 */
export function declination({ latitude, longitude, height_m = 0, date }: PlaceAndDate): Declination {
  if (!(latitude >= -90 && latitude <= 90)) throw new InputError('latitude', latitude, 'degrees from -90 to 90')
  if (!(longitude >= -180 && longitude <= 360)) throw new InputError('longitude', longitude, 'degrees from -180 to 180, east positive')
  finite(height_m, 'height_m', 'metres')
  const year = typeof date === 'number' ? finite(date, 'date', 'a year') : yearOf(date)
  const model = models.find(m => year >= m.from) ?? models.at(-1)!
  const at = fieldOf(model, latitude, longitude, height_m)
  const field = at(year)
  const nearest = Math.min(Math.max(year, model.from), model.to)
  const extrapolated = Math.abs(year - nearest)
  const carried = extrapolated === 0 ? 0 : turn(at(nearest).declination, field.declination)
  const own = Math.hypot(model.base, model.horizontal / field.horizontal_nT)
  return {
    ...field, model: model.name, sigma: Math.min(180, Math.hypot(own, carried)),
    change: turn(at(year - 0.5).declination, at(year + 0.5).declination), extrapolated,
    cautions: [
      ...extrapolated === 0 ? [] : [`${model.name} is meant for ${model.from} to ${model.to}: its yearly change is carried on for ${extrapolated.toFixed(1)} years, so check it against a newer model, or a survey mark whose azimuth is known`],
      ...field.horizontal_nT < noField ? ['so near the magnetic pole that a compass is of no use'] : field.horizontal_nT < weakField ? ['the field is nearly upright here: a compass is unreliable'] : [],
    ],
  }
}

/** The field at a place as a function of the year. */
function fieldOf(model: FieldModel, latitude: Degrees, longitude: Degrees, height: number) {
  const [start, end] = model.dates.map((day) => {
    const { x, y, z } = geomagnetism.model(new Date(`${day}T00:00:00Z`)).point([latitude, longitude, height / 1000])
    return { year: libraryYear(day), x, y, z }
  }) as [Vector, Vector]
  return (year: number) => {
    const share = (year - start.year) / (end.year - start.year)
    const [x, y, z] = (['x', 'y', 'z'] as const).map(c => start[c] + share * (end[c] - start[c])) as [number, number, number]
    const horizontal = Math.hypot(x, y)
    const east = degrees(Math.atan2(y, x))
    return { declination: east, inclination: degrees(Math.atan2(z, horizontal)), total_nT: Math.hypot(horizontal, z), horizontal_nT: horizontal }
  }
}

interface Vector { readonly year: number, readonly x: number, readonly y: number, readonly z: number }

const dayLength = 86_400_000

/** The library counts every year as 365 days; the two days a model is read on are turned back the same way. */
function libraryYear(day: string): number {
  const year = Number(day.slice(0, 4))
  return year + (Date.parse(`${day}T00:00:00Z`) - Date.UTC(year, 0)) / (365 * dayLength)
}

/** A date as a year with its fraction. */
function yearOf(date: string): number {
  const time = /^\d{4}-\d{2}-\d{2}$/.test(date) ? Date.parse(`${date}T00:00:00Z`) : Number.NaN
  if (Number.isNaN(time) || new Date(time).toISOString().slice(0, 10) !== date) throw new InputError('date', date, 'a date as YYYY-MM-DD')
  const year = Number(date.slice(0, 4))
  return year + (time - Date.UTC(year, 0)) / (Date.UTC(year + 1, 0) - Date.UTC(year, 0))
}

const turn = (from: Degrees, to: Degrees): Degrees => signedAngle(to - from)
