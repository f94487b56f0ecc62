import { describe, expect, it } from 'vitest'
import { immersionDensity, mixtureDensity, voidsOf, waterDensity } from '../../src/assay/index.ts'

describe('density of rock', () => {
  // M: Kell, J. Chem. Eng. Data 20, 1975, 97: kg/m³ at 0, 4, 10, 20, 25, 40 and 100 C.
  it.each([[0, 999.8396], [4, 999.9720], [10, 999.7001], [20, 998.2041], [25, 997.0449], [40, 992.2158], [100, 958.3637]])('[RD1] water at %d C is %d kg/m³', (celsius, density) => {
    expect(waterDensity(celsius) * 1000).toBeCloseTo(density, 2)
  })

  it('[RD2] a lump that loses a third of its mass in water is three times as dense as that water', () => {
    const { density, sd } = immersionDensity({ dry: 300, inWater: 200, celsius: 20 })
    expect(density).toBeCloseTo(3 * waterDensity(20), 12)
    expect(sd).toBe(0)
    expect(immersionDensity({ dry: 300, inWater: 200 }).density).toBeCloseTo(3 * waterDensity(15), 12)
  })

  it('[RD3] its deviation is that of the two weighings by small changes (brute force)', () => {
    const at = (dry: number, inWater: number) => immersionDensity({ dry, inWater, celsius: 15 }).density, h = 1e-4
    const slopes = [(at(500 + h, 310) - at(500 - h, 310)) / (2 * h), (at(500, 310 + h) - at(500, 310 - h)) / (2 * h)]
    expect(immersionDensity({ dry: 500, inWater: 310, celsius: 15, weighingSd: 0.7 }).sd).toBeCloseTo(0.7 * Math.hypot(...slopes), 6)
  })

  it('[RD4] a mixture by mass: volumes add, shares are taken in proportion, voids make it lighter', () => {
    expect(mixtureDensity([{ share: 1, density: 2.65 }, { share: 1, density: 5 }])).toBeCloseTo(2 / (1 / 2.65 + 1 / 5), 12)
    const shares = (quartz: number, pyrite: number) => mixtureDensity([{ share: quartz, density: 2.65 }, { share: pyrite, density: 5 }])
    expect(shares(30, 10)).toBeCloseTo(shares(0.75, 0.25), 12)
    expect(mixtureDensity([{ share: 1, density: 2.6 }], 0.4)).toBeCloseTo(1.56, 12)
    expect(mixtureDensity([{ share: 7, density: 2.6 }])).toBeCloseTo(2.6, 12)
  })

  it('[RD5] voids of rock in bulk are what makes its mixture with air come out', () => {
    expect(voidsOf(1.56, 2.6)).toBeCloseTo(0.4, 12)
    expect(voidsOf(2.6, 2.6)).toBe(0)
    expect(mixtureDensity([{ share: 1, density: 2.6 }], voidsOf(1.7, 2.6))).toBeCloseTo(1.7, 12)
  })

  it('[RD6] refuses what no rock and no water does', () => {
    for (const t of [-0.1, 100.1, Number.NaN]) expect(() => waterDensity(t)).toThrow('temperature_C')
    for (const inWater of [-1, 300, 301, Number.NaN]) expect(() => immersionDensity({ dry: 300, inWater })).toThrow('in_water')
    expect(immersionDensity({ dry: 300, inWater: 0 }).density).toBeCloseTo(waterDensity(15), 12)
    for (const dry of [0, -2, Infinity]) expect(() => immersionDensity({ dry, inWater: 0 })).toThrow('dry')
    for (const weighingSd of [-1, Number.NaN, Infinity]) expect(() => immersionDensity({ dry: 3, inWater: 1, weighingSd })).toThrow('weighing_sd')
    expect(() => mixtureDensity([])).toThrow('parts')
    for (const voids of [-0.1, 1, Number.NaN]) expect(() => mixtureDensity([{ share: 1, density: 2 }], voids)).toThrow('voids')
    expect(() => mixtureDensity([{ share: 1, density: 2 }, { share: 0, density: 2 }])).toThrow('parts[1].share')
    expect(() => mixtureDensity([{ share: 1, density: -2 }])).toThrow('parts[0].density')
    expect(() => voidsOf(2.7, 2.6)).toThrow('bulk')
    expect(() => voidsOf(0, 2.6)).toThrow('bulk')
    expect(() => voidsOf(1, Number.NaN)).toThrow('solid')
  })
})
