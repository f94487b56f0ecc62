import { describe, expect, it } from 'vitest'
import { statistics } from '../../src/reckon/statistics.ts'

const run = (name: string, input: unknown) => statistics.find(r => r.name === name)!.run(input)

describe('statistics at the prompt', () => {
  it('V: lognormal-mean of USEPA 1992\'s chromium, by the contract\'s fields', () => {
    const values = [10, 13, 20, 36, 41, 59, 67, 110, 110, 136, 140, 160, 200, 230, 1300]
    const result = run('lognormal-mean', { values, confidence: 0.95 }) as Record<string, number> & { land: Record<string, number>, cox: Record<string, number> }
    expect(result.arithmetic_mean).toBeCloseTo(175.4667, 4)
    expect(result.sichel_t).toBeCloseTo(159.855185, 6)
    expect(result.log_mean).toBeCloseTo(4.3786357, 7)
    expect(result.log_sd).toBeCloseTo(1.2467789, 7)
    expect(result.land.high_one_sided).toBeCloseTo(496.62817, 5)
    expect(result.student_upper).toBeCloseTo(320.3304, 4)
    expect(result.cox.high_one_sided).toBeCloseTo(365.53, 2)
    expect(result.land.low).toBeLessThan(result.sichel_t!)
    expect(result.land.high).toBeGreaterThan(result.land.high_one_sided!)
  })
  it('V data, R: compare-groups, Hollander and Wolfe p. 116', () => {
    expect(run('compare-groups', { groups: [[2.9, 3.0, 2.5, 2.6, 3.2], [3.8, 2.7, 4.0, 2.4], [2.8, 3.4, 3.7, 2.2, 2.0]] }))
      .toEqual({ kruskal_wallis: { H: expect.closeTo(0.7714286, 7) as number, df: 2, p: expect.closeTo(0.6799648, 7) as number } })
  })
  it('M data: compare-groups of two, Hollander and Wolfe p. 69', () => {
    const groups = [[0.80, 0.83, 1.89, 1.04, 1.45, 1.38, 1.91, 1.64, 0.73, 1.46], [1.15, 0.88, 0.90, 0.74, 1.21]]
    const { mann_whitney: both } = run('compare-groups', { groups }) as { mann_whitney: Record<string, number> }
    expect(both.W).toBe(35)
    expect(both.p_greater).toBeCloseTo(0.12720613, 8)
    expect(both.p).toBeCloseTo(2 * 0.12720613, 7)
  })
  it('a limit beyond the numbers is null, not a number', () => {
    const { land } = run('lognormal-mean', { values: [1e-5, 1e5], confidence: 0.99 }) as { land: Record<string, unknown> }
    expect(land.high).toBeNull()
  })
  it.each([
    ['lognormal-mean', { values: [1, -2], confidence: 0.9 }, 'values[1]'],
    ['lognormal-mean', { values: [3], confidence: 0.9 }, 'too few'],
    ['lognormal-mean', { values: [3, 4], confidence: 1.5 }, 'confidence'],
    ['compare-groups', { groups: [[1, 2]] }, 'too few'],
    ['compare-groups', { groups: [[1], [1]] }, 'all equal'],
  ])('%s refuses %j: %s', (name, input, reason) => { expect(() => run(name, input)).toThrow(reason) })
})
