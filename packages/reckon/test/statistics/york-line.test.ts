import { describe, expect, it } from 'vitest'
import { DegenerateError, InputError } from '../../src/core/index.ts'
import { lineSd, yorkLine } from '../../src/statistics/index.ts'
import type { DoubtfulPoint } from '../../src/statistics/index.ts'

/** Pearson's data with York's weights (M: York 1966; the solution as in York et al., Am. J. Phys. 72, 2004, 367). */
const pearson: readonly DoubtfulPoint[] = ([
  [0, 5.9, 1000, 1], [0.9, 5.4, 1000, 1.8], [1.8, 4.4, 500, 4], [2.6, 4.6, 800, 8], [3.3, 3.5, 200, 20],
  [4.4, 3.7, 80, 20], [5.2, 2.8, 60, 70], [6.1, 2.8, 20, 70], [6.5, 2.4, 1.8, 100], [7.4, 1.5, 1, 500],
] as const).map(([x, y, wx, wy]) => ({ x, y, sx: 1 / Math.sqrt(wx), sy: 1 / Math.sqrt(wy) }))

const turned = (points: readonly DoubtfulPoint[]): DoubtfulPoint[] => points.map(({ x, y, sx, sy }) => ({ x: y, y: x, sx: sy, sy: sx }))

describe('the line through points in doubt both ways', () => {
  // M: a = 5.47991022, b = -0.480533407, sigma_a = 0.29497, sigma_b = 0.05799, S/(n-2) = 1.4832
  it('[YL1] gives the known solution of Pearson\'s data with York\'s weights', () => {
    const line = yorkLine(pearson)
    expect(line.intercept).toBeCloseTo(5.47991022, 7)
    expect(line.slope).toBeCloseTo(-0.480533407, 8)
    expect(line.interceptSd).toBeCloseTo(0.29497, 4)
    expect(line.slopeSd).toBeCloseTo(0.05799, 4)
    expect(line.misfit).toBeCloseTo(1.4832, 3)
  })

  it('[YL2] does not care which of the two is called x', () => {
    const one = yorkLine(pearson), other = yorkLine(turned(pearson))
    expect(1 / other.slope).toBeCloseTo(one.slope, 9)
    expect(-other.intercept / other.slope).toBeCloseTo(one.intercept, 9)
  })

  it('[YL3] becomes weighted least squares when x is known exactly', () => {
    const points = [[1, 2.1, 0.1], [2, 3.9, 0.3], [3, 6.2, 0.2], [5, 9.7, 0.4]].map(([x, y, sy]) => ({ x: x!, y: y!, sx: 1e-9, sy: sy! }))
    const w = points.map(p => 1 / p.sy ** 2), sum = (f: (p: DoubtfulPoint, i: number) => number) => points.reduce((s, p, i) => s + w[i]! * f(p, i), 0)
    const mx = sum(p => p.x) / sum(() => 1), my = sum(p => p.y) / sum(() => 1)
    const slope = sum(p => (p.x - mx) * (p.y - my)) / sum(p => (p.x - mx) ** 2)
    const line = yorkLine(points)
    expect(line.slope).toBeCloseTo(slope, 9)
    expect(line.slopeSd).toBeCloseTo(1 / Math.sqrt(sum(p => (p.x - mx) ** 2)), 6)
    expect(line.interceptSd ** 2).toBeCloseTo(1 / sum(() => 1) + mx ** 2 * line.slopeSd ** 2, 5)
  })

  it('[YL4] goes through points that lie on a line, whatever their doubts; moving and stretching the data moves and stretches it', () => {
    const on = [0, 1, 4, 9].map((x, i) => ({ x, y: 2 - 0.7 * x, sx: 0.1 + i / 10, sy: 0.3 - i / 20 }))
    const line = yorkLine(on)
    expect(line.slope).toBeCloseTo(-0.7, 12)
    expect(line.intercept).toBeCloseTo(2, 12)
    expect(line.misfit).toBeCloseTo(0, 12)
    const moved = yorkLine(pearson.map(p => ({ ...p, x: 10 * p.x + 3, sx: 10 * p.sx })))
    expect(moved.slope).toBeCloseTo(yorkLine(pearson).slope / 10, 9)
  })

  it('[YL5] is surest at the middle of the points and leaves what it was given alone', () => {
    const frozen = Object.freeze(pearson.map(p => Object.freeze({ ...p })))
    const line = yorkLine(frozen)
    expect(line.middle.y).toBeCloseTo(line.intercept + line.slope * line.middle.x, 12)
    expect(lineSd(line, 0)).toBeCloseTo(line.interceptSd, 12)
    const at = -line.covariance / line.slopeSd ** 2
    expect(lineSd(line, at)).toBeLessThan(lineSd(line, at + 0.5))
    expect(lineSd(line, at)).toBeLessThan(lineSd(line, at - 0.5))
    expect(line.covariance).toBeLessThan(0)
  })

  it('[YL6] two points: the line through them, and no misfit', () => {
    const line = yorkLine([{ x: 1, y: 1, sx: 0.1, sy: 0.1 }, { x: 3, y: 5, sx: 0.1, sy: 0.1 }])
    expect(line.slope).toBeCloseTo(2, 12)
    expect(line.misfit).toBeUndefined()
  })

  it('[YL7] refuses what can be no line', () => {
    expect(() => yorkLine([])).toThrow(DegenerateError)
    expect(() => yorkLine([pearson[0]!])).toThrow('too few')
    expect(() => yorkLine([2, 3].map(y => ({ x: 1, y, sx: 1, sy: 1 })))).toThrow('all equal')
    expect(() => yorkLine([{ x: Number.NaN, y: 1, sx: 1, sy: 1 }, pearson[0]!])).toThrow('points[0].x')
    expect(() => yorkLine([{ x: 0, y: Infinity, sx: 1, sy: 1 }, pearson[0]!])).toThrow('points[0].y')
    for (const bad of [0, -1, Number.NaN, Infinity]) {
      expect(() => yorkLine([pearson[0]!, { x: 1, y: 1, sx: bad, sy: 1 }])).toThrow(InputError)
      expect(() => yorkLine([pearson[0]!, { x: 1, y: 1, sx: 1, sy: bad }])).toThrow('points[1].sy')
    }
  })
})
