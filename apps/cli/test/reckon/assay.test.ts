import { describe, expect, it } from 'vitest'
import { assay } from '../../src/reckon/assay.ts'

const run = (name: string, input: unknown) => assay.find(r => r.name === name)!.run(input) as Record<string, unknown>

describe('assay at the prompt', () => {
  it.each(assay.map(r => [r.name, r] as const))('%s: its example runs', (_, { example, run }) => {
    expect(JSON.stringify(run(example))).not.toContain('null')
  })
  it('V: screen-assay of Beringer\'s metallics, 0.7342 %', () => {
    expect(run('screen-assay', { plus: { mass_g: 1, grade: 84.2 }, minus: { mass_g: 399, grades: [0.525] } }).grade).toBeCloseTo(0.7341875, 10)
  })
  it('pan-grade gives the contract\'s fields', () => {
    const pan = run('pan-grade', { dry_mass_g: 1000, colours: [{ count: 0, mg_each: 0.5 }], confidence: 0.95 })
    expect(pan).toMatchObject({ grade_g_t: 0, low: 0, confidence: 0.95 })
    expect(pan.high).toBeCloseTo(2.9957 * 0.5, 4)
  })
  it('M, R: duplicates, HARD 10 % is CV 14.14 %', () => {
    const result = run('duplicates', { pairs: [[11, 9]] })
    expect(result.cv_average_pct).toBeCloseTo(14.14, 2)
    expect(result.within_sd).toBeCloseTo(Math.SQRT2, 12)
  })
  it('V: control-chart names rule and place', () => {
    expect(run('control-chart', { certified: 0, sd: 1, values: [2.1, 2.2] }).breaches).toContainEqual({ rule: '2_2s', at: 1, warning: false })
  })
  it.each([
    ['screen-assay', { plus: { mass_g: 0, grade: 1 }, minus: { mass_g: 1, grades: [1] } }],
    ['pan-grade', { dry_mass_g: 1000 }],
    ['duplicates', { pairs: [[1, -1]] }],
    ['duplicates', { pairs: [] }],
    ['control-chart', { certified: 1, sd: -1, values: [1] }],
  ])('%s refuses %j', (name, input) => { expect(() => run(name, input)).toThrow() })
})
