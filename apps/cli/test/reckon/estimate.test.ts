import { describe, expect, it } from 'vitest'
import { estimate } from '../../src/reckon/estimate.ts'

const run = (name: string, input: unknown) => estimate.find(r => r.name === name)!.run(input) as Record<string, number>

describe('averages at the prompt', () => {
  it('own: weighted-grade with densities, 12.9842', () => {
    const result = run('weighted-grade', { intervals: [{ width: 0.3, grade: 40, density: 2.65 }], minimum_width: 0.9, wall_grade: 0.2, wall_density: 2.8 })
    expect(result.diluted_grade).toBeCloseTo(12.9842, 4)
    expect(result.diluted_width).toBe(0.9)
  })
  it('weighted-grade without a least width gives the vein alone', () => {
    expect(run('weighted-grade', { intervals: [{ width: 2, grade: 3 }, { width: 1, grade: 9 }] })).toEqual({ width: 3, grade: 5, diluted_width: 3, diluted_grade: 5 })
  })
  it('R: average-along, widths 2, 4, 6 at 0, 10, 30', () => {
    expect(run('average-along', { cuts: [{ at: 0, width: 2 }, { at: 10, width: 4 }, { at: 30, width: 6 }] })).toEqual({ length: 30, mean_width: expect.closeTo(13 / 3, 10) as number })
  })
  it.each([
    ['weighted-grade', { intervals: [] }],
    ['weighted-grade', { intervals: [{ width: -1, grade: 1 }] }],
    ['average-along', { cuts: [{ at: 0, width: 1 }] }],
  ])('%s refuses %j', (name, input) => { expect(() => run(name, input)).toThrow() })
})
