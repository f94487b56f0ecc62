import fc from 'fast-check'
import { expect, it } from 'vitest'
import { fitTogether, layOut, paperK } from '../../src/drawing/layout.ts'
import { toScreen } from '../../src/drawing/view.ts'
import type { Bounds } from '../../src/drawing/view.ts'

const metres = fc.double({ min: 0, max: 300, noNaN: true })
const box = fc.record({ w: metres, h: metres, x: fc.integer({ min: -99, max: 99 }) })
  .map(({ w, h, x }): Bounds => ({ minX: x, maxX: x + w, minY: -h / 2, maxY: h / 2 }))

it('drawings under each other share one scale, and all of each is in sight', () => {
  fc.assert(fc.property(box, box, fc.constantFrom(358, 860), fc.boolean(), (a, b, width, paper) => {
    const laid = layOut([a, b], width, 900, paper), sizes = laid.heights.map(height => ({ width, height })), views = fitTogether([a, b], sizes, laid.scale)!
    expect(views[0]!.k).toBe(views[1]!.k)
    ;[a, b].forEach((bounds, i) => {
      const low = toScreen(views[i]!, { x: bounds.minX, y: bounds.minY }), high = toScreen(views[i]!, { x: bounds.maxX, y: bounds.maxY })
      expect(low.x > 0 && high.x < width && high.y > 0 && low.y < sizes[i]!.height).toBe(true)
    })
  }))
})

it('on paper a metre is as long as the scale says: at 1 to 500 it is two millimetres', () => {
  expect(paperK(500) / (96 / 25.4)).toBeCloseTo(2, 12)
  const plan = { minX: 0, maxX: 90, minY: 0, maxY: 40 }
  expect(layOut([plan], 800, 900, true)).toMatchObject({ scale: 500 })
})

it('before there is any room there is nothing that is not a number', () => {
  const laid = layOut([{ minX: 0, maxX: 0, minY: 0, maxY: 0 }], 0, 900, false)
  expect(laid.heights).toEqual([200])
  expect(fitTogether([{ minX: 0, maxX: 0, minY: 0, maxY: 0 }], [{ width: 868, height: 62 }], 500)).toBeUndefined()
})
