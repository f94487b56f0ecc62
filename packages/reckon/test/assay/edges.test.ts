import { describe, expect, it } from 'vitest'
import { carriedBlanks, controlChart, duplicateMeasures, horwitzPct, precisionModel, screenAssay } from '../../src/assay/index.ts'

describe('edges', () => {
  it('screen assay: several charges are averaged; the unit of mass does not matter', () => {
    expect(screenAssay({ plus: { mass: 10, grade: 500 }, minus: { mass: 990, grades: [4, 6] } })).toBeCloseTo((5000 + 990 * 5) / 1000, 12)
    expect(screenAssay({ plus: { mass: 0.01, grade: 500 }, minus: { mass: 0.99, grades: [4, 6] } })).toBeCloseTo((5000 + 990 * 5) / 1000, 12)
    expect(() => screenAssay({ plus: { mass: 10, grade: 500 }, minus: { mass: 990, grades: [] } })).toThrow('minus.grades')
    expect(() => screenAssay({ plus: { mass: 10, grade: -5 }, minus: { mass: 990, grades: [1] } })).toThrow('plus.grade')
    expect(() => screenAssay({ plus: { mass: 10, grade: 5 }, minus: { mass: 990, grades: [1, NaN] } })).toThrow('minus.grades[1]')
  })
  it('duplicates: the order in a pair does not matter, equal pairs differ by nothing, both nil is no difference', () => {
    expect(duplicateMeasures([[1, 3], [5, 4]])).toEqual(duplicateMeasures([[3, 1], [4, 5]]))
    expect(duplicateMeasures([[2, 2]])).toEqual({ cvAveragePct: 0, hard: [0], withinSd: 0, logSd: 0 })
    expect(duplicateMeasures([[0, 0], [0, 4]])).toEqual({ cvAveragePct: 100, hard: [0, 1], withinSd: 2, logSd: undefined })
    expect(() => duplicateMeasures([])).toThrow('too few')
    expect(() => duplicateMeasures([[1, -1]])).toThrow('pairs[0][1]')
  })
  it('duplicates: within-pair deviation of pairs one apart is 1/sqrt 2', () => {
    expect(duplicateMeasures([[1, 2], [7, 8]]).withinSd).toBeCloseTo(Math.SQRT1_2, 14)
  })
  it('the precision model wants 33 pairs', () => {
    const pairs = Array.from({ length: 32 }, (_, i) => [i, i + 1] as const)
    expect(precisionModel(pairs)).toBeUndefined()
    expect(precisionModel([...pairs, [40, 41]])!.k).toBeCloseTo(0, 12)
  })
  it('a chart of nothing, a deviation of zero and a blank without a limit are refused', () => {
    expect(() => controlChart(1, 1, [])).toThrow('values')
    expect(() => controlChart(1, 0, [1])).toThrow('sd')
    expect(() => controlChart(1, 1, [1, Infinity])).toThrow('values[1]')
    expect(() => carriedBlanks([1], 0)).toThrow('detection_limit')
    expect(() => horwitzPct(0)).toThrow('mass_fraction')
  })
  it('blanks above ten detection limits are named by their place (M: rule of thumb)', () => {
    expect(carriedBlanks([0.005, 0.06, 0.01, 0.051], 0.005)).toEqual([1, 3])
  })
})
