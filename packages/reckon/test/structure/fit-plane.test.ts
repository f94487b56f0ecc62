import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { angleBetween, axesOf, fitPlane, planeSigmaAt, planeThrough, veinFrame } from '../../src/structure/index.ts'
import { DegenerateError, drawsFrom, InputError } from '../../src/core/index.ts'
import type { Enu, Matrix3 } from '../../src/core/index.ts'

const frozen = (points: Enu[]): readonly Enu[] => Object.freeze(points.map(p => Object.freeze([...p]) as unknown as Enu))
const square: readonly Enu[] = frozen([[0, 0, 0], [10, 0, -10], [0, 10, 0], [10, 10, -10]])
const isotropic = (v: number): Matrix3 => [[v, 0, 0], [0, v, 0], [0, 0, v]]

describe('fitPlane', () => {
  it('a plane falling east at 45 degrees: strike 0, dip 45, dip direction 90', () => {
    const plane = fitPlane(square)
    expect(plane.strike).toBeCloseTo(0, 12)
    expect(plane.dip).toBeCloseTo(45, 12)
    expect(plane.dipDirection).toBeCloseTo(90, 12)
    expect(plane.rms).toBeLessThan(1e-14)
    expect(plane.centroid).toEqual([5, 5, -5])
  })
  it('three points give exactly their plane, and no doubt to speak of', () => {
    const plane = planeThrough([[0, 0, 0], [100, 0, 0], [0, 100, -100]])
    expect(plane.strike).toBeCloseTo(270, 12) // falls north
    expect(plane.dip).toBeCloseTo(45, 12)
    expect(plane.doubt).toBeUndefined()
    expect(plane.freedom).toBe(0)
  })
  it('turns with the points, does not mind where they are or how large', () => {
    fc.assert(fc.property(fc.double({ min: 0, max: 359, noNaN: true }), fc.double({ min: 1, max: 89, noNaN: true }), fc.constantFrom(1e-9, 1, 1e9),
      (strike, dip, scale) => {
        const frame = veinFrame({ strike, dip }, [3 * scale, -2 * scale, scale])
        const points = [[0, 0], [7, 1], [2, 9], [-5, 4], [-3, -8]].map(([along, down]) => frame.toGrid({ along: along! * scale, down: down! * scale }))
        const plane = fitPlane(points)
        expect(angleBetween(plane, { strike, dip })).toBeLessThan(1e-11)
        expect(plane.rms).toBeLessThan(1e-14 * scale)
      }), { seed: 5 })
  })
  it('is not a regression of height: an upright plane fits as well as a level one', () => {
    const upright = fitPlane([[0, 0, 0], [0, 10, 0], [0.1, 5, 10], [-0.1, 2, 7]])
    expect(upright.dip).toBeGreaterThan(88)
    const level = fitPlane([[0, 0, 5], [10, 0, 5], [0, 10, 5], [9, 9, 5]])
    expect(level.dip).toBeLessThan(1e-12)
    expect(level.strike).toBe(0)
  })
  it('has the least sum of squares of all planes near it', () => {
    const draws = drawsFrom(42)
    const points: Enu[] = Array.from({ length: 12 }, () => [draws.uniform() * 20, draws.uniform() * 20, draws.uniform() * 2])
    const best = fitPlane(points)
    const off = (p: Enu, n: Enu) => n.reduce((sum, v, i) => sum + v * (p[i]! - best.centroid[i]!), 0)
    const squares = (n: Enu) => points.reduce((sum, p) => sum + off(p, n) ** 2, 0)
    const least = squares(best.normal)
    expect(Math.sqrt(least / 12)).toBeCloseTo(best.rms, 12)
    for (const [ds, dd] of [[1, 0], [-1, 0], [0, 1], [0, -1]] as const) {
      expect(squares(axesOf({ strike: best.strike + ds * 0.5, dip: best.dip + dd * 0.5 }).normal)).toBeGreaterThan(least)
    }
  })
  it('keeps its digits far from the origin, as grid coordinates are', () => {
    const far = square.map(([e, n, u]): Enu => [e + 512_345, n + 4_987_654, u + 1_234])
    expect(angleBetween(fitPlane(far), { strike: 0, dip: 45 })).toBeLessThan(1e-7)
  })
  it('refuses what does not determine a plane, each by its own name', () => {
    const reason = (points: readonly Enu[]) => {
      try { fitPlane(points) } catch (error) { return error instanceof DegenerateError ? error.reason : error }
      return 'fitted'
    }
    expect(reason([])).toBe('too few')
    expect(reason([[1, 2, 3]])).toBe('too few')
    expect(reason([[1, 0, 0], [-1, 0, 0], [0, 1, 0], [0, -1, 0], [0, 0, 1], [0, 0, -1]])).toBe('no preferred plane')
    expect(reason([[5, 5, 5], [5, 5, 5], [5, 5, 5]])).toBe('coincident')
    expect(reason([[0, 0, 0], [1, 1, 1], [2, 2, 2], [7, 7, 7]])).toBe('collinear')
    expect(reason([[500_000.1, 4e6, 3], [500_000.2, 4e6 + 0.1, 3.1], [500_000.3, 4e6 + 0.2, 3.2]])).toBe('collinear')
    expect(reason([[0, 0, 0], [1e-200, 0, 0], [0, 1e-200, 0]])).toBe('fitted')
    expect(reason([[0, 0, 0], [1e150, 0, 0], [0, 1e150, 0]])).toBe('fitted')
    expect(() => fitPlane([[0, 0, 0], [1, NaN, 0], [0, 1, 0]])).toThrow('points[1][1]')
    expect(() => fitPlane(square, { covariances: [] })).toThrow(InputError)
    expect(() => fitPlane(square, { covariances: square.map(() => isotropic(0)) })).toThrow('variance above zero')
  })
  it('a thin strip of points, a million times longer than wide, is still a plane', () => {
    const frame = veinFrame({ strike: 200, dip: 35 }, [0, 0, 0])
    const strip = [0, 1, 2, 3, 4, 5].map(i => frame.toGrid({ along: i * 1e3, down: i % 2 * 1e-3 }))
    expect(angleBetween(fitPlane(strip), { strike: 200, dip: 35 })).toBeLessThan(1e-4)
  })
})

describe('fitPlane with covariances', () => {
  it('equal isotropic covariances change nothing', () => {
    const draws = drawsFrom(7)
    const points: Enu[] = Array.from({ length: 9 }, () => [draws.uniform() * 30, draws.uniform() * 30, draws.uniform() * 3])
    const [plain, weighted] = [fitPlane(points), fitPlane(points, { covariances: points.map(() => isotropic(0.04)) })]
    expect(angleBetween(plain, weighted)).toBeLessThan(1e-6)
    weighted.residuals.forEach((r, i) => { expect(r).toBeCloseTo(plain.residuals[i]!, 9) })
  })
  it('a point that is hardly known hardly pulls', () => {
    const points: Enu[] = [...square, [5, 5, 20]]
    const covariances = points.map((_, i) => isotropic(i === 4 ? 1e6 : 1e-4))
    expect(angleBetween(fitPlane(points, { covariances }), { strike: 0, dip: 45 })).toBeLessThan(1e-3)
    expect(angleBetween(fitPlane(points), { strike: 0, dip: 45 })).toBeLessThan(90)
  })
  it('a large error along the plane costs nothing; across it, it does', () => {
    const flat: Enu[] = [[0, 0, 0], [10, 0, 0], [0, 10, 0], [10, 10, 0]]
    const sideways = fitPlane(flat, { covariances: flat.map((): Matrix3 => [[25, 0, 0], [0, 25, 0], [0, 0, 1e-4]]) })
    const upwards = fitPlane(flat, { covariances: flat.map((): Matrix3 => [[1e-4, 0, 0], [0, 1e-4, 0], [0, 0, 25]]) })
    expect(sideways.offsetSigma).toBeCloseTo(0.005, 6)
    expect(upwards.offsetSigma).toBeCloseTo(2.5, 6)
  })
  it('is the least of the weighted sum over all normals (brute force)', () => {
    const draws = drawsFrom(3)
    const points: Enu[] = Array.from({ length: 8 }, (_, i) => [i * 3 + draws.uniform(), draws.uniform() * 12, 4 * draws.uniform()])
    const covariances = points.map((): Matrix3 => [[draws.uniform() + 0.1, 0, 0], [0, draws.uniform() + 0.1, 0], [0, 0, draws.uniform() + 0.1]])
    const cost = (strike: number, dip: number) => {
      const n = axesOf({ strike, dip }).normal
      const v = covariances.map(c => c[0][0] * n[0] ** 2 + c[1][1] * n[1] ** 2 + c[2][2] * n[2] ** 2)
      const d = points.map(p => p[0] * n[0] + p[1] * n[1] + p[2] * n[2])
      const mean = d.reduce((s, x, i) => s + x / v[i]!, 0) / v.reduce((s, x) => s + 1 / x, 0)
      return d.reduce((s, x, i) => s + (x - mean) ** 2 / v[i]!, 0)
    }
    const best = fitPlane(points, { covariances })
    const least = cost(best.strike, best.dip)
    for (let k = 0; k < 24; k++) {
      const a = k * Math.PI / 12
      for (const step of [0.01, 0.3, 3]) expect(cost(best.strike + step * Math.cos(a), best.dip + step * Math.sin(a))).toBeGreaterThan(least)
    }
  })
  it('states a doubt that the scatter of many repeats bears out', () => {
    const draws = drawsFrom(2024)
    const truth = { strike: 65, dip: 70 }
    const frame = veinFrame(truth, [0, 0, 0])
    const sigma = 0.2
    const places = Array.from({ length: 10 }, () => ({ along: 30 * draws.uniform() - 15, down: 8 * draws.uniform() - 4 }))
    let [strikes, dips, offs, told] = [0, 0, 0, { strike: 0, dip: 0, off: 0 }]
    const repeats = 2000
    const far: Enu = frame.toGrid({ along: 30, down: 0 })
    for (let k = 0; k < repeats; k++) {
      const points = places.map(p => frame.toGrid(p)).map((p): Enu =>
        [p[0] + sigma * draws.normal(), p[1] + sigma * draws.normal(), p[2] + sigma * draws.normal()])
      const plane = fitPlane(points, { covariances: points.map(() => isotropic(sigma * sigma)) })
      strikes += (plane.strike - truth.strike) ** 2
      dips += (plane.dip - truth.dip) ** 2
      offs += veinFrame(plane, plane.centroid).toVein(far).off ** 2
      if (k === 0) told = { strike: plane.doubt!.strike, dip: plane.doubt!.dip, off: planeSigmaAt(plane, far)! }
    }
    // One fit's own statement against the scatter of 2,000: the misfit of a single fit may stretch it.
    expect(Math.sqrt(strikes / repeats) / told.strike).toBeGreaterThan(0.75)
    expect(Math.sqrt(strikes / repeats) / told.strike).toBeLessThan(1.2)
    expect(Math.sqrt(dips / repeats) / told.dip).toBeGreaterThan(0.75)
    expect(Math.sqrt(dips / repeats) / told.dip).toBeLessThan(1.2)
    expect(Math.sqrt(offs / repeats) / told.off).toBeGreaterThan(0.75)
    expect(Math.sqrt(offs / repeats) / told.off).toBeLessThan(1.2)
  })
})
