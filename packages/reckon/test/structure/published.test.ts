import { describe, expect, it } from 'vitest'
import { directionMean, faultOffset, lineOf, orientationTensor, slipMeasures, slipVector, trueDip, trueThickness, vectorOf } from '../../src/structure/index.ts'
import type { Enu } from '../../src/core/index.ts'

// Status of each value: V read in the source, M from memory, R recomputed from inputs that were read.

describe('true dip from two apparent dips', () => {
  // V: structural geology notebook with Bennison et al. (2011) problems; printed to 0.1 degree
  it.each([
    ['walls 002 with 40 N and 135 with 30 SE', { trend: 2, plunge: 40 }, { trend: 135, plunge: 30 }, 333.9, 60.7],
    ['a line 300/40 and a level trace 088', { trend: 300, plunge: 40 }, { trend: 88, plunge: 0 }, 268.0, 57.7],
  ])('V: %s', (_, a, b, strike, dip) => {
    const plane = trueDip(a, b)
    expect(Math.abs(plane.strike - strike)).toBeLessThanOrEqual(0.05)
    expect(Math.abs(plane.dip - dip)).toBeLessThanOrEqual(0.05)
  })
  it('obeys tan(apparent) = tan(true) sin(angle from strike)', () => {
    const [strike, dip] = [40, 62]
    const lines = [75, 100].map(trend => ({
      trend, plunge: Math.atan(Math.tan(dip * Math.PI / 180) * Math.sin((trend - strike) * Math.PI / 180)) * 180 / Math.PI }))
    const plane = trueDip(lines[0]!, lines[1]!)
    expect(plane.strike).toBeCloseTo(strike, 11)
    expect(plane.dip).toBeCloseTo(dip, 11)
  })
})

describe('true thickness', () => {
  // V: Bennison et al. (2011), strike 84.5, dip 22.5; metres printed to 0.1
  const points: Enu[] = [[1147, 3329, 400], [1323, 2362, 500], [1105, 1850, 400], [1768, 940, 300], [1842, 191, 200]]
  it.each([[0, 467.2], [1, 94.6], [2, 278.6], [3, 195.6]])('V: between points %i and the next', (i, thickness) => {
    expect(Math.abs(trueThickness({ strike: 84.5, dip: 22.5 }, points[i]!, points[i + 1]!) - thickness)).toBeLessThanOrEqual(0.05)
  })
})

describe('fault slip', () => {
  // V: Halliday, Resnick and Walker, rock-fault vector problem
  it('V: strike slip 22.0 m with dip slip 17.0 m is a net slip of 27.8 m; on a fault dipping 52 the throw is 13.4 m', () => {
    const fault = { strike: 0, dip: 52 }
    const measures = slipMeasures(fault, slipVector(fault, { alongStrike: 22, downDip: 17 }))
    expect(Math.abs(measures.net - 27.8)).toBeLessThanOrEqual(0.05)
    expect(Math.abs(measures.throw - 13.4)).toBeLessThanOrEqual(0.05)
  })
  it('V: a dip separation of 6 m plunging 60 has a heave of 3 m; R: and a throw of 5.196 m', () => {
    const fault = { strike: 130, dip: 60 }
    const measures = slipMeasures(fault, slipVector(fault, { alongStrike: 0, downDip: 6 }))
    expect(measures.heave).toBeCloseTo(3, 12)
    expect(measures.throw).toBeCloseTo(5.196, 3)
  })
})

// V: Fisher, Lewis and Embleton, Statistical Analysis of Spherical Data, set B2 (p. 279), results pp. 130-132
const declination = [
  122.5, 130.5, 132.5, 148.5, 140.0, 133.0, 157.5, 153.0, 140.0, 147.5, 142.0, 163.5, 141.0, 156.0, 139.5, 153.5, 151.5, 147.5, 141.0, 143.5, 131.5,
  147.5, 147.0, 149.0, 144.0, 139.5,
]
const inclination = [
  55.5, 58.0, 44.0, 56.0, 63.0, 64.5, 53.0, 44.5, 61.5, 54.5, 51.0, 56.0, 59.5, 56.5, 54.0, 47.5, 61.0, 58.5, 57.0, 67.5, 62.5, 63.5, 55.5, 62.0,
  53.5, 58.0,
]
const setB2 = declination.map((trend, i) => ({ trend, plunge: inclination[i]! }))

describe('directions, set B2 of Fisher, Lewis and Embleton', () => {
  it('V: 26 directions, mean 144.2/57.2, concentration 109, 95 % cone 2.7 degrees', () => {
    const mean = directionMean(setB2)
    expect(mean.count).toBe(26)
    expect(Math.abs(mean.trend - 144.2)).toBeLessThanOrEqual(0.05)
    expect(Math.abs(mean.plunge - 57.2)).toBeLessThanOrEqual(0.05)
    expect(Math.abs(mean.kappa - 109)).toBeLessThanOrEqual(0.5)
    expect(Math.abs(mean.alpha95 - 2.7)).toBeLessThanOrEqual(0.05)
  })
  it('R: resultant 25.77050, concentration 108.93, exact cone 2.729 and not the approximate 2.63', () => {
    const mean = directionMean(setB2)
    expect(mean.resultant).toBeCloseTo(25.7705, 5)
    expect(mean.kappa).toBeCloseTo(108.93, 2)
    expect(mean.alpha95).toBeCloseTo(2.729, 3)
    expect(140 / Math.sqrt(mean.kappa * 26)).toBeCloseTo(2.63, 2)
  })
  it('R: eigenvalues 0.982506, 0.010394, 0.007101; first axis 144.20/57.22; Woodcock 11.94 and 4.930; Vollmer 0.9721, 0.0066, 0.0213', () => {
    const { eigenvalues, axes, woodcock, vollmer } = orientationTensor(setB2)
    const expected = [0.982506, 0.010394, 0.007101]
    eigenvalues.forEach((value, i) => { expect(value).toBeCloseTo(expected[i]!, 6) })
    expect(axes[0].trend).toBeCloseTo(144.20, 2)
    expect(axes[0].plunge).toBeCloseTo(57.22, 2)
    expect(woodcock!.K).toBeCloseTo(11.94, 2)
    expect(woodcock!.C).toBeCloseTo(4.930, 3)
    expect([vollmer.point, vollmer.girdle, vollmer.random].map(v => Number(v.toFixed(4)))).toEqual([0.9721, 0.0066, 0.0213])
  })
})

describe('direction cosines', () => {
  // V: structural geology notebook; printed as north, east, down
  it.each([
    [252, 45, [-0.21850801, -0.67249851, 0.70710678]],
    [295, 36, [0.34190536, -0.7332184, 0.58778525]],
    [144, 67, [-0.31610812, 0.22966599, 0.92050485]],
    [44, 23, [0.66215578, 0.6394364, 0.39073113]],
  ])('V: %i/%i', (trend, plunge, [north, east, down]) => {
    const vector = vectorOf({ trend, plunge })
    expect(vector[0]).toBeCloseTo(east!, 7)
    expect(vector[1]).toBeCloseTo(north!, 7)
    expect(-vector[2]).toBeCloseTo(down!, 7)
    expect(lineOf(vector).trend).toBeCloseTo(trend, 10)
    expect(lineOf(vector).plunge).toBeCloseTo(plunge, 10)
  })
})

describe('the lost vein: invariants, there being no published numbers', () => {
  const vein = { strike: 23, dip: 71, point: [10, 20, 5] as Enu }
  const fault = { strike: 301, dip: 58, point: [14, 26, 5] as Enu }
  it('slip along the cut-off line displaces nothing', () => {
    const { cutoffLine } = faultOffset(vein, fault, [1, 1, 1])
    const slip = vectorOf(cutoffLine).map(v => v * 40) as unknown as Enu
    const offset = faultOffset(vein, fault, slip)
    expect(offset.onFault).toBeLessThan(1e-12)
    expect(Math.abs(offset.alongFaultStrike!)).toBeLessThan(1e-12)
  })
  it('any movement along the cut-off line can be added and every separation stays: separation never determines slip', () => {
    const slip = slipVector(fault, { alongStrike: 7, downDip: 3 })
    const one = faultOffset(vein, fault, slip)
    const along = vectorOf(one.cutoffLine)
    const two = faultOffset(vein, fault, [slip[0] + 25 * along[0], slip[1] + 25 * along[1], slip[2] + 25 * along[2]])
    expect(two.alongFaultStrike).toBeCloseTo(one.alongFaultStrike!, 10)
    expect(two.downFaultDip).toBeCloseTo(one.downFaultDip!, 10)
    expect(two.onFault).toBeCloseTo(one.onFault, 10)
  })
  it('two markers that are not parallel do determine it', () => {
    const slip = slipVector(fault, { alongStrike: -6, downDip: 11 })
    const [a, b] = [faultOffset(vein, fault, slip), faultOffset({ ...vein, strike: 110, dip: 35 }, fault, slip)]
    // Each separation says slip . m = |v| for its own direction m in the fault; two such directions give the two parts.
    const rows = [a, b].map((o) => {
      const size = Math.hypot(...o.onFaultVector)
      const m = o.onFaultVector.map(v => v / size) as unknown as Enu
      const parts = slipMeasures(fault, m)
      return [parts.alongStrike, parts.downDip, size] as const
    })
    const [[p, q, r], [s, t, u]] = rows as [readonly [number, number, number], readonly [number, number, number]]
    const determinant = p * t - q * s
    expect((r * t - q * u) / determinant).toBeCloseTo(-6, 10)
    expect((p * u - r * s) / determinant).toBeCloseTo(11, 10)
  })
})
