import { InputError } from '@lodebook/reckon'
import { describe, expect, it } from 'vitest'
import { ZodError } from 'zod'
import { air } from '../../src/reckon/air.ts'

const run = (name: string, input: unknown) => air.find(reckoning => reckoning.name === name)?.run(input) as Record<string, number>

describe('reckon gas-check, natural-draught, airway, portal-exchange, clearing-time', () => {
  it('gas-check: worst first, each with limit, rule, kind and action; the rest not read', () => {
    expect(air[0]?.run({ readings: { o2_pct: 18, co_ppm: 60 } })).toMatchObject({
      findings: [
        { gas: 'O2', value: 18, limit: 19.5, kind: 'minimum', section: '30 CFR 57.5015', action: expect.stringContaining('Leave') as string },
        { gas: 'CO', limit: 25 }, { gas: 'CO', limit: 35 }, { gas: 'CO', value: 60, limit: 50, rule: 'OSHA permissible limit', kind: 'shift average' },
      ],
      not_read: ['CO2', 'CH4', 'H2S', 'NO2'],
    })
  })

  it('gas-check: oxygen of 209 is refused by its field', () => {
    expect(() => run('gas-check', { readings: { o2_pct: 209 } })).toThrow(InputError)
    expect(() => run('gas-check', { readings: { o2_pct: 209 } })).toThrow(/readings\.o2_pct.*20\.9/)
    expect(() => run('gas-check', { readings: { o2: 20.9 } })).toThrow(ZodError)
  })

  // V: Mine Ventilation Question Bank, question 1
  it('natural-draught: 12.86 m, 146.2 Pa within the source\'s rounding', () => {
    const found = run('natural-draught', air[1]?.example)
    expect(found.motive_column_m).toBeCloseTo(12.86, 1)
    expect(Math.abs((found.pressure_Pa ?? NaN) - 146.2)).toBeLessThan(0.4)
  })

  // R: checks/physical.md sections 3.3, 3.5, 3.6
  it('airway 0.3111, portal-exchange 0.539, clearing-time 27.7', () => {
    expect(run('airway', { length_m: 100, area_m2: 3, perimeter_m: 7, friction_kg_m3: 0.012 }).resistance).toBeCloseTo(0.3111, 4)
    expect(run('portal-exchange', { width_m: 1.5, height_m: 2, inside_C: 16.85, outside_C: 6.85, discharge: 0.65 })).toMatchObject({
      flow_m3_s: expect.closeTo(0.539, 3) as number, direction_top: 'out' })
    expect(run('clearing-time', air[4]?.example).minutes).toBeCloseTo(27.7, 1)
  })

  it('runs every example', () => { for (const { run, example } of air) expect(run(example)).toBeTypeOf('object') })
})
