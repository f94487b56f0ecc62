import fc from 'fast-check'
import { expect, it } from 'vitest'
import { alongLine, nearest, within } from '../../src/drawing/nearest.ts'
import { nextThing, wayOf } from '../../src/drawing/stepping.ts'

const here = (p: { x: number, y: number }) => p
const points = [{ x: 0, y: 0 }, { x: 10, y: 1 }, { x: 20, y: 0 }, { x: 10, y: -30 }]

it('picks what is under the finger, nearest first, and nothing beyond its reach', () => {
  expect(nearest(points, here, { x: 9, y: 0 }, 22)).toBe(points[1])
  expect(nearest(points, here, { x: 100, y: 0 }, 22)).toBeUndefined()
  expect(within(points, here, { x: 12, y: 0 }, 22)).toEqual([points[1], points[2], points[0]])
})

it('where along a line a finger is: the same as trying every point of it', () => {
  const c = fc.integer({ min: -50, max: 50 })
  fc.assert(fc.property(c, c, c, c, c, c, (ax, ay, bx, by, px, py) => {
    const { share, off } = alongLine({ x: ax, y: ay }, { x: bx, y: by }, { x: px, y: py })
    const tried = Math.min(...Array.from({ length: 2001 }, (_, i) => Math.hypot(ax + (bx - ax) * i / 2000 - px, ay + (by - ay) * i / 2000 - py)))
    expect(off).toBeLessThanOrEqual(tried + 1e-9)
    expect(off).toBeGreaterThan(tried - 0.05)
    expect(share >= 0 && share <= 1).toBe(true)
  }))
})

it('arrow keys step to the next thing that way, and stay where there is none', () => {
  expect(nextThing(points, here, points[0]!, wayOf('ArrowRight')!)).toBe(points[1])
  expect(nextThing(points, here, points[1]!, wayOf('ArrowRight')!)).toBe(points[2])
  expect(nextThing(points, here, points[2]!, wayOf('ArrowRight')!)).toBeUndefined()
  expect(nextThing(points, here, points[1]!, wayOf('ArrowUp')!)).toBe(points[3]) // up the screen is smaller y
  expect(wayOf('a')).toBeUndefined()
})
