import fc from 'fast-check'
import { expect, it } from 'vitest'
import { stackDots } from '../../src/drawing/dots.ts'

it('every outcome is one dot, and no two dots share a place', () => {
  fc.assert(fc.property(fc.array(fc.double({ min: -100, max: 900, noNaN: true }), { maxLength: 40 }), (outcomes) => {
    const dots = stackDots(outcomes, -100, 900, 20)
    expect(dots.map(d => d.value)).toEqual([...outcomes].sort((a, b) => a - b))
    expect(new Set(dots.map(d => `${d.column} ${d.row}`)).size).toBe(outcomes.length)
    for (const d of dots) expect(d.column >= 0 && d.column < 20).toBe(true)
  }))
})

it('twenty alike stand on top of each other', () => {
  expect(stackDots(Array<number>(20).fill(5), 0, 10, 10).map(d => d.row)).toEqual(Array.from({ length: 20 }, (_, i) => i))
  expect(stackDots([3], 3, 3, 10)).toEqual([{ value: 3, column: 5, row: 0 }])
})
