import { describe, expect, it } from 'vitest'
import { DegenerateError, drawsFrom } from '../../src/core/index.ts'
import type { Enu } from '../../src/core/index.ts'
import { angleBetween, fitPlane, fitVeinPlane, normalOf, attitudeOf, veinFrame } from '../../src/structure/index.ts'

const truth = { strike: 312, dip: 64 }
const frame = veinFrame(truth, [50, 20, 1400])
const along = (n: number, off: () => number = () => 0) => Array.from({ length: n }, (_, i) => ({ at: frame.toGrid({ along: i * 3, down: 0 }, off()) }))

describe('fitVeinPlane', () => {
  it('one point and one reading give the reading, through the point', () => {
    const plane = fitVeinPlane({ points: [{ at: [1, 2, 3] }], readings: [truth] })
    expect(angleBetween(plane, truth)).toBeLessThan(1e-9)
    expect(plane.centroid).toEqual([1, 2, 3])
    expect(plane.doubt!.pole).toBeCloseTo(3 * Math.SQRT2, 1)
  })
  it('points along one drift leave the dip to the readings, and give the strike', () => {
    const plane = fitVeinPlane({ points: along(8), readings: [{ strike: 318, dip: 60 }, { strike: 309, dip: 66 }, { strike: 311, dip: 69 }] })
    expect(Math.abs(plane.strike - truth.strike)).toBeLessThan(1)
    expect(plane.doubt!.strike).toBeLessThan(1)
    expect(plane.dip).toBeGreaterThan(62)
    expect(plane.dip).toBeLessThan(68)
    expect(plane.doubt!.dip).toBeGreaterThan(1)
  })
  it('without readings it is the fit of the points', () => {
    const points = [[0, 0], [9, 1], [4, 7], [12, 6]].map(([a, d], i) => frame.toGrid({ along: a!, down: d! }, i % 2 * 0.02))
    const [vein, plain] = [fitVeinPlane({ points: points.map(at => ({ at })), readings: [] }), fitPlane(points)]
    expect(angleBetween(vein, plain)).toBeLessThan(1e-6)
  })
  it('readings either side of upright and across north are averaged as planes, not as numbers', () => {
    const plane = fitVeinPlane({ points: [{ at: [0, 0, 0] }], readings: [{ strike: 359, dip: 89 }, { strike: 181, dip: 89 }] })
    expect(angleBetween(plane, { strike: 0, dip: 90 })).toBeLessThan(1e-6)
  })
  it('a careless reading, stated as such, pulls less', () => {
    const points = [{ at: [0, 0, 0] as Enu }]
    const even = fitVeinPlane({ points, readings: [{ strike: 0, dip: 60, sigma: 3 }, { strike: 0, dip: 72, sigma: 3 }] })
    const stated = fitVeinPlane({ points, readings: [{ strike: 0, dip: 60, sigma: 1 }, { strike: 0, dip: 72, sigma: 15 }] })
    expect(even.dip).toBeCloseTo(66, 6)
    expect(stated.dip).toBeLessThan(62)
  })
  it('finds how much the vein swings: 0.3 m and 8 degrees put in, about as much found', () => {
    const draws = drawsFrom(5)
    const [swings, uneven]: [number[], number[]] = [[], []]
    for (let k = 0; k < 60; k++) {
      const points = Array.from({ length: 20 }, () => ({ at: frame.toGrid({ along: 40 * draws.uniform(), down: 10 * draws.uniform() }, 0.3 * draws.normal()) }))
      const turn = 8 * Math.PI / 180
      const readings = Array.from({ length: 15 }, () => {
        const n = normalOf(truth)
        return attitudeOf([n[0] + turn * draws.normal(), n[1] + turn * draws.normal(), n[2] + turn * draws.normal()])
      })
      const vein = fitVeinPlane({ points, readings })
      swings.push(vein.swing ** 2 + 9)
      uneven.push(vein.unevenness ** 2 + 0.05 ** 2)
    }
    const mean = (v: number[]) => Math.sqrt(v.reduce((a, b) => a + b, 0) / v.length)
    expect(Math.abs(mean(swings) - 8)).toBeLessThan(0.6)
    expect(Math.abs(mean(uneven) - 0.3)).toBeLessThan(0.02)
  })
  it('the stated doubt matches the scatter of many repeats', () => {
    const draws = drawsFrom(17)
    let [strikeSquares, dipSquares, strikeTold, dipTold] = [0, 0, 0, 0]
    const repeats = 400
    for (let k = 0; k < repeats; k++) {
      const points = Array.from({ length: 10 }, (_, i) => ({ at: frame.toGrid({ along: i * 3, down: 1.5 * draws.uniform() }, 0.15 * draws.normal()) }))
      const readings = Array.from({ length: 6 }, () => ({
        strike: truth.strike + 5 / Math.sin(64 * Math.PI / 180) * draws.normal(), dip: Math.min(90, truth.dip + 5 * draws.normal()) }))
      const vein = fitVeinPlane({ points, readings })
      strikeSquares += (vein.strike - truth.strike) ** 2
      dipSquares += (vein.dip - truth.dip) ** 2
      strikeTold += vein.doubt!.strike ** 2
      dipTold += vein.doubt!.dip ** 2
    }
    expect(Math.sqrt(strikeSquares / strikeTold)).toBeGreaterThan(0.85)
    expect(Math.sqrt(strikeSquares / strikeTold)).toBeLessThan(1.25)
    expect(Math.sqrt(dipSquares / dipTold)).toBeGreaterThan(0.85)
    expect(Math.sqrt(dipSquares / dipTold)).toBeLessThan(1.25)
  })
  it('points out the reading that does not fit', () => {
    const readings = [310, 313, 312, 311, 314].map(strike => ({ strike, dip: 64 }))
    const vein = fitVeinPlane({ points: along(5), readings: [...readings, { strike: 345, dip: 64 }] })
    expect(vein.readingTimes.indexOf(Math.max(...vein.readingTimes))).toBe(5)
    expect(vein.readingAngles[5]).toBeGreaterThan(20)
  })
  it('refuses nothing to fit, a line of points without a reading, and nonsense', () => {
    expect(() => fitVeinPlane({ points: [], readings: [truth] })).toThrow(DegenerateError)
    expect(() => fitVeinPlane({ points: along(2), readings: [] })).toThrow('too few')
    expect(() => fitVeinPlane({ points: along(5), readings: [] })).toThrow('collinear')
    expect(() => fitVeinPlane({ points: along(3), readings: [{ strike: 10, dip: 95 }] })).toThrow('readings[0].dip')
    expect(() => fitVeinPlane({ points: along(3), readings: [{ strike: 10, dip: 45, sigma: 0 }] })).toThrow('readings[0].sigma')
    expect(() => fitVeinPlane({ points: [{ at: [0, 0, 0], covariance: [[1, 2], [2, 1]] }], readings: [truth] })).toThrow('points[0].covariance')
  })
  it('leaves what it was given as it was', () => {
    const observations = { points: along(4), readings: [truth] }
    const before = JSON.stringify(observations)
    Object.freeze(observations.points)
    fitVeinPlane(observations)
    expect(JSON.stringify(observations)).toBe(before)
  })
})
