import { describe, expect, it } from 'vitest'
import { declination } from '../../src/survey/index.ts'

describe('V: NOAA NCEI, WMM2025_TEST_VALUES.txt (declination printed to 0.01°); R: inclination and total field by the geomagnetism package', () => {
  it.each([
    [2025.0, 0, 80, 0, 1.28, 83.21, 55178.5],
    [2025.0, 0, 0, 120, -0.16, -14.93, 41064.3],
    [2025.0, 0, -80, 240, 68.78, -72.00, 54698.2],
    [2025.0, 100, 80, 0, 0.85, 83.26, 52964.9],
    [2025.0, 100, 0, 120, -0.15, -15.08, 39032.1],
    [2025.0, 100, -80, 240, 68.21, -72.19, 52035.0],
    [2027.5, 0, 80, 0, 2.59, 83.24, 55253.9],
    [2027.5, 0, 0, 120, -0.24, -14.65, 41036.9],
    [2027.5, 0, -80, 240, 68.49, -71.92, 54474.2],
    [2027.5, 100, 80, 0, 2.16, 83.29, 53034.3],
    [2027.5, 100, 0, 120, -0.23, -14.81, 39007.4],
    [2027.5, 100, -80, 240, 67.93, -72.10, 51825.7],
  ])('%d, %d km, latitude %d, longitude %d: D %d', (date, altitude, latitude, longitude, d, i, f) => {
    const field = declination({ latitude, longitude, height_m: 1000 * altitude, date })
    expect(Math.abs(field.declination - d)).toBeLessThan(0.0051)
    expect(Math.abs(field.inclination - i)).toBeLessThan(0.0051)
    expect(Math.abs(field.total_nT - f)).toBeLessThan(0.051)
    expect(field).toMatchObject({ model: 'WMM2025', extrapolated: 0 })
  })
})

describe('declination', () => {
  const place = { latitude: 40, longitude: -110 }
  it('M: sigma = sqrt(0.26² + (5417/H)²), 0.38° where H is 20,000 nT (WMM2025 technical report)', () => {
    const { sigma, horizontal_nT } = declination({ ...place, date: '2026-07-01' })
    expect(sigma).toBeCloseTo(Math.sqrt(0.26 ** 2 + (5417 / horizontal_nT) ** 2), 12)
    expect(Math.abs(Math.sqrt(0.26 ** 2 + (5417 / 20000) ** 2) - 0.38)).toBeLessThan(0.005)
  })
  it('answers on the last days of the model, which the package refuses, and does not jump there', () => {
    const [before, after] = ['2029-11-12', '2029-11-15'].map(date => declination({ ...place, date }))
    expect(after!.extrapolated).toBe(0)
    expect(Math.abs(after!.declination - before!.declination)).toBeLessThan(0.001)
    expect(declination({ ...place, date: '2029-12-31' }).cautions).toEqual([])
  })
  it.each([['2034-06-30', 'WMM2025', 4.5], ['1931-01-01', 'WMM2015', 84]])('carries %s on from %s, says how far, and doubts it more', (date, model, years) => {
    const field = declination({ ...place, date })
    expect(field.model).toBe(model)
    expect(Math.abs(field.extrapolated - years)).toBeLessThan(0.01)
    expect(field.cautions[0]).toContain(`${model} is meant for`)
    const edge = declination({ ...place, date: model === 'WMM2025' ? 2030 : 2015 })
    expect(field.sigma).toBeCloseTo(Math.hypot(Math.hypot(model === 'WMM2025' ? 0.26 : 0.23, (model === 'WMM2025' ? 5417 : 5430) / field.horizontal_nT), field.declination - edge.declination), 10)
    expect(field.sigma).toBeGreaterThan(edge.sigma)
  })
  it('uses the model of the survey\'s own year; neighbouring models agree within their doubt', () => {
    for (const year of [2020, 2025]) {
      const [old, young] = [year - 0.001, year].map(date => declination({ ...place, date }))
      expect(old!.model).not.toBe(young!.model)
      expect(Math.abs(old!.declination - young!.declination)).toBeLessThan(2 * Math.hypot(old!.sigma, young!.sigma))
    }
  })
  it('its yearly change is the difference of two years', () => {
    const { change } = declination({ ...place, date: 2027 })
    expect(change).toBeCloseTo(declination({ ...place, date: 2027.5 }).declination - declination({ ...place, date: 2026.5 }).declination, 10)
  })
  it('takes longitude either way round, and dates either way', () => {
    expect(declination({ latitude: 40, longitude: 250, date: 2026 }).declination).toBeCloseTo(declination({ ...place, date: '2026-01-01' }).declination, 10)
  })
  it('warns where the field is nearly upright', () => {
    const near = declination({ latitude: 84, longitude: 150, date: 2026 })
    expect(near.horizontal_nT).toBeLessThan(6000)
    expect(near.cautions.length).toBe(1)
  })
  it.each([
    ['latitude', { latitude: 91, longitude: 0, date: 2026 }], ['latitude', { latitude: Number.NaN, longitude: 0, date: 2026 }],
    ['longitude', { latitude: 0, longitude: -181, date: 2026 }], ['height_m', { latitude: 0, longitude: 0, height_m: Infinity, date: 2026 }],
    ['date', { latitude: 0, longitude: 0, date: '2026-02-30' }], ['date', { latitude: 0, longitude: 0, date: 'May 2026' }], ['date', { latitude: 0, longitude: 0, date: Number.NaN }],
  ])('refuses a bad %s', (field, input) => {
    expect(() => declination(input)).toThrow(expect.objectContaining({ name: 'InputError', field }) as Error)
  })
})
