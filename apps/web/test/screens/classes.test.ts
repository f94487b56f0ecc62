import fc from 'fast-check'
import { expect, it } from 'vitest'
import { classesOf, shareOf } from '../../src/screens/grade/classes.ts'
import { payAxis } from '../../src/screens/pay/pay-axis.ts'

it('every value is in one class, there are at most six, and their counts add up', () => {
  fc.assert(fc.property(fc.array(fc.double({ min: 1e-4, max: 1e4, noNaN: true }), { minLength: 1, maxLength: 80 }), (values) => {
    const classes = classesOf(values)
    expect(classes.length).toBeGreaterThan(0)
    expect(classes.length).toBeLessThanOrEqual(6)
    expect(classes.reduce((sum, c) => sum + c.count, 0)).toBe(values.length)
    classes.slice(1).forEach((c, i) => expect(c.from).toBe(classes[i]!.to))
  }))
})

it('more is never drawn lighter', () => {
  fc.assert(fc.property(fc.array(fc.double({ min: 0.01, max: 500, noNaN: true }), { minLength: 2, maxLength: 40 }), (values) => {
    const classes = classesOf(values), sorted = [...values].sort((a, b) => a - b)
    sorted.slice(1).forEach((v, i) => expect(shareOf(classes, v)).toBeGreaterThanOrEqual(shareOf(classes, sorted[i]!)))
  }))
})

it('grades over more than a power of ten get limits of 1, 2 and 5; widths get even ones', () => {
  expect(classesOf([0.03, 0.4, 0.7]).map(c => c.from)).toEqual([0.02, 0.05, 0.1, 0.2, 0.5])
  expect(classesOf([0.21, 0.33, 0.58]).map(c => c.from)).toEqual([0.2, 0.3, 0.4, 0.5])
  expect(classesOf([3, 3]).map(c => [c.from, c.to, c.count])).toEqual([[3, 6, 2]])
  expect(classesOf([])).toEqual([])
})

it('the axis of pay holds the wage, nothing, and all but one very rich outcome', () => {
  const twenty = [...Array.from({ length: 19 }, (_, i) => -50 + i * 10), 9000], axis = payAxis(twenty, 150)
  expect(axis.low).toBeLessThan(-50)
  expect(axis.high).toBeGreaterThan(150)
  expect(axis.high).toBeLessThan(200)
  expect(payAxis([10, 20], 5)).toMatchObject({ low: 0 })
})
