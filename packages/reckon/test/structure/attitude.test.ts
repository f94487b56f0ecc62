import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { angleBetween, attitudeOf, axesOf, directionOf, lineOf, normalOf, planeIntersection, strikeFrom, trueDip, veinFrame, vectorOf } from '../../src/structure/index.ts'
import type { Enu } from '../../src/core/index.ts'
import { DegenerateError } from '../../src/core/index.ts'

const strike = fc.double({ min: 0, max: 359.999, noNaN: true })
const dip = fc.double({ min: 0.001, max: 89.999, noNaN: true })
const coordinate = fc.double({ min: -1e4, max: 1e4, noNaN: true })
const point = fc.tuple(coordinate, coordinate, coordinate)
const dot = (a: Enu, b: Enu) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
const apart = (a: number, b: number) => Math.abs(((a - b) % 360 + 540) % 360 - 180)

describe('attitudes', () => {
  it('dip is to the right of the strike: strike 0 dips east, its normal leans east', () => {
    const { strike: along, dip: down, normal } = axesOf({ strike: 0, dip: 30 })
    expect(along).toEqual([0, 1, 0])
    expect(down[0]).toBeCloseTo(Math.cos(Math.PI / 6), 15)
    expect(down[2]).toBeCloseTo(-0.5, 15)
    expect(normal[0]).toBeCloseTo(0.5, 15)
    expect(normal[2]).toBeGreaterThan(0)
  })
  it('comes back from its normal, up or down and of any length', () => {
    fc.assert(fc.property(strike, dip, fc.constantFrom(1, -1, 1e-6, -1e8), (s, d, k) => {
      const back = attitudeOf(normalOf({ strike: s, dip: d }).map(v => v * k) as unknown as Enu)
      expect(apart(back.strike, s) * Math.sin(d * Math.PI / 180)).toBeLessThan(1e-12)
      expect(back.dip).toBeCloseTo(d, 11)
    }), { seed: 1 })
  })
  it('a level plane has strike 0; an upright one has its strike below 180', () => {
    expect(attitudeOf([0, 0, -5])).toEqual({ strike: 0, dip: 0 })
    expect(attitudeOf([1, 0, 0])).toEqual({ strike: 0, dip: 90 })
    expect(attitudeOf([-1, 0, 0])).toEqual({ strike: 0, dip: 90 })
    expect(attitudeOf([0, 1, 0])).toEqual({ strike: 90, dip: 90 })
  })
  it('measures the angle between planes across north and across upright', () => {
    expect(angleBetween({ strike: 359, dip: 89 }, { strike: 179, dip: 89 })).toBeCloseTo(2, 12)
    expect(angleBetween({ strike: 359, dip: 90 }, { strike: 1, dip: 90 })).toBeCloseTo(2, 12)
    expect(strikeFrom(45)).toBe(315)
  })
})

describe('lines', () => {
  it('come back from their vectors', () => {
    fc.assert(fc.property(strike, fc.double({ min: -89.9, max: 89.9, noNaN: true }), (trend, plunge) => {
      const back = directionOf(vectorOf({ trend, plunge }))
      expect(apart(back.trend, trend)).toBeLessThan(1e-10)
      expect(back.plunge).toBeCloseTo(plunge, 11)
    }), { seed: 2 })
  })
  it('without a sense point down; level ones have their trend below 180', () => {
    expect(lineOf([0, 1, 1]).trend).toBe(180)
    expect(lineOf([0, 1, 1]).plunge).toBeCloseTo(45, 13)
    expect(lineOf([-1, 0, 0])).toEqual({ trend: 90, plunge: 0 })
    expect(lineOf([0, 0, 2])).toEqual({ trend: 0, plunge: 90 })
  })
})

describe('plane intersection', () => {
  it('lies in both planes, its rakes measured from each strike', () => {
    fc.assert(fc.property(strike, dip, strike, dip, (s1, d1, s2, d2) => {
      const [a, b] = [{ strike: s1, dip: d1 }, { strike: s2, dip: d2 }]
      fc.pre(angleBetween(a, b) > 0.1)
      const meet = planeIntersection(a, b)
      const line = vectorOf(meet)
      for (const [plane, rake] of [[a, meet.rakeA], [b, meet.rakeB]] as const) {
        const axes = axesOf(plane)
        expect(Math.abs(dot(line, axes.normal))).toBeLessThan(1e-11)
        const r = rake * Math.PI / 180
        const from = axes.strike.map((v, i) => v * Math.cos(r) + axes.dip[i]! * Math.sin(r)) as unknown as Enu
        expect(Math.abs(dot(from, line))).toBeCloseTo(1, 11)
        expect(rake).toBeGreaterThanOrEqual(0)
        expect(rake).toBeLessThanOrEqual(180)
      }
      expect(meet.plunge).toBeGreaterThanOrEqual(0)
    }), { seed: 3 })
  })
  it('an upright plane cut by a level one gives a level line, rake 0 or 180 in both', () => {
    const meet = planeIntersection({ strike: 30, dip: 90 }, { strike: 0, dip: 0 })
    expect(meet.trend).toBeCloseTo(30, 12)
    expect(meet.plunge).toBe(0)
    expect(meet.rakeA).toBeCloseTo(0, 12)
    const turned = planeIntersection({ strike: 210, dip: 60 }, { strike: 0, dip: 0 })
    expect(turned.trend).toBeCloseTo(30, 12)
    expect(turned.rakeA).toBeCloseTo(180, 12)
  })
  it('is square to both normals and runs straight down the common dip of planes that share a strike line', () => {
    const meet = planeIntersection({ strike: 0, dip: 90 }, { strike: 90, dip: 90 })
    expect(meet.plunge).toBeCloseTo(90, 12)
    expect(meet.rakeA).toBeCloseTo(90, 12)
  })
  it('refuses parallel planes and one line given twice', () => {
    expect(() => planeIntersection({ strike: 40, dip: 60 }, { strike: 40, dip: 60 })).toThrow(DegenerateError)
    expect(() => trueDip({ trend: 40, plunge: 20 }, { trend: 40, plunge: 20 })).toThrow('parallel')
    expect(() => trueDip({ trend: 40, plunge: NaN }, { trend: 40, plunge: 20 })).toThrow('apparent[0].plunge')
  })
})

describe('vein frame', () => {
  it('takes grid points to the vein and back', () => {
    fc.assert(fc.property(strike, dip, point, point, (s, d, origin, p) => {
      const frame = veinFrame({ strike: s, dip: d }, origin)
      const told = frame.toVein(p)
      const back = frame.toGrid(told, told.off)
      back.forEach((v, i) => { expect(Math.abs(v - p[i]!)).toBeLessThan(1e-10) })
      const distance = Math.hypot(p[0] - origin[0], p[1] - origin[1], p[2] - origin[2])
      expect(Math.hypot(told.along, told.down, told.off)).toBeCloseTo(distance, 9)
    }), { seed: 4 })
  })
  it('down is down, along is along the strike, off is towards the hanging wall', () => {
    const frame = veinFrame({ strike: 90, dip: 60 }, [100, 200, 300])
    const down = frame.toGrid({ along: 0, down: 10 })
    expect(down[2]).toBeCloseTo(300 - 10 * Math.sin(Math.PI / 3), 12)
    expect(down[1]).toBeCloseTo(195, 12) // dips south
    expect(frame.toGrid({ along: 10, down: 0 })[0]).toBeCloseTo(110, 12)
    expect(frame.toVein([100, 200, 301]).off).toBeCloseTo(0.5, 12)
  })
})
