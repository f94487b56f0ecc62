import { describe, expect, it } from 'vitest'
import { experimentalVariogram, simulate, variogramCloud, variogramMap } from '@lodebook/reckon/geostatistics'
import type { Point2, Sample } from '@lodebook/reckon/geostatistics'
import { logZinc } from './reference.ts'

describe('variogram cloud and map', () => {
  it('[VC1] the cloud is the variogram before it is binned', () => {
    const points = logZinc()
    const lags = experimentalVariogram(points, { cutoff: 900, width: 100 })
    const cloud = variogramCloud(points, 900)
    lags.forEach((lag, bin) => {
      const members = cloud.filter(pair => Math.ceil(pair.distance / 100) - 1 === bin)
      expect(members.length).toBe(lag.pairs)
      expect(members.reduce((sum, pair) => sum + pair.gamma, 0) / members.length).toBeCloseTo(lag.gamma, 12)
    })
    const { a, b, gamma } = cloud[17]!
    expect(gamma).toBeCloseTo(0.5 * (points[a]![2] - points[b]![2]) ** 2, 15)
    const fan = experimentalVariogram(points, { cutoff: 900, width: 900, azimuth: 30, tolerance: 20 })[0]!
    expect(cloud.filter(pair => Math.min(Math.abs(pair.azimuth - 30), Math.abs(pair.azimuth - 210)) <= 20).length).toBe(fan.pairs)
  })

  it('[VC2] the map is symmetric, counts every pair twice and shows the long axis', () => {
    const places = Array.from({ length: 900 }, (_, k): Point2 => [k % 30, Math.floor(k / 30)])
    const stretched = { nugget: 0, structures: [{ type: 'exponential' as const, partialSill: 1, range: 8, azimuth: 60, ratio: 0.25 }] }
    const values = simulate([], places, stretched, { realisations: 1, seed: 4 }).realisations[0]!
    const map = variogramMap(places.map(([x, y], i): Sample => [x, y, values[i]!]), 6, 1)
    const half = (map.side - 1) / 2
    const at = (dx: number, dy: number) => (half + dy) * map.side + half + dx
    expect(map.pairs[at(2, 1)]).toBe(28 * 29)
    expect(map.pairs[at(0, 0)]).toBe(0)
    for (const [dx, dy] of [[3, 1], [0, 4], [-5, 2]] as const) expect(map.gamma[at(dx, dy)]).toBe(map.gamma[at(-dx, -dy)])
    expect(map.gamma[at(5, 3)]!).toBeLessThan(0.7 * map.gamma[at(-3, 5)]!)
  })

  it('[VC3] no points, and bad input by its field', () => {
    expect(variogramCloud([], 1)).toEqual([])
    expect(variogramMap([], 3, 1).pairs.every(pairs => pairs === 0)).toBe(true)
    expect(() => variogramMap([], 1000, 1)).toThrow('cell')
    expect(() => variogramCloud([[0, NaN, 1]], 1)).toThrow('points[0][1]')
  })
})
