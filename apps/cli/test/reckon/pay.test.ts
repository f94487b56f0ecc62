import { InputError } from '@lodebook/reckon'
import { describe, expect, it } from 'vitest'
import { ZodError } from 'zod'
import { pay } from '../../src/reckon/pay.ts'

const run = (name: string, input: unknown) => pay.find(reckoning => reckoning.name === name)?.run(input)

describe('reckon present-value, hoskold, information-worth', () => {
  // M: numpy-financial documentation
  it('present-value: 3065.22267 at 8 %', () => {
    const found = run('present-value', { rate: 0.08, flows: [-40000, 5000, 8000, 12000, 30000] }) as { npv: number, irr: number }
    expect(found.npv).toBeCloseTo(3065.22267, 5)
    expect(run('present-value', { rate: 0, flows: [-100, 0, 0, 74] })).toMatchObject({ npv: -26, sign_changes: 1 })
  })

  it('present-value: no rate is null with its reason', () => {
    expect(run('present-value', { rate: 0.1, flows: [5, 5] })).toMatchObject({ irr: null, reason: 'money only comes in, so no rate balances it' })
  })

  // V: Hoover 1909, table III, 29 % and 5 %: 3.9 years
  it('hoskold: 3.9 years', () => {
    expect((run('hoskold', { income_pct: 29, rate_pct: 5, safe_rate_pct: 4 }) as { years: number }).years).toBeCloseTo(3.9, 1)
    expect(run('hoskold', { income_pct: 5, rate_pct: 5, safe_rate_pct: 4 })).toMatchObject({ years: null })
  })

  // M: Raiffa 1968
  it('information-worth: 20, 32.5, 12.5, 35', () => {
    const found = run('information-worth', pay[2]?.example) as Record<'without' | 'with' | 'worth' | 'perfect', number>
    expect([found.without, found.with, found.worth, found.perfect].map(x => Math.round(x * 1e9) / 1e9)).toEqual([20, 32.5, 12.5, 35])
  })

  it('runs every example and refuses bad input', () => {
    for (const { run, example } of pay) expect(run(example)).toBeTypeOf('object')
    expect(() => run('present-value', { rate: -1, flows: [1] })).toThrow(InputError)
    expect(() => run('present-value', { rate: 0.1, flows: [] })).toThrow(ZodError)
    expect(() => run('hoskold', { income_pct: '29' })).toThrow(ZodError)
  })
})
