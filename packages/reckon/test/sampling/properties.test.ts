import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fundamentalVariance, grainMass, nuggetCount, panFactor, samplingError } from '../../src/sampling/index.ts'

const lot = { gradeGPerT: 8, liberationSizeCm: 0.03, nominalSizeCm: 0.5, massG: 2000 }

describe('sampling error', () => {
  it('four times the mass halves it; a whole lot taken has none', () => {
    fc.assert(fc.property(fc.double({ min: 0.1, max: 1e5, noNaN: true }), (massG) => {
      expect(samplingError({ ...lot, massG: 4 * massG }).relativeSd * 2 / samplingError({ ...lot, massG }).relativeSd).toBeCloseTo(1, 12)
    }), { seed: 1 })
    expect(samplingError({ ...lot, lotMassG: 2000 }).relativeSd).toBe(0)
    expect(samplingError({ ...lot, lotMassG: 4000 }).relativeSd ** 2 * 2).toBeCloseTo(samplingError(lot).relativeSd ** 2, 12)
  })
  it('crushing helps, down to liberation and beyond', () => {
    const sizes = [2, 1, 0.5, 0.1, 0.03, 0.01].map(nominalSizeCm => samplingError({ ...lot, nominalSizeCm }).relativeSd)
    expect([...sizes].sort((a, b) => b - a)).toEqual(sizes)
  })
  it('its constant gives its variance', () => {
    const { relativeSd, samplingConstant } = samplingError(lot)
    expect(fundamentalVariance({ samplingConstant, sizeCm: 0.5, massG: 2000 })).toBeCloseTo(relativeSd ** 2, 14)
  })
  it('for free grains it is the count of grains, but for the factor of sizes', () => {
    const free = samplingError({ ...lot, nominalSizeCm: 0.03, shape: Math.PI / 6, granulometric: 1 })
    expect(free.relativeSd).toBeCloseTo(nuggetCount({ massG: 2000, gradeGPerT: 8, grainMg: grainMass(0.3) }).relativeSd, 12)
  })
  it.each([
    [{ massG: 0 }, 'mass_g'], [{ gradeGPerT: -1 }, 'grade_g_t'], [{ nominalSizeCm: NaN }, 'nominal_size_cm'], [{ lotMassG: 100 }, 'lot_mass_g'], [{ exponent: 4 }, 'exponent'],
  ])('refuses %j', (change, field) => { expect(() => samplingError({ ...lot, ...change })).toThrow(field) })
  it('nuggets: refuses no grade, no grain, a share above one; pans: a negative swell', () => {
    expect(() => nuggetCount({ massG: 1, gradeGPerT: 0, grainMg: 1 })).toThrow('grade_g_t')
    expect(() => nuggetCount({ massG: 1, gradeGPerT: 1, grainMg: 0 })).toThrow('grain_mg')
    expect(() => nuggetCount({ massG: 1, gradeGPerT: 1, grainMg: 1, freeShare: 1.2 })).toThrow('free_share')
    expect(() => panFactor(1, -0.1)).toThrow('swell')
  })
})
