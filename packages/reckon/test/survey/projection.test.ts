import fc from 'fast-check'
import proj4 from 'proj4'
import { describe, expect, it } from 'vitest'
import { ellipsoids, project, unproject, utm, utmFrame, utmInverse, utmZone } from '../../src/survey/index.ts'
import type { EllipsoidName } from '../../src/survey/index.ts'

describe('published points', () => {
  it('M: Snyder, USGS PP 1395 (1987), UTM example: x 127106.5 from the meridian, y 4484124.4, k 0.9997989 (Clarke 1866)', () => {
    const point = utm({ latitude: 40.5, longitude: -73.5, ellipsoid: 'Clarke 1866' })
    expect(point.zone).toBe(18)
    expect(Math.abs(point.easting - 500000 - 127106.5)).toBeLessThan(0.05)
    expect(Math.abs(point.northing - 4484124.4)).toBeLessThan(0.05)
    expect(Math.abs(point.scale - 0.9997989)).toBeLessThan(5e-8)
    // R: pyproj 3.7.2
    expect(Math.abs(point.easting - 500000 - 127106.467)).toBeLessThan(6e-4)
    expect(Math.abs(point.northing - 4484124.434)).toBeLessThan(6e-4)
    expect(Math.abs(point.scale - 0.99979887)).toBeLessThan(5e-9)
  })
  it('M: IOGP Guidance Note 7-2, British grid: E 577274.99, N 69740.50 (printed values are 0.01 off); R: pyproj 577274.984, 69740.492', () => {
    const frame = { ellipsoid: { a: 6377563.396, f: 1 / 299.3249646 }, meridian: -2, scale: 0.9996012717, falseEasting: 400000, falseNorthing: 0 }
    const origin = project(frame, 49, -2).northing
    const point = project({ ...frame, falseNorthing: -100000 - origin }, 50.5, 0.5)
    expect(Math.abs(point.easting - 577274.984)).toBeLessThan(6e-4)
    expect(Math.abs(point.northing - 69740.492)).toBeLessThan(6e-4)
  })
  const dms = (d: number, m: number, s: number) => d + m / 60 + s / 3600
  it.each([
    [73, 45, 38, 500000.00, 8100702.90],
    [30, 102, 47, 789422.07, 3322624.35],
    [30, 102, 48, 210577.93, 3322624.35],
    [dms(72, 4, 32.110), -dms(113, 54, 43.321), 12, 400000.00, 8000000.01],
    [dms(72, 4, 32.110), -dms(113, 54, 43.321), 11, 606036.97, 8000301.04],
  ])('V inputs, R outputs: grid manual examples on International 1924: %d, %d in zone %i', (latitude, longitude, zone, easting, northing) => {
    const point = utm({ latitude, longitude, zone, ellipsoid: 'International 1924' })
    expect(Math.abs(point.easting - easting)).toBeLessThan(0.0051)
    expect(Math.abs(point.northing - northing)).toBeLessThan(0.0051)
  })
  it('R: convergence ±1.50104° and scale 1.00063354 at 30 N 102 E', () => {
    const [east, west] = [47, 48].map(zone => utm({ latitude: 30, longitude: 102, zone, ellipsoid: 'International 1924' }))
    expect(Math.abs(east!.convergence - 1.50104)).toBeLessThan(5e-6)
    expect(Math.abs(west!.convergence + 1.50104)).toBeLessThan(5e-6)
    expect(Math.abs(east!.scale - 1.00063354)).toBeLessThan(5e-9)
  })
  it('M: WGS84 48.8582 N 2.2945 E is 31N 448251.8, 5411932.7', () => {
    const point = utm({ latitude: 48.8582, longitude: 2.2945 })
    expect([point.zone, point.hemisphere]).toEqual([31, 'N'])
    expect(Math.abs(point.easting - 448251.8)).toBeLessThan(0.05)
    expect(Math.abs(point.northing - 5411932.7)).toBeLessThan(0.05)
  })
})

describe('against proj4', () => {
  const names = Object.keys(ellipsoids) as EllipsoidName[]
  const definition = (name: EllipsoidName, zone: number, south: boolean) => {
    const { a, f } = ellipsoids[name]
    return `+proj=etmerc +lat_0=0 +lon_0=${6 * zone - 183} +k=0.9996 +x_0=500000 +y_0=${south ? 10000000 : 0} +a=${a} +rf=${1 / f} +units=m +no_defs`
  }
  it('easting and northing agree to 0.1 mm within 6° of the meridian, on every ellipsoid', () => {
    const [reach, off] = [fc.double({ min: -80, max: 84, noNaN: true }), fc.double({ min: -6, max: 6, noNaN: true })]
    fc.assert(fc.property(reach, off, fc.integer({ min: 1, max: 60 }), fc.constantFrom(...names), (latitude, away, zone, name) => {
      const longitude = 6 * zone - 183 + away
      const { easting, northing } = utm({ latitude, longitude: longitude < -180 ? longitude + 360 : longitude, zone, ellipsoid: name })
      const geographic = `+proj=longlat +a=${ellipsoids[name].a} +rf=${1 / ellipsoids[name].f} +no_defs`
      const [x, y] = proj4(geographic, definition(name, zone, latitude < 0), [longitude, latitude])
      expect(Math.abs(easting - x)).toBeLessThan(1e-4)
      expect(Math.abs(northing - y)).toBeLessThan(1e-4)
    }), { seed: 11, numRuns: 200 })
  })
})

describe('properties', () => {
  const latitude = fc.double({ min: -80, max: 84, noNaN: true })
  const longitude = fc.double({ min: -180, max: 179.999, noNaN: true })
  it('there and back is within a micrometre', () => {
    fc.assert(fc.property(latitude, longitude, fc.constantFrom('WGS84', 'Clarke 1866', 'International 1924'), (lat, lon, ellipsoid) => {
      const back = utmInverse({ ...utm({ latitude: lat, longitude: lon, ellipsoid }), ellipsoid })
      expect(Math.abs(back.latitude - lat)).toBeLessThan(1e-11)
      expect(Math.abs(((back.longitude - lon + 540) % 360) - 180) * Math.cos(lat * Math.PI / 180)).toBeLessThan(1e-11)
    }), { seed: 12, numRuns: 300 })
  })
  it('scale and convergence are those of the projection itself (differences over a metre along the meridian)', () => {
    fc.assert(fc.property(fc.double({ min: -79, max: 83, noNaN: true }), fc.double({ min: -3, max: 3, noNaN: true }), (lat, off) => {
      const frame = utmFrame(33, 'N', 'WGS84')
      const { a, f } = frame.ellipsoid
      const e2 = f * (2 - f)
      const step = 1e-5
      const [south, middle, north] = [-step, 0, step].map(d => project(frame, lat + d, 15 + off))
      const sin = Math.sin(lat * Math.PI / 180)
      const meridian = a * (1 - e2) / (1 - e2 * sin * sin) ** 1.5 * 2 * step * Math.PI / 180
      const [dE, dN] = [north!.easting - south!.easting, north!.northing - south!.northing]
      expect(Math.abs(Math.hypot(dE, dN) / meridian - middle!.scale)).toBeLessThan(2e-8)
      expect(Math.abs(Math.atan2(-dE, dN) * 180 / Math.PI - middle!.convergence)).toBeLessThan(1e-6)
    }), { seed: 13, numRuns: 200 })
  })
  it('is exact nanometres far off the meridian too, by the inverse', () => {
    const frame = utmFrame(31, 'N', 'WGS84')
    for (const off of [10, 20, 30]) {
      const { easting, northing } = project(frame, 35, 3 + off)
      const back = unproject(frame, easting, northing)
      expect(Math.abs(back.latitude - 35)).toBeLessThan(1e-12)
      expect(Math.abs(back.longitude - 3 - off)).toBeLessThan(1e-12)
    }
  })
})

describe('zones', () => {
  it.each([
    ['Bergen, widened 32V', 60.4, 5.3, 32], ['west of it', 60.4, 2.9, 31], ['south of 32V', 55.9, 5.3, 31],
    ['Svalbard', 78.2, 15.6, 33], ['Svalbard', 78.2, 8.9, 31], ['Svalbard', 78.2, 21, 35], ['Svalbard', 80, 33, 37], ['beyond Svalbard', 78, 42.1, 38],
    ['first', 0, -180, 1], ['also first', 0, 180, 1], ['last', 0, 179.9, 60], ['a boundary goes east', 10, 102, 48],
  ])('%s: %d, %d is in zone %i', (_, lat, lon, zone) => { expect(utmZone(lat, lon)).toBe(zone); expect(utm({ latitude: lat, longitude: lon }).zone).toBe(zone) })
  it('a zone that is asked for is kept', () => { expect(utm({ latitude: 60.4, longitude: 5.3, zone: 31 }).zone).toBe(31) })
  it('south of the equator northings count from 10,000,000', () => {
    expect(utm({ latitude: -1e-9, longitude: 3 })).toMatchObject({ hemisphere: 'S' })
    expect(utm({ latitude: -1e-9, longitude: 3 }).northing).toBeCloseTo(1e7, 3)
    expect(utmInverse({ zone: 31, hemisphere: 'south', easting: 500000, northing: 1e7 }).latitude).toBeCloseTo(0, 12)
  })
  it.each([
    ['latitude', () => utm({ latitude: 85, longitude: 0 })], ['latitude', () => utm({ latitude: Number.NaN, longitude: 0 })], ['longitude', () => utm({ latitude: 0, longitude: 400 })],
    ['zone', () => utm({ latitude: 0, longitude: 0, zone: 61 })], ['zone', () => utm({ latitude: 0, longitude: 0, zone: 1.5 })], ['zone', () => utm({ latitude: 0, longitude: 100, zone: 31 })],
    ['ellipsoid', () => utm({ latitude: 0, longitude: 0, ellipsoid: 'toString' })], ['hemisphere', () => utmInverse({ zone: 1, hemisphere: 'X', easting: 5e5, northing: 0 })],
    ['easting', () => utmInverse({ zone: 1, hemisphere: 'N', easting: 1e8, northing: 0 })], ['northing', () => utmInverse({ zone: 1, hemisphere: 'N', easting: 5e5, northing: -1 })],
  ])('refuses a bad %s', (field, call) => {
    expect(call).toThrow(expect.objectContaining({ name: 'InputError', field }) as Error)
  })
})
