import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { add, compare, divide, multiply, rational, toNumber } from '../../src/units/rational.ts'

describe('exact fractions', () => {
  it('round to the same double as the language reads from decimal text', () => {
    fc.assert(fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
      expect(toNumber(rational(String(value)))).toBe(value === 0 ? 0 : value)
    }), { seed: 21, numRuns: 3000 })
  })

  it('round a quotient of whole numbers as IEEE 754 division does', () => {
    fc.assert(fc.property(fc.maxSafeInteger(), fc.maxSafeInteger().filter(n => n !== 0), (a, b) => {
      expect(toNumber(divide(rational(String(a)), rational(String(b))))).toBe(a === 0 ? 0 : a / b)
    }), { seed: 22, numRuns: 3000 })
  })

  it('lose nothing on the way: a third of three, a tenth ten times', () => {
    const tenth = rational('0.1')
    const ten = Array.from({ length: 10 }, () => tenth).reduce(add)
    expect(compare(ten, rational('1'))).toBe(0)
    expect(compare(multiply(rational('1/3'), rational('3')), rational('1'))).toBe(0)
  })

  it('are infinite beyond the largest double and refuse division by zero', () => {
    expect(toNumber(rational('1e400'))).toBe(Infinity)
    expect(toNumber(rational('-1e400'))).toBe(-Infinity)
    expect(() => rational('1/0')).toThrow(RangeError)
    expect(() => rational('one')).toThrow(RangeError)
  })
})
