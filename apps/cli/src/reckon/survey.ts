import { declination, ellipsoids, errorEllipse, traverse, utm, utmInverse } from '@lodebook/reckon/survey'
import { azimuthFrom } from '@lodebook/reckon/units'
import { z } from 'zod'
import { reckoning } from './define.ts'
import type { Reckoning } from './define.ts'
import { network } from './network.ts'

const azimuth = z.union([z.number().min(0).max(360), z.string()], 'degrees from 0 to 360, or text as in a field book such as "S68-05-35W"')
const known = z.strictObject({ station: z.string().min(1), east: z.number(), north: z.number(), up: z.number().default(0) })
const leg = z.strictObject({
  from: z.string().min(1), to: z.string().min(1), length: z.number().positive(), azimuth, inclination: z.number().min(-90).max(90).optional(),
})
const ellipsoid = z.enum(Object.keys(ellipsoids) as [keyof typeof ellipsoids, ...(keyof typeof ellipsoids)[]]).optional()

/** Traverses, networks, magnetic north and map grids. */
export const survey: readonly Reckoning[] = [
  reckoning('traverse', 'Close a traverse by the compass rule or by least squares',
    z.strictObject({
      legs: z.array(leg).min(1),
      start: known, end: known.optional(), rule: z.enum(['compass', 'least-squares']),
      sigma: z.strictObject({ length: z.number().positive(), angle_arcsec: z.number().positive() }).optional(),
    }),
    {
      legs: [
        { from: 'A', to: 'B', length: 472.68, azimuth: 'S68-05-35W' }, { from: 'B', to: 'C', length: 216.13, azimuth: 'N19-46-00W' },
        { from: 'C', to: 'D', length: 276.52, azimuth: 'N45-55-20E' }, { from: 'D', to: 'A', length: 382.24, azimuth: 'S54-59-15E' },
      ],
      start: { station: 'A', east: 2000, north: 500, up: 0 }, rule: 'compass',
    },
    ({ legs, start, end, rule, sigma }) => {
      const result = traverse({
        legs: legs.map((own, i) => ({ ...own, azimuth: numeric(own.azimuth, `legs[${i}].azimuth`) })),
        start: placed(start), end: end && placed(end), rule, sigma: sigma && { length: sigma.length, angle: sigma.angle_arcsec / 3600 },
      })
      const [east, north, up] = result.misclosure
      const points = [...result.stations].map(([name, [e, n, u]]) => [name, { east: e, north: n, up: u }] as const)
      return {
        misclosure: { east, north, up, length: result.misclosureLength, ratio: result.ratio },
        stations: Object.fromEntries(points),
        legs: result.legs,
        ...result.covariance && {
          covariance: Object.fromEntries(result.covariance),
          ellipses_95: Object.fromEntries([...result.covariance].map(([name, covariance]) => [name, errorEllipse(covariance, 0.95)])),
        },
      }
    }),
  network,
  reckoning('declination', 'Magnetic declination at a place and date, with its doubt',
    z.strictObject({
      latitude: z.number().min(-90).max(90), longitude: z.number().min(-180).max(360), height_m: z.number().default(0),
      date: z.union([z.iso.date(), z.number()], 'a date as YYYY-MM-DD, or a year such as 2027.5'),
    }),
    { latitude: 40, longitude: -110, height_m: 1900, date: '2026-07-01' },
    ({ latitude, longitude, height_m, date }) => {
      const { change, extrapolated, ...field } = declination({ latitude, longitude, height_m, date })
      return { ...field, change_deg_per_year: change, years_outside_model: extrapolated }
    }),
  reckoning('utm', 'Easting and northing of a place, with convergence and scale',
    z.strictObject({ latitude: z.number().min(-80).max(84), longitude: z.number().min(-180).max(360), zone: z.int().min(1).max(60).optional(), ellipsoid }),
    { latitude: 40.5, longitude: -73.5, ellipsoid: 'Clarke 1866' },
    input => utm(input)),
  reckoning('utm-inverse', 'The place of an easting and northing',
    z.strictObject({ zone: z.int().min(1).max(60), hemisphere: z.enum(['N', 'S', 'north', 'south']), easting: z.number(), northing: z.number(), ellipsoid }),
    { zone: 18, hemisphere: 'N', easting: 627106.467, northing: 4484124.434, ellipsoid: 'Clarke 1866' },
    input => utmInverse(input)),
]

const numeric = (value: number | string, field: string): number => typeof value === 'number' ? value : azimuthFrom(value, field)

const placed = ({ station, east, north, up }: z.output<typeof known>) => ({ station, point: [east, north, up] as const })
