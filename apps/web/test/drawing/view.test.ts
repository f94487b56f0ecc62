import fc from 'fast-check'
import { expect, it } from 'vitest'
import { lookingAlong, turned, wind } from '../../src/drawing/turn.ts'
import { boundsOf, toDrawing, toScreen, zoomed } from '../../src/drawing/view.ts'

const metres = fc.double({ min: -5000, max: 5000, noNaN: true }), point = fc.record({ x: metres, y: metres })
const view = fc.record({ k: fc.double({ min: 0.01, max: 500, noNaN: true }), x: metres, y: metres })

it('the screen and the drawing turn into each other', () => {
  fc.assert(fc.property(view, point, (v, p) => {
    const back = toDrawing(v, toScreen(v, p))
    expect(back.x).toBeCloseTo(p.x, 6)
    expect(back.y).toBeCloseTo(p.y, 6)
  }))
})

it('a drawing is true to scale: a metre is as long up as along', () => {
  fc.assert(fc.property(view, point, (v, p) => {
    const o = toScreen(v, p), e = toScreen(v, { x: p.x + 1, y: p.y }), n = toScreen(v, { x: p.x, y: p.y + 1 })
    expect(e.x - o.x).toBeCloseTo(v.k, 6)
    expect(o.y - n.y).toBeCloseTo(v.k, 6)
  }))
})

it('bounds leave out what is not a number', () => {
  expect(boundsOf([])).toBeUndefined()
  expect(boundsOf([{ x: Number.NaN, y: 0 }])).toBeUndefined()
  expect(boundsOf([{ x: 1, y: 2 }, { x: -3, y: Number.NaN }, { x: 0, y: 5 }])).toEqual({ minX: 0, minY: 2, maxX: 1, maxY: 5 })
})

it('zooming about a point leaves that point where it is', () => {
  const v = { k: 4, x: 100, y: 300 }, about = { x: 250, y: 120 }, larger = zoomed(v, { k: 1.5, x: about.x * (1 - 1.5), y: about.y * (1 - 1.5) })
  const under = toDrawing(v, about)
  expect(toScreen(larger, under).x).toBeCloseTo(about.x, 9)
  expect(toScreen(larger, under).y).toBeCloseTo(about.y, 9)
})

it('a plan with 090 to the right has north up; with 037 a step along 037 goes straight to the right', () => {
  const north = turned(0, 1, 90)
  expect([north.x, north.y].map(v => Number(v.toFixed(12)))).toEqual([0, 1])
  const a = 37 * Math.PI / 180, along = turned(Math.sin(a) * 10, Math.cos(a) * 10, 37)
  expect(along.x).toBeCloseTo(10, 12)
  expect(along.y).toBeCloseTo(0, 12)
})

it('with 090 to the right one looks north; with 037, north-west', () => {
  expect(wind(lookingAlong(90))).toBe('north')
  expect(wind(lookingAlong(37))).toBe('north-west')
})
