import { describe, expect, it } from 'vitest'
import { drawsFrom } from '../../../src/core/index.ts'
import type { Enu, Matrix3 } from '../../../src/core/index.ts'
import { axesOf, grooveMean, markerBetween, markerWalls, normalCovariance } from '../../../src/structure/index.ts'
import { add, deepFreeze, dot, scaled } from './setting.ts'

const attitude = { strike: 350, dip: 80 }
const { strike, dip, normal } = axesOf(attitude)
const covariance = normalCovariance(attitude, { strike: 1.5, dip: 1.5 })
const none: Matrix3 = [[0, 0, 0], [0, 0, 0], [0, 0, 0]]
const at = (along: number, down: number, off: number): Enu => add(add(scaled(strike, along), scaled(dip, down)), scaled(normal, off))

describe('offset of a marker', () => {
  it('[MW1] between two known planes is the step between them along the normal', () => {
    const marker = markerBetween({ normal, point: [0, 0, 0], sigma: 0.3 }, { normal, point: at(12, -4, 5), sigma: 0.4 })
    expect(marker.looks[0]!.offset).toBeCloseTo(5, 12)
    expect(marker.looks[0]!.sigma).toBeCloseTo(0.5, 12)
    expect(dot(marker.looks[0]!.arm, strike)).toBeCloseTo(12, 12)
  })
  it('[MW2] of a thin marker is the difference of the means when the normal is known', () => {
    const near = [at(-20, 0, 0.1), at(-3, 1, -0.1)]
    const looks = markerWalls({ normal, covariance: none, near, far: [at(4, 0, 5.2), at(5, 0, 5.2)], sigma: 5 })
    const thin = looks.reduce((sum, look) => sum + look.chance * look.offset, 0)
    expect(Math.abs(thin - 5.2)).toBeLessThan(0.02)
  })
  it('[MW3] of a dyke seen on both walls is the same for both', () => {
    const near = [at(-22, 0, 0.65), at(-21, 0, -0.65), at(-3, 1, -0.65), at(-2, 1, 0.65)]
    const looks = markerWalls({ normal, covariance: none, near, far: [at(4, 0, 4.35), at(5, 0, 5.65)], sigma: 0.05 })
    expect(looks[0]!.offset).toBeCloseTo(5, 9)
    expect(looks[0]!.chance).toBeGreaterThan(0.99)
  })
  it('[MW4] of a dyke of which one wall was seen beyond can be read two ways, a thickness apart, about alike', () => {
    const near = [at(-22, 0, 0.65), at(-21, 0, -0.65), at(-3, 1, -0.65), at(-2, 1, 0.65)]
    const looks = markerWalls({ normal, covariance: none, near, far: [at(4, 0, 5)], sigma: 0.05 })
    const two = looks.slice(0, 2).map(look => look.offset).sort((a, b) => a - b)
    expect(two[0]!).toBeCloseTo(4.35, 9)
    expect(two[1]!).toBeCloseTo(5.65, 9)
    expect(Math.abs(looks[0]!.chance - looks[1]!.chance)).toBeLessThan(0.02)
  })
  it('[MW5] does not hang on the order of the places, nor change them', () => {
    const near = [at(-22, 0, 0.6), at(-21, 0, -0.7), at(-3, 1, -0.6), at(-2, 1, 0.8)]
    const far = [at(4, 0, 4.3), at(5, 0, 5.7)]
    const one = markerWalls(deepFreeze({ normal, covariance, near, far, sigma: 0.2 }))
    const other = markerWalls({ normal, covariance, near: [...near].reverse(), far: [...far].reverse(), sigma: 0.2 })
    one.forEach((look, i) => {
      expect(look.offset).toBeCloseTo(other[i]!.offset, 9)
      expect(look.chance).toBeCloseTo(other[i]!.chance, 9)
    })
    expect(one.reduce((sum, look) => sum + look.chance, 0)).toBeCloseTo(1, 12)
  })
  it('[MW6] with the marker told by its other normal is the same the other way round', () => {
    const near = [at(-22, 0, 0.6), at(-3, 1, -0.6)], far = [at(4, 0, 4.3)]
    const one = markerWalls({ normal, covariance, near, far, sigma: 0.2 })
    const other = markerWalls({ normal: scaled(normal, -1), covariance, near, far, sigma: 0.2 })
    const mean = (looks: typeof one) => looks.reduce((sum, look) => sum + look.chance * look.offset, 0)
    expect(mean(other)).toBeCloseTo(-mean(one), 9)
  })
  it('[MW7] holds the planted offset of a dyke in its 80 % range about 80 % of the time', () => {
    const draws = drawsFrom(3)
    const trials = 200
    let held = 0
    for (let trial = 0; trial < trials; trial++) {
      // The dyke is not quite as it was read: 1.5 degrees off either way.
      const read = add(normal, add(scaled(strike, 0.026 * draws.normal()), scaled(dip, 0.026 * draws.normal())))
      const unit = scaled(read, 1 / Math.hypot(...read))
      const seen = (along: number, off: number) => at(along, draws.normal(), off + 0.3 * draws.normal())
      const near = [seen(-25, 0.65), seen(-25, -0.65), seen(-3, 0.65), seen(-3, -0.65)]
      const looks = markerWalls({ normal: unit, covariance, near, far: [seen(4, 5.65), seen(4, 4.35)], sigma: 0.3 })
      const outcomes = Array.from({ length: 400 }, () => {
        let u = draws.uniform()
        const look = looks.find(l => (u -= l.chance) < 0) ?? looks.at(-1)!
        const turning = look.covariance!.reduce((sum, row, j) => sum + look.arm[j]! * dot(row, look.arm), 0)
        return look.offset + Math.sqrt(turning) * draws.normal() + look.sigma * draws.normal()
      }).sort((a, b) => a - b)
      if (outcomes[40]! <= 5 && outcomes[360]! >= 5) held++
    }
    expect(held / trials).toBeGreaterThan(0.8 - 3 * Math.sqrt(0.16 / trials))
    expect(held / trials).toBeLessThan(0.8 + 3 * Math.sqrt(0.16 / trials))
  })
  it('[MW8] wants a place on each side, and finite numbers', () => {
    expect(() => markerWalls({ normal, covariance, near: [], far: [[0, 0, 0]], sigma: 1 })).toThrow('too few')
    expect(() => markerWalls({ normal, covariance, near: [[0, 0, 0]], far: [], sigma: 1 })).toThrow('far')
    expect(() => markerWalls({ normal, covariance, near: [[0, Number.NaN, 0]], far: [[0, 0, 0]], sigma: 1 })).toThrow('near[0][1]')
    expect(() => markerWalls({ normal, covariance, near: [[0, 0, 0]], far: [[0, 0, 0]], sigma: 0 })).toThrow('sigma')
  })
  it('[MW9] stands coincident, collinear and huge places', () => {
    for (const scale of [1e-6, 1, 1e7]) {
      const places = [at(0, 0, 0), at(0, 0, 0), at(1, 0, 0), at(2, 0, 0)].map(p => scaled(p, scale))
      const looks = markerWalls({ normal, covariance, near: places, far: [scaled(at(3, 0, 1), scale)], sigma: 0.1 * scale })
      expect(looks[0]!.offset / scale).toBeCloseTo(1, 1)
    }
  })
  it('[MW10] takes many places in its stride: the nearest to the other side', () => {
    const near = Array.from({ length: 40 }, (_, i) => at(-1 - 10 * i, 0, i === 39 ? 50 : 0.1 * (i % 2)))
    const looks = markerWalls({ normal, covariance: none, near, far: [at(4, 0, 3), at(5, 0, 3.1)], sigma: 0.1 })
    expect(looks[0]!.offset).toBeCloseTo(3, 0)
  })
})

describe('mean of grooves', () => {
  it('[GM1] 179 and 1 average 0, and sense does not matter', () => {
    const mean = grooveMean([{ rake: 179, sigma: 5 }, { rake: 1, sigma: 5 }])
    expect(Math.abs(((mean.rake + 90) % 180) - 90)).toBeLessThan(1e-9)
    expect(grooveMean([{ rake: 30, sigma: 5 }, { rake: 215, sigma: 5 }]).rake).toBeCloseTo(32.5, 9)
  })
  it('[GM2] the doubt falls with the root of the number, and follows the scatter where that is worse', () => {
    expect(grooveMean([{ rake: 30, sigma: 6 }]).sigma).toBeCloseTo(6, 12)
    expect(grooveMean(Array.from({ length: 9 }, () => ({ rake: 30, sigma: 6 }))).sigma).toBeCloseTo(2, 12)
    const wild = grooveMean([{ rake: 10, sigma: 2 }, { rake: 30, sigma: 2 }, { rake: 50, sigma: 2 }])
    expect(wild.scatter).toBeCloseTo(20, 9)
    expect(wild.sigma).toBeCloseTo(20 / Math.sqrt(3), 9)
  })
  it('[GM3] refuses none, grooves that cancel out, and bad numbers', () => {
    expect(() => grooveMean([])).toThrow('too few')
    expect(() => grooveMean([{ rake: 0, sigma: 5 }, { rake: 90, sigma: 5 }])).toThrow('no mean direction')
    expect(() => grooveMean([{ rake: Number.NaN, sigma: 5 }])).toThrow('readings[0].rake')
    expect(() => grooveMean([{ rake: 1, sigma: 0 }])).toThrow('readings[0].sigma')
  })
})
