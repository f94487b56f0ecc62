import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { experimentalVariogram, variogramAt } from '@lodebook/reckon/geostatistics'
import type { Lag, Sample } from '@lodebook/reckon/geostatistics'
import type { InputError } from '@lodebook/reckon'
import { json, logZinc, modelOf, worst } from './reference.ts'
import type { VariogramCase } from './reference.ts'

type Reference = Record<string, VariogramCase> & {
  bbox_diag_third: number
  model_values: { h: number[], gamma: Record<string, number[]>, params: Record<string, Record<'model' | 'psill' | 'range' | 'kappa', unknown[]>> }
  anis_model_values: { model: Parameters<typeof modelOf>[0], azimuth: number[], gamma_at_300: number[] }
}
const reference = json<Reference>('variogram')
const points = logZinc()
/** gstat and we add the same numbers in another order. */
const SUM = 1e-12

function expectLags(lags: readonly Lag[], expected: VariogramCase): void {
  expect(lags.map(lag => lag.pairs)).toEqual(expected.np)
  expect(worst(lags.map(lag => lag.distance), expected.dist)).toBeLessThan(SUM)
  expect(worst(lags.map(lag => lag.gamma), expected.gamma)).toBeLessThan(SUM)
}

describe('experimental variogram', () => {
  const cutoff = reference.bbox_diag_third

  it('[EV1] gives the 45 numbers of log zinc, meuse: pairs, distances, gammas', () => {
    // Status V: r-spatial/gstat tests/variogram.Rout.save, as printed (7 digits), cutoff a third of the diagonal, 15 bins.
    const lags = experimentalVariogram(points, { cutoff, width: cutoff / 15 })
    expect(lags.map(lag => lag.pairs)).toEqual([57, 299, 419, 457, 547, 533, 574, 564, 589, 543, 500, 477, 452, 457, 415])
    const printed = [0.1234479, 0.2162185, 0.3027859, 0.4121448, 0.4634128, 0.5646933, 0.5689683, 0.6186769,
      0.6471479, 0.6915705, 0.7033984, 0.6038770, 0.6517158, 0.5665318, 0.5748227]
    expect(worst(lags.map(lag => Math.round(lag.gamma * 1e7) / 1e7), printed)).toBeLessThan(1e-15)
    expect(lags[0]!.distance).toBeCloseTo(79.29244, 5)
    expect(lags[14]!.distance).toBeCloseTo(1543.20248, 5)
    // Status R: the same from gstat 2.1-0 in full precision.
    expectLags(lags, reference['omni_default']!)
  })

  it.each([['omni_c1500_w100', 100], ['omni_c1500_w50', 50]])('[EV2] %s equals gstat 2.1-0 (status R)', (name, width) => {
    expectLags(experimentalVariogram(points, { cutoff: 1500, width }), reference[name]!)
  })

  it('[EV3] the robust form equals gstat 2.1-0, cressie = TRUE (status R)', () => {
    expectLags(experimentalVariogram(points, { cutoff: 1500, width: 100, estimator: 'robust' }), reference['omni_cressie_c1500_w100']!)
  })

  it.each([
    ['dir4_default_c1500_w100_tol22_5', 100, 22.5],
    ['dir2_alpha30_120_tol15_c1500_w150', 150, 15],
  ])('[EV4] directions: %s equals gstat 2.1-0 (status R)', (name, width, tolerance) => {
    const all = reference[name]!
    for (const azimuth of new Set(all['dir.hor'])) {
      const pick = (values: number[]) => values.filter((_, i) => all['dir.hor'][i] === azimuth)
      const expected = { np: pick(all.np), dist: pick(all.dist), gamma: pick(all.gamma), 'dir.hor': [] }
      expectLags(experimentalVariogram(points, { cutoff: 1500, width, azimuth, tolerance }), expected)
    }
  })

  it('[EV5] equals the definition, pair by pair, whatever the order of the points', () => {
    const coordinate = fc.integer({ min: 0, max: 30 })
    const scatter = fc.array(fc.tuple(coordinate, coordinate, fc.integer({ min: -5, max: 5 })), { minLength: 2, maxLength: 25 })
    fc.assert(fc.property(scatter, fc.integer({ min: 1, max: 9 }), (rows, width) => {
      const lags = experimentalVariogram(Object.freeze(rows), { cutoff: 20, width })
      let pairs = 0
      for (let bin = 0; bin * width < 20; bin++) {
        let [n, square] = [0, 0]
        rows.forEach(([ax, ay, az], i) => rows.slice(i + 1).forEach(([bx, by, bz]) => {
          const h = Math.hypot(ax - bx, ay - by)
          if (h > bin * width && h <= Math.min((bin + 1) * width, 20)) { n++; square += (az - bz) ** 2 }
        }))
        if (n === 0) continue
        const lag = lags[pairs++]!
        expect(lag.pairs).toBe(n)
        expect(lag.gamma).toBeCloseTo(square / n / 2, 12)
      }
      expect(lags.length).toBe(pairs)
    }), { seed: 11, numRuns: 200 })
  })

  it('[EV6] all directions split over fans that do not overlap, and turn with the points', () => {
    const total = experimentalVariogram(points, { cutoff: 900, width: 100 })
    const fans = [0, 60, 120].map(azimuth => experimentalVariogram(points, { cutoff: 900, width: 100, azimuth: azimuth + 0.123, tolerance: 30 }))
    expect(fans.flat().reduce((sum, lag) => sum + lag.pairs, 0)).toBe(total.reduce((sum, lag) => sum + lag.pairs, 0))
    const turned = rotate(points, 37)
    const before = experimentalVariogram(points, { cutoff: 905, width: 101, azimuth: 20.4, tolerance: 25 })
    const after = experimentalVariogram(turned, { cutoff: 905, width: 101, azimuth: 57.4, tolerance: 25 })
    expect(after.map(lag => lag.pairs)).toEqual(before.map(lag => lag.pairs))
    expect(worst(after.map(lag => lag.gamma), before.map(lag => lag.gamma))).toBeLessThan(1e-9)
  })

  it('[EV7] no points, one point, all at one spot: no lags; all equal: gamma 0', () => {
    const none: Sample[][] = [[], [[1, 2, 3]], [[1, 2, 3], [1, 2, 5], [1, 2, 7]]]
    for (const rows of none) expect(experimentalVariogram(rows, { cutoff: 10, width: 1 })).toEqual([])
    const flat = experimentalVariogram([[0, 0, 5], [1, 0, 5], [3, 0, 5]], { cutoff: 10, width: 1 })
    expect(flat.map(lag => [lag.pairs, lag.gamma])).toEqual([[1, 0], [1, 0], [1, 0]])
  })

  it('[EV8] bad input names its field', () => {
    const field = (f: () => unknown) => { try { f() } catch (error) { return (error as InputError).field } return 'none' }
    expect(field(() => experimentalVariogram([[0, NaN, 1]], { cutoff: 1, width: 1 }))).toBe('points[0][1]')
    expect(field(() => experimentalVariogram([], { cutoff: 0, width: 1 }))).toBe('cutoff')
    expect(field(() => experimentalVariogram([], { cutoff: 1, width: -1 }))).toBe('width')
    expect(field(() => experimentalVariogram([], { cutoff: 1, width: 1, azimuth: 0, tolerance: 0 }))).toBe('tolerance')
  })
})

describe('variogram models', () => {
  const { h, gamma, params } = reference.model_values

  it.each(['Sph', 'Exp', 'Gau', 'Mat0.5', 'Mat1.5'])('[VM1] %s equals gstat 2.1-0 at 14 distances (status R)', (name) => {
    const rows = params[name]!
    const number = (column: 'psill' | 'range' | 'kappa', i: number) => rows[column][i] as number
    const models = rows.model.map((name, i) => ({
      model: name as string, psill: number('psill', i), range: number('range', i), kappa: number('kappa', i), ang1: 0, anis1: 1,
    }))
    const model = modelOf({ models })
    expect(worst(h.map(distance => variogramAt(model, 0, distance)), gamma[name]!)).toBeLessThan(1e-12)
  })

  it('[VM2] Matern 2.5 by its closed form at u = 1: 1 - (7/3)/e', () => {
    const model = { nugget: 0, structures: [{ type: 'matern', smoothness: 2.5, partialSill: 2, range: 10 } as const] }
    expect(variogramAt(model, 6, 8)).toBeCloseTo(2 * (1 - 7 / 3 / Math.E), 14)
  })

  it('[VM3] anisotropy, azimuth 45, ratio 0.4: equals gstat 2.1-0 in 12 directions (status R)', () => {
    const { model, azimuth, gamma_at_300: expected } = reference.anis_model_values
    const actual = azimuth.map(a => variogramAt(modelOf(model), 300 * Math.sin(a * Math.PI / 180), 300 * Math.cos(a * Math.PI / 180)))
    expect(worst(actual, expected)).toBeLessThan(1e-12)
  })

  it('[VM4] spherical line means: gbar of L = 2, 5, 10 with range 10 are 0.0996, 0.24375, 0.45', () => {
    // Status M: L/2a - L^3/20a^3 (Clark 1979; Journel and Huijbregts 1978), recomputed here by quadrature over the line.
    const model = { nugget: 0, structures: [{ type: 'spherical', partialSill: 1, range: 10 } as const] }
    for (const [length, expected] of [[2, 0.0996], [5, 0.24375], [10, 0.45]] as const) {
      const n = 2000
      let sum = 0
      for (let k = 1; k < n; k++) sum += 2 * (n - k) * variogramAt(model, 0, k * length / n)
      expect(sum / n / n).toBeCloseTo(expected, 5)
    }
  })
})

function rotate(rows: readonly Sample[], clockwise: number): Sample[] {
  const [sin, cos] = [Math.sin(clockwise * Math.PI / 180), Math.cos(clockwise * Math.PI / 180)]
  return rows.map(([x, y, value]) => [x * cos + y * sin, y * cos - x * sin, value])
}
