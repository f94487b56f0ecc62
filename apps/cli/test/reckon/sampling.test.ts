import { describe, expect, it } from 'vitest'
import { sampling } from '../../src/reckon/sampling.ts'

const run = (name: string, input: unknown) => sampling.find(r => r.name === name)!.run(input) as Record<string, number>

describe('sampling at the prompt', () => {
  it('own (formula M): sampling-error of 10 g/t, 0.05 cm, 1 cm, 5 kg is 0.734', () => {
    const result = run('sampling-error', { nominal_size_cm: 1, mass_g: 5000, grade_g_t: 10, liberation_size_cm: 0.05 })
    expect(result.relative_sd).toBeCloseTo(0.734, 3)
    expect(result.liberation_factor).toBeCloseTo(0.05 ** 1.5, 14)
    expect(result.sampling_constant! / 5000).toBeCloseTo(result.relative_sd! ** 2, 12)
  })
  it('R: nugget-count, 20 grains expected', () => {
    const result = run('nugget-count', { mass_g: 2000, grade_g_t: 10, grain_mg: 1 })
    expect(result.expected).toBeCloseTo(20, 12)
    expect(Math.abs(result.chance_of_none! - 2.06e-9)).toBeLessThan(0.005e-9)
    expect(result.relative_sd).toBeCloseTo(0.2236, 4)
  })
  it.each([
    ['sampling-error', { nominal_size_cm: 1, mass_g: 5000, grade_g_t: 10, liberation_size_cm: 0.05, lot_mass_g: 10 }],
    ['sampling-error', { nominal_size_cm: 1, mass_g: -1, grade_g_t: 10, liberation_size_cm: 0.05 }],
    ['nugget-count', { mass_g: 1, grade_g_t: 0, grain_mg: 1 }],
  ])('%s refuses %j', (name, input) => { expect(() => run(name, input)).toThrow() })
})
