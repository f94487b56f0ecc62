import { describe, expect, it } from 'vitest'
import { pointLoadBands, ratingFromQuality, ratingIn, rmrClasses, rockMassRating, rockQuality, unsupportedSpan } from '../../src/ground/index.ts'

describe('rock mass rating', () => {
  // Inputs V (Hoek, Practical Rock Engineering, chapter on classification, stored copy), total M: 12 + 13 + 10 + 22 + 7 - 5 = 59, fair
  it('granite drive: 59, fair', () => {
    const found = rockMassRating({ strengthRating: ratingIn(pointLoadBands, 8)!, rqd: 70, spacingM: 0.3, condition: 22, water: 'wet', orientation: 'fair' })
    expect(found.parts).toEqual({ strength: 12, rqd: 13, spacing: 10, condition: 22, water: 7, orientation: -5 })
    expect(found.total).toBe(59)
    expect(found.class.says).toBe('fair')
  })
  // M: bands row by row, both sides of each edge
  it.each([[250, 15], [249, 12], [100, 12], [99, 7], [50, 7], [49, 4], [25, 4], [24, 2], [5, 2], [4.9, 1]])('strength %f MPa: %i', (strengthMPa, rating) =>
    expect(rockMassRating({ strengthMPa, rqd: 90, spacingM: 1, condition: 30, water: 'dry', orientation: 'fair' }).parts.strength).toBe(rating))
  it.each([[100, 20], [90, 20], [89, 17], [75, 17], [74, 13], [50, 13], [49, 8], [25, 8], [24, 3]])('RQD %f: %i', (rqd, rating) =>
    expect(rockMassRating({ strengthMPa: 100, rqd, spacingM: 1, condition: 30, water: 'dry', orientation: 'fair' }).parts.rqd).toBe(rating))
  it.each([[2, 20], [1.9, 15], [0.6, 15], [0.5, 10], [0.2, 10], [0.19, 8], [0.06, 8], [0.05, 5]])('spacing %f m: %i', (spacingM, rating) =>
    expect(rockMassRating({ strengthMPa: 100, rqd: 90, spacingM, condition: 30, water: 'dry', orientation: 'fair' }).parts.spacing).toBe(rating))
  // M: I 20 y / 15 m, II 1 y / 10 m, III 1 wk / 5 m, IV 10 h / 2.5 m, V 30 min / 1 m
  it('spans and stand-up times by class', () => expect(rmrClasses.map(c => [c.spanM, c.standUpHours])).toEqual([[15, 175_320], [10, 8766], [5, 168], [2.5, 10], [1, 0.5]]))
  it.each([[{ rqd: 101 }, /rqd/], [{ spacingM: -1 }, /spacing/], [{ strengthMPa: NaN }, /strength/], [{ condition: 31 }, /condition/]])('refuses %j', (part, field) =>
    expect(() => rockMassRating({ strengthMPa: 100, rqd: 70, spacingM: 0.3, condition: 20, water: 'dry', orientation: 'fair', ...part })).toThrow(field))
})

describe('rock mass quality', () => {
  // V: best and worst of the scale (Barton, lecture): 100/0.5 x 4/0.75 x 1/1, and 10/20 x 1/8 x 0.5/20
  it('extremes', () => {
    expect(rockQuality({ rqd: 100, jn: 0.5, jr: 4, ja: 0.75, jw: 1, srf: 1 })).toBeCloseTo(1066.67, 2)
    expect(rockQuality({ rqd: 10, jn: 20, jr: 1, ja: 8, jw: 0.5, srf: 20 })).toBeCloseTo(0.0015625, 9)
    expect(rockQuality({ rqd: 3, jn: 20, jr: 1, ja: 8, jw: 0.5, srf: 20 })).toBeCloseTo(0.0015625, 9)
  })
  // M: Hoek, crusher chamber in norite: Q 4.5; R: widest unsupported span at ESR 1.6 5.84 m
  it('crusher chamber: 4.5, span 5.84 m', () => {
    const q = rockQuality({ rqd: 90, jn: 4, jr: 3, ja: 1, jw: 1, srf: 15 })
    expect(q).toBeCloseTo(4.5, 12)
    expect(unsupportedSpan(q, 1.6)).toBeCloseTo(5.84, 2)
  })
  // V-part: tutorial (scribd 605497152), R: 435.5 m of 500: RQD 87.1; Q x SRF 58.07
  it('tutorial: Q SRF = 58.07', () => expect(rockQuality({ rqd: 87.1, jn: 4, jr: 2, ja: 0.75, jw: 1, srf: 1 })).toBeCloseTo(58.07, 2))
  // R: 2 ESR Q^0.4 at ESR 1.6
  it.each([[0.1, 1.27], [1, 3.2], [4, 5.57], [10, 8.04], [40, 14]])('Q %f: %f m', (q, span) => expect(Math.abs(unsupportedSpan(q, 1.6) - span)).toBeLessThan(0.005))
  // V: Palmstrom 2008: RMR = 9 ln Q + 44
  it.each([[1, 44], [4.5, 57.5], [10, 64.7]])('Q %f: RMR %f', (q, rmr) => expect(Math.abs(ratingFromQuality(q) - rmr)).toBeLessThan(0.05))
  it('refuses what can\'t be', () => expect(() => rockQuality({ rqd: 50, jn: 0, jr: 1, ja: 1, jw: 1, srf: 1 })).toThrow(/jn/))
})
