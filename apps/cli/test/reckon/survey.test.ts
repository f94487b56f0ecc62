import { describe, expect, it } from 'vitest'
import { survey } from '../../src/reckon/survey.ts'

interface Station { east: number, north: number, up: number, sigma: number[] }
interface Output {
  misclosure: { east: number, north: number, up: number, length: number, ratio: number }
  stations: Record<string, Station>
  legs: { from: string, to: string, length: number, azimuth: number }[]
  covariance?: Record<string, number[][]>
  residuals: { from: string, to: string, reading: string, residual: number }[]
  suspects: { from: string, to: string, reading: string, says: string }[]
  floating: Record<string, Station>
  cautions: string[]
}
const run = (name: string, input: unknown) => survey.find(r => r.name === name)!.run(input) as Output & Record<string, number>

const mahun = {
  legs: [
    { from: 'A', to: 'B', length: 472.68, azimuth: 'S68-05-35W' }, { from: 'B', to: 'C', length: 216.13, azimuth: 'N19 46 00 W' },
    { from: 'C', to: 'D', length: 276.52, azimuth: '45-55-20' }, { from: 'D', to: 'A', length: 382.24, azimuth: 180 - (54 + 59 / 60 + 15 / 3600) },
  ],
  start: { station: 'A', east: 2000, north: 500, up: 0 },
}

describe('survey at the prompt', () => {
  it.each(survey.map(r => [r.name, r] as const))('%s: its example runs and is JSON', (_, { example, run: runExample }) => {
    const output = runExample(example)
    expect(JSON.parse(JSON.stringify(output))).toEqual(output)
  })

  it('V: traverse by the compass rule (J. Mahun, Open Access Surveying, ch. E), azimuths written four ways', () => {
    const { misclosure, stations, legs } = run('traverse', { ...mahun, rule: 'compass' })
    expect(Math.abs(misclosure.north - 0.083)).toBeLessThan(0.001)
    expect(Math.abs(misclosure.east - 0.075)).toBeLessThan(0.001)
    expect(misclosure.up).toBe(0)
    expect(misclosure.ratio).toBeCloseTo(1347.57 / misclosure.length, 6)
    expect(Math.abs(stations.D!.north - 719.336)).toBeLessThan(0.001)
    expect(Math.abs(legs[0]!.length - 472.715)).toBeLessThan(0.001)
    expect(Math.abs(legs[3]!.azimuth - (180 - (54 + 58 / 60 + 58 / 3600)))).toBeLessThan(1 / 3600)
  })

  it('R: the same by least squares with 0.01 ft and 30", with covariances', () => {
    const { stations, covariance } = run('traverse', { ...mahun, rule: 'least-squares', sigma: { length: 0.01, angle_arcsec: 30 } })
    expect(Math.abs(stations.D!.east - 1686.9797)).toBeLessThan(1e-4)
    expect(covariance!.D!.length).toBe(3)
    expect(covariance!.D![0]![0]).toBeGreaterThan(0)
  })

  it('network: exact shots give exact points; the blunder of a backsight is named', () => {
    const side = { inclination: 0, sigma_length: 0.01, sigma_angle_deg: 0.5 }
    const shots = [
      { ...side, from: 'A', to: 'B', length: 10, azimuth: 0, back_azimuth: 180 }, { ...side, from: 'B', to: 'C', length: 10, azimuth: 'N90E', back_azimuth: 270 },
      { ...side, from: 'C', to: 'A', length: Math.hypot(10, 10), azimuth: 225, back_azimuth: 45 },
    ]
    const good = run('network', { shots, fixed: { A: [100, 200, 300] } })
    expect(good.stations.C!.east).toBeCloseTo(110, 9)
    expect(good.stations.C!.north).toBeCloseTo(210, 9)
    expect(good.stations.C!.sigma[2]).toBeGreaterThan(0)
    expect(good.suspects).toEqual([])
    expect(good.residuals.length).toBe(12)
    const bad = run('network', { shots: shots.map((s, i) => i === 1 ? { ...s, back_azimuth: 279.8 } : s), fixed: { A: [100, 200, 300] } })
    expect(bad.suspects[0]).toMatchObject({ from: 'B', to: 'C', reading: 'back_azimuth' })
    expect(bad.suspects[0]!.says).toContain('disagree by 9.8°')
    expect(run('network', { shots: [...shots, { ...side, from: 'X', to: 'Y', length: 1, azimuth: 0 }], fixed: { A: [0, 0, 0] } }).floating.Y!.north).toBeCloseTo(1, 9)
  })

  it('V: declination at 80 N 0 E, 2027.5 is 2.59° (WMM2025 test values)', () => {
    expect(Math.abs(run('declination', { latitude: 80, longitude: 0, height_m: 0, date: 2027.5 }).declination! - 2.59)).toBeLessThan(0.0051)
    expect(run('declination', { latitude: 80, longitude: 0, date: '2040-01-01' }).cautions.length).toBe(1)
  })

  it('M: utm, Snyder\'s example on Clarke 1866, and back', () => {
    const point = run('utm', { latitude: 40.5, longitude: -73.5, ellipsoid: 'Clarke 1866' })
    expect(Math.abs(point.easting! - 627106.5)).toBeLessThan(0.05)
    expect(Math.abs(point.northing! - 4484124.4)).toBeLessThan(0.05)
    const { zone, hemisphere, easting, northing } = point
    const back = run('utm-inverse', { zone, hemisphere, easting, northing, ellipsoid: 'Clarke 1866' })
    expect(back.latitude).toBeCloseTo(40.5, 10)
    expect(back.longitude).toBeCloseTo(-73.5, 10)
  })

  const shot = { from: 'A', to: 'B', length: 10, azimuth: 10, inclination: 0 }
  it.each([
    ['network', { shots: [shot, { ...shot, from: 'B', to: 'B' }], fixed: {} }, 'shots[1].to'],
    ['network', { shots: [{ ...shot, azimuth: 'N95E' }], fixed: {} }, 'shots[0].azimuth'],
    ['traverse', { ...mahun, rule: 'compass', legs: mahun.legs.slice(0, 3) }, 'legs[2].to'],
    ['utm', { latitude: 0, longitude: 100, zone: 1 }, 'zone'],
    ['declination', { latitude: 0, longitude: 0, date: 1e400 }, undefined],
  ])('%s refuses %j at %s', (name, input, field) => {
    expect(() => run(name, input)).toThrow(field === undefined ? Error : expect.objectContaining({ name: 'InputError', field }) as Error)
  })
  it.each([
    ['network', { shots: [{ ...shot, length: 0 }], fixed: {} }, ['shots', 0, 'length']],
    ['network', { shots: [{ ...shot, azimuth: 370 }], fixed: {} }, ['shots', 0, 'azimuth']],
    ['network', { shots: [{ ...shot, inclination: 95 }], fixed: {} }, ['shots', 0, 'inclination']],
    ['network', { shots: [{ ...shot, inclination: Number.NaN }], fixed: {} }, ['shots', 0, 'inclination']],
    ['traverse', { ...mahun, rule: 'guess' }, ['rule']],
  ])('%s: the schema refuses %j at %j', (name, input, path) => {
    expect(() => run(name, input)).toThrow(expect.objectContaining({ issues: [expect.objectContaining({ path })] }) as Error)
  })
})
