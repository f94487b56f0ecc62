import { afterEach, describe, expect, it, vi } from 'vitest'
import { krige } from '@lodebook/reckon/geostatistics'
import type { KrigeOptions, Point2, Sample, VariogramModel } from '@lodebook/reckon/geostatistics'
import { drawsFrom } from '@lodebook/reckon'
import { choleskyPlain, solveForward } from '../../src/geostatistics/linear/cholesky.ts'
import { choleskyBlocked } from '../../src/geostatistics/linear/cholesky-blocked.ts'
import { expNegative } from '../../src/geostatistics/linear/exp-negative.ts'
import { quadraticForm4, solveForward4 } from '../../src/geostatistics/linear/interleaved.ts'
import { inverseDiagonal } from '../../src/geostatistics/linear/inverse-diagonal.ts'
import { invertLower } from '../../src/geostatistics/linear/invert-lower.ts'
import { krigePlain, OneTarget } from '../../src/geostatistics/kriging/krige-plain.ts'
import { nearestPlain } from '../../src/geostatistics/kriging/nearest.ts'
import { NeighbourGrid } from '../../src/geostatistics/kriging/neighbour-grid.ts'
import { layOut } from '../../src/geostatistics/kriging/options.ts'
import { worst } from './reference.ts'

/** Same sums in another order, condition numbers up to about 1e4. */
const AGREE = 1e-9

function scatter(count: number, seed: number, side = 1000): Sample[] {
  const draws = drawsFrom(seed)
  return Array.from({ length: count }, (): Sample => [side * draws.uniform(), side * draws.uniform(), 5 + draws.normal()])
}

const targetsOver = (columns: number, rows: number, step: number): Point2[] =>
  Array.from({ length: columns * rows }, (_, k): Point2 => [-20 + step * (k % columns), -20 + step * Math.floor(k / columns)])

const spherical: VariogramModel = { nugget: 0.1, structures: [{ type: 'spherical', partialSill: 0.9, range: 180 }] }
const nested: VariogramModel = { nugget: 0.1, structures: [
  { type: 'exponential', partialSill: 0.5, range: 90, azimuth: 30, ratio: 0.5 }, { type: 'spherical', partialSill: 0.4, range: 300 }] }
const smooth: VariogramModel = { nugget: 0.01, structures: [{ type: 'gaussian', partialSill: 1, range: 60 }] }

afterEach(() => { vi.restoreAllMocks() })

describe('fast kriging against the plain one', () => {
  const kinds = ['simple', 'ordinary', 'universal'] as const
  const models = { spherical, nested, smooth }
  const everyCase = kinds.flatMap(kind => Object.keys(models).map(name => [kind, name as keyof typeof models] as const))
  it.each(everyCase)('[FP1] %s, %s: all samples and 12 and 32 neighbours, points and blocks, with error variances', (kind, name) => {
    const points = scatter(130, 3)
    const targets = [...targetsOver(24, 24, 45), [points[5]![0], points[5]![1]] as Point2]
    const errorVariance = points.map((_, i) => i % 4 === 0 ? 0.05 * (i % 7) : 0)
    for (const neighbours of [undefined, 12, 32]) {
      for (const block of [undefined, [60, 30] as const]) {
        const options: KrigeOptions = { kind, mean: 5, errorVariance, ...(neighbours !== undefined && { neighbours }), ...(block && { block }) }
        const plain = krigePlain(layOut(points, targets, models[name], options), false)
        // The plain way must have no part in the fast result.
        const taken = vi.spyOn(OneTarget.prototype, 'estimate')
        const fast = krige(points, targets, models[name], options)
        expect(taken).not.toHaveBeenCalled()
        vi.restoreAllMocks()
        expect(worst(fast.means, [...plain.means])).toBeLessThan(AGREE)
        expect(worst(fast.variances, [...plain.variances])).toBeLessThan(AGREE)
      }
    }
  })

  it('[FP2] dense and sparse targets, clustered samples, targets far outside, ties on a lattice', () => {
    const cases: [Sample[], Point2[], number][] = [
      [scatter(40, 1), targetsOver(80, 80, 12), 7],
      [scatter(900, 2), targetsOver(4, 4, 300), 32],
      [[...scatter(60, 4), ...scatter(60, 5, 1)], targetsOver(30, 30, 35), 16],
      [scatter(50, 6), [[5000, 5000], [-4000, 20], [500, 500]], 8],
      [targetsOver(12, 12, 50).map(([x, y], i): Sample => [x, y, i % 5]), targetsOver(24, 24, 25), 9],
      [Array.from({ length: 30 }, (_, i): Sample => [10 * i, 0, i % 4]), [[3, 0], [77, 0], [150, 20]], 5],
    ]
    for (const [points, targets, neighbours] of cases) {
      const plain = krigePlain(layOut(points, targets, spherical, { kind: 'ordinary', neighbours }), false)
      const fast = krige(points, targets, spherical, { kind: 'ordinary', neighbours })
      expect(worst(fast.means, [...plain.means])).toBeLessThan(AGREE)
      expect(worst(fast.variances, [...plain.variances])).toBeLessThan(AGREE)
    }
  })

  it('[FP3] a neighbourhood singular to working precision is handed to the plain way, and said', () => {
    const points = targetsOver(5, 5, 1).map(([x, y], i): Sample => [x, y, i % 3])
    const flat: VariogramModel = { nugget: 0, structures: [{ type: 'gaussian', partialSill: 1, range: 400 }] }
    for (const neighbours of [20, 25]) {
      const { means, variances, regularised } = krige(points, [[-18.5, -18.5], [-18.3, -18]], flat, { kind: 'ordinary', neighbours })
      expect(regularised).toBe(true)
      expect([...means, ...variances].every(Number.isFinite)).toBe(true)
    }
  })
})

describe('kernels', () => {
  const n = 157
  const points = scatter(n, 8)
  const covariance = (range: number) => Float64Array.from({ length: n * n }, (_, k) => {
    const [a, b] = [points[Math.floor(k / n)]!, points[k % n]!]
    return Math.exp(-Math.hypot(a[0] - b[0], a[1] - b[1]) / range) + (a === b ? 0.1 : 0)
  })

  it('[KE1] blocked Cholesky is the plain one, and finds the same singular rows', () => {
    const [plain, blocked] = [covariance(120), covariance(120)]
    expect([choleskyPlain(plain, n), choleskyBlocked(blocked, n)]).toEqual([-1, -1])
    for (let i = 0; i < n; i++) for (let j = 0; j <= i; j++) expect(Math.abs(plain[i * n + j]! - blocked[i * n + j]!)).toBeLessThan(1e-13)
    // Row 100 made a copy of row 30.
    const copy = covariance(120)
    for (let j = 0; j < n; j++) copy[100 * n + j] = copy[30 * n + j]!
    for (let i = 0; i < n; i++) copy[i * n + 100] = copy[i * n + 30]!
    expect([choleskyPlain(copy.slice(), n), choleskyBlocked(copy.slice(), n)]).toEqual([100, 100])
  })

  it('[KE2] four solves at once, quadratic forms and the inverse\'s diagonal are those of the plain solve', () => {
    const k = covariance(120)
    const l = k.slice()
    choleskyPlain(l, n)
    for (const size of [n, n - 1]) {
      const four = Float64Array.from({ length: 4 * size }, (_, i) => Math.sin(i))
      const single = [0, 1, 2, 3].map(r => Float64Array.from({ length: size }, (_, i) => four[4 * i + r]!))
      const out = new Float64Array(4)
      quadraticForm4(k, size, n, four, out)
      single.forEach((x, r) => {
        let sum = 0
        for (let i = 0; i < size; i++) for (let j = 0; j < size; j++) sum += x[i]! * k[Math.max(i, j) * n + Math.min(i, j)]! * x[j]!
        expect(Math.abs(out[r]! - sum)).toBeLessThan(1e-11 * Math.abs(sum) + 1e-11)
        solveForward(l, size, n, x)
      })
      solveForward4(l, size, n, four)
      single.forEach((x, r) => x.forEach((value, i) => expect(Math.abs(four[4 * i + r]! - value)).toBeLessThan(1e-12)))
    }
    const m = invertLower(l, n)
    inverseDiagonal(l, n).forEach((value, i) => {
      let sum = 0
      for (let j = i; j < n; j++) sum += m[j * n + i]! ** 2
      expect(Math.abs(value / sum - 1)).toBeLessThan(1e-12)
    })
  })

  it('[KE3] exp below zero: within 3e-16 relative of Math.exp from 0 to -700', () => {
    const draws = drawsFrom(12)
    expect(expNegative(0)).toBe(1)
    expect(expNegative(-0)).toBe(1)
    for (let i = 0; i < 20_000; i++) {
      const x = -(draws.uniform() ** 4) * 700
      expect(Math.abs(expNegative(x) / Math.exp(x) - 1)).toBeLessThan(3e-16)
    }
    expect([expNegative(-720), expNegative(-1e9), expNegative(-Infinity)].map(value => value < 1e-307)).toEqual([true, true, true])
  })

  it('[KE4] the grid finds the nearest that looking at all finds, ties and all, as points are added', () => {
    const lattice: Point2[] = [...targetsOver(9, 7, 10), ...scatter(40, 9, 60).map(([x, y]): Point2 => [x, y])]
    const [xs, ys] = [Float64Array.from(lattice, p => p[0]), Float64Array.from(lattice, p => p[1])]
    const grid = new NeighbourGrid(xs, ys)
    expect(grid.nearest(0, 0, 3)).toBe(0)
    lattice.forEach((_, added) => {
      grid.add(added)
      for (const [x, y] of [[0, 0], [15, 25], [-300, 12], [33.3, 41]] as const) {
        const found = grid.nearest(x, y, 6, added % 5)
        const expected = nearestPlain(xs.subarray(0, added + 1), ys.subarray(0, added + 1), x, y, 6, added % 5)
        expect([...grid.found.subarray(0, found)].sort((a, b) => a - b)).toEqual([...expected].sort((a, b) => a - b))
      }
    })
    const within = NeighbourGrid.of(xs, ys)
    const count = within.within(10, 10, 25)
    const inside = lattice.map((_, i) => i).filter(i => (xs[i]! - 10) ** 2 + (ys[i]! - 10) ** 2 <= 625)
    expect([...within.found.subarray(0, count)].sort((a, b) => a - b)).toEqual(inside)
  })
})
