import fc from 'fast-check'
import { expect, it } from 'vitest'
import { gridStep, paperScale, scaleBar, steps } from '../../src/drawing/scale-bar.ts'

it('a bar stands for 1, 2 or 5 times a power of ten, is as long as it says, and fits', () => {
  fc.assert(fc.property(fc.double({ min: 1e-3, max: 1e4, noNaN: true }), fc.constantFrom('m' as const, 'ft' as const), (k, unit) => {
    const bar = scaleBar(k, 170, unit), metres = bar.length * (unit === 'ft' ? 0.3048 : 1)
    expect(bar.pixels).toBeLessThanOrEqual(170 * (1 + 1e-9))
    expect(bar.pixels).toBeGreaterThan(170 / 2.5 * (1 - 1e-9))
    expect(bar.pixels / k / metres).toBeCloseTo(1, 9)
    expect(['1', '2', '5']).toContain(bar.length.toExponential(6)[0])
  }))
})

it('ten pixels a metre in 170 pixels: ten metres in five parts, or fifty feet', () => {
  expect(scaleBar(10, 170)).toEqual({ length: 10, unit: 'm', parts: 5, pixels: 100 })
  expect(scaleBar(10, 170, 'ft')).toMatchObject({ length: 50, parts: 5 })
})

it('grid steps are never closer than the room asked for', () => {
  expect(gridStep(10, 90)).toBe(10)
  expect(gridStep(4, 90)).toBe(50)
  expect(steps(-12, 21, 10)).toEqual([-10, 0, 10, 20])
  expect(steps(1, 2, 10)).toEqual([])
})

it('a sheet is printed at the largest drafting scale that fits', () => {
  expect(paperScale(120, 60, 250, 160)).toBe(500)
  expect(paperScale(12, 6, 250, 160)).toBe(50)
})
