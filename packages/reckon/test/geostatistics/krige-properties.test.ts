import fc from 'fast-check'
import { inverse, Matrix } from 'ml-matrix'
import { describe, expect, it } from 'vitest'
import { krige, variogramAt } from '@lodebook/reckon/geostatistics'
import type { KrigeOptions, Point2, Sample, Structure, VariogramModel } from '@lodebook/reckon/geostatistics'

/** Field problems: distinct places on a coarse lattice, values, a model with or without nugget, one target. */
const lattice = fc.tuple(fc.integer({ min: -8, max: 8 }), fc.integer({ min: -8, max: 8 }))
const places = fc.uniqueArray(lattice, { minLength: 4, maxLength: 14, selector: ([x, y]) => `${x} ${y}` })
const structure: fc.Arbitrary<Structure> = fc.record({
  type: fc.constantFrom('spherical', 'exponential', 'matern'), partialSill: fc.double({ min: 0.2, max: 4, noNaN: true }),
  range: fc.double({ min: 1, max: 9, noNaN: true }), azimuth: fc.integer({ min: 0, max: 179 }), ratio: fc.constantFrom(1, 0.6, 0.3),
})
const models: fc.Arbitrary<VariogramModel> = fc.record({ nugget: fc.constantFrom(0, 0.3, 1), structures: fc.array(structure, { minLength: 1, maxLength: 2 }) })
const problem = fc.record({
  at: places, seed: fc.integer({ min: 1, max: 1000 }), model: models,
  target: fc.tuple(fc.integer({ min: -63, max: 63 }), fc.integer({ min: -63, max: 63 })).map(([x, y]): Point2 => [x / 7, y / 7]),
  kind: fc.constantFrom('simple', 'ordinary', 'universal'), neighbours: fc.constantFrom(undefined, 4, 6),
})
const RUNS = { seed: 20, numRuns: 150 }

const valued = (at: readonly Point2[], seed: number): Sample[] => at.map(([x, y], i) => [x, y, 10 * Math.sin(seed + 12.9898 * i)])

/** What kriging gives, or undefined where the drift is not fixed by the samples: every test then has nothing to compare. */
function attempt(points: readonly Sample[], targets: readonly Point2[], model: VariogramModel, options: KrigeOptions) {
  try { return krige(points, targets, model, options) } catch (error) {
    expect(String(error)).toContain('drift undetermined')
    return undefined
  }
}

const optionsOf = (kind: KrigeOptions['kind'], neighbours: number | undefined): KrigeOptions =>
  ({ kind, mean: 2, ...(neighbours !== undefined && { neighbours }) })

describe('kriging, whatever the data', () => {
  it('[KQ1] is exact at samples without error, with variance zero', () => {
    fc.assert(fc.property(problem, ({ at, seed, model, kind, neighbours }) => {
      const points = valued(at, seed)
      const result = attempt(points, at, model, optionsOf(kind, neighbours))
      result?.means.forEach((mean, i) => expect(mean).toBeCloseTo(points[i]![2], 8))
      result?.variances.forEach(variance => expect(variance).toBeLessThan(1e-9))
    }), RUNS)
  })

  it('[KQ2] weights sum to 1 (ordinary, universal), keep linear drift (universal), and make the estimate', () => {
    fc.assert(fc.property(problem, ({ at, seed, model, target, kind, neighbours }) => {
      const points = valued(at, seed)
      const result = attempt(points, [target], model, { ...optionsOf(kind, neighbours), explain: true })
      if (result === undefined) return
      const weights = result.weights![0]!
      const sum = (f: (i: number) => number) => weights.reduce((total, weight, i) => total + weight * f(i), 0)
      expect(sum(i => points[i]![2] - (kind === 'simple' ? 2 : 0)) + (kind === 'simple' ? 2 : 0)).toBeCloseTo(result.means[0]!, 8)
      if (kind !== 'simple') expect(sum(() => 1)).toBeCloseTo(1, 10)
      if (kind === 'universal') {
        expect(sum(i => points[i]![0])).toBeCloseTo(target[0], 8)
        expect(sum(i => points[i]![1])).toBeCloseTo(target[1], 8)
      }
      if (neighbours !== undefined) expect(weights.filter(weight => weight !== 0).length).toBeLessThanOrEqual(neighbours)
    }), RUNS)
  })

  it('[KQ3] does not change when everything is turned, shifted, or listed in another order; values scale, variances with their square', () => {
    fc.assert(fc.property(problem, fc.integer({ min: 0, max: 359 }), ({ at, seed, model, target, kind }, angle) => {
      const points = valued(at, seed)
      const before = attempt(points, [target], model, optionsOf(kind, undefined))
      if (before === undefined) return
      const [sin, cos] = [Math.sin(angle * Math.PI / 180), Math.cos(angle * Math.PI / 180)]
      const turn = ([x, y]: readonly number[]): Point2 => [x! * cos + y! * sin + 300, y! * cos - x! * sin - 700]
      const turnedModel = { ...model, structures: model.structures.map(s => ({ ...s, azimuth: s.azimuth! + angle })) }
      const after = krige(points.map((p): Sample => [...turn(p), p[2]]), [turn(target)], turnedModel, optionsOf(kind, undefined))
      expect(after.means[0]).toBeCloseTo(before.means[0]!, 8)
      expect(after.variances[0]).toBeCloseTo(before.variances[0]!, 8)
      const reversed = krige([...points].reverse(), [target], model, optionsOf(kind, undefined))
      expect(reversed.means[0]).toBeCloseTo(before.means[0]!, 9)
      const scaledModel = { nugget: 1e6 * model.nugget, structures: model.structures.map(s => ({ ...s, partialSill: 1e6 * s.partialSill })) }
      const scaled = krige(points.map(([x, y, z]): Sample => [x, y, 1000 * z]), [target], scaledModel, { ...optionsOf(kind, undefined), mean: 2000 })
      expect(scaled.means[0]! / 1000).toBeCloseTo(before.means[0]!, 8)
      expect(scaled.variances[0]! / 1e6).toBeCloseTo(before.variances[0]!, 8)
    }), RUNS)
  })

  it('[KQ4] is the textbook system, bordered and inverted by ml-matrix', () => {
    fc.assert(fc.property(problem, ({ at, seed, model, target, kind }) => {
      const points = valued(at, seed)
      const errors = points.map((_, i) => 0.1 * (i % 3))
      const result = attempt(points, [target], model, { ...optionsOf(kind, undefined), errorVariance: errors })
      if (result === undefined) return
      const gamma = (a: readonly number[], b: readonly number[]) => variogramAt(model, b[0]! - a[0]!, b[1]! - a[1]!)
      const sill = model.nugget + model.structures.reduce((sum, s) => sum + s.partialSill, 0)
      const functions = (p: readonly number[]) => kind === 'simple' ? [] : kind === 'ordinary' ? [1] : [1, p[0]!, p[1]!]
      const [n, f] = [points.length, functions(target).length]
      const system = Matrix.zeros(n + f, n + f)
      points.forEach((a, i) => {
        points.forEach((b, j) => system.set(i, j, sill - gamma(a, b) + (i === j ? errors[i]! : 0)))
        functions(a).forEach((value, j) => { system.set(i, n + j, value); system.set(n + j, i, value) })
      })
      const right = [...points.map(p => sill - gamma(p, target)), ...functions(target)]
      const solution = inverse(system).mmul(Matrix.columnVector(right)).to1DArray()
      const known = kind === 'simple' ? 2 : 0
      const mean = known + points.reduce((sum, p, i) => sum + solution[i]! * (p[2] - known), 0)
      const variance = sill - solution.reduce((sum, value, i) => sum + value * right[i]!, 0)
      expect(result.means[0]).toBeCloseTo(mean, 7)
      expect(result.variances[0]).toBeCloseTo(variance, 7)
    }), RUNS)
  })

  it('[KQ5] repeats at one place, each with its error, are as good as their weighted mean', () => {
    const model: VariogramModel = { nugget: 0.2, structures: [{ type: 'spherical', partialSill: 2, range: 6 }] }
    const apart: Sample[] = [[0, 0, 4], [1e-5, 0, 6], [0, 1e-5, 9], [3, 1, 2]]
    const errorVariance = [1, 2, 0.5, 0]
    // Without a nugget places a hair apart share their field; with one the field itself would differ between them.
    const bare = { ...model, nugget: 0 }
    const near = krige(apart, [[1, 1]], bare, { kind: 'ordinary', errorVariance })
    const together = apart.map(([x, y, z]): Sample => [x < 1 ? 0 : x, y < 0.5 ? 0 : y, z])
    const same = krige(together, [[1, 1]], bare, { kind: 'ordinary', errorVariance, explain: true })
    expect([near.merged, same.merged]).toEqual([0, 2])
    expect(same.means[0]).toBeCloseTo(near.means[0]!, 4)
    expect(same.variances[0]).toBeCloseTo(near.variances[0]!, 4)
    const weights = same.weights![0]!
    expect(weights[0]! / weights[2]!).toBeCloseTo(0.5, 12)
    expect(weights.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 12)
  })
})

describe('kriging, odd data', () => {
  const model: VariogramModel = { nugget: 0, structures: [{ type: 'spherical', partialSill: 2, range: 6 }] }

  it('[KO1] no targets; one sample; all at one spot; all equal', () => {
    expect(krige([[0, 0, 1]], [], model, { kind: 'ordinary' }).means.length).toBe(0)
    const one = krige([[0, 0, 7]], [[3, 0], [100, 0]], model, { kind: 'ordinary' })
    one.means.forEach(mean => expect(mean).toBeCloseTo(7, 12))
    // 2 gamma(3) = 4 (0.75 - 0.0625); beyond the range twice the sill.
    expect(one.variances[0]).toBeCloseTo(2.75, 12)
    expect(one.variances[1]).toBeCloseTo(4, 12)
    const spot = krige([[5, 5, 1], [5, 5, 2], [5, 5, 6]], [[5, 5], [50, 5]], model, { kind: 'ordinary' })
    spot.means.forEach(mean => expect(mean).toBeCloseTo(3, 12))
    expect(spot.merged).toBe(2)
    const equal = krige([[0, 0, 4], [1, 0, 4], [0, 5, 4], [2, 3, 4]], [[1, 1], [9, 9]], model, { kind: 'universal' })
    equal.means.forEach(mean => expect(mean).toBeCloseTo(4, 12))
  })

  it('[KO2] one giant value stays finite and exact', () => {
    const points: Sample[] = [[0, 0, 1e300], [1, 0, 1], [0, 1, 2], [4, 4, 3]]
    const { means, variances } = krige(points, [[0, 0], [1, 0], [2, 2]], model, { kind: 'ordinary' })
    expect(means[0]! / 1e300).toBeCloseTo(1, 12)
    expect([...means, ...variances].every(Number.isFinite)).toBe(true)
  })

  it('[KO3] lengths tiny and huge: the same system', () => {
    const points: Sample[] = [[0, 0, 1], [1, 0, 5], [0, 1, 2], [4, 4, 3]]
    const plain = krige(points, [[1, 1]], model, { kind: 'universal' })
    for (const s of [1e-9, 1e12]) {
      const scaled = { nugget: 0, structures: [{ type: 'spherical' as const, partialSill: 2, range: 6 * s }] }
      const other = krige(points.map(([x, y, z]): Sample => [x * s, y * s, z]), [[s, s]], scaled, { kind: 'universal' })
      expect(other.means[0]).toBeCloseTo(plain.means[0]!, 9)
      expect(other.variances[0]).toBeCloseTo(plain.variances[0]!, 9)
    }
  })

  it('[KO4] samples that do not fix the drift, and models that are none, say so by field', () => {
    const line: Sample[] = [[0, 0, 1], [1, 1, 2], [2, 2, 5], [3, 3, 4]]
    expect(() => krige(line, [[1, 0]], model, { kind: 'universal' })).toThrow('drift undetermined')
    expect(() => krige(line, [[1, 0]], model, { kind: 'universal', neighbours: 3 })).toThrow('targets[0]: drift undetermined')
    const bad = (structure: Partial<Structure>) => () =>
      krige(line, [[1, 0]], { nugget: 0, structures: [{ ...model.structures[0]!, ...structure }] }, { kind: 'ordinary' })
    expect(bad({ partialSill: -1 })).toThrow('model.structures[0].partialSill')
    expect(bad({ range: 0 })).toThrow('model.structures[0].range')
    expect(bad({ ratio: 1.5 })).toThrow('model.structures[0].ratio')
    expect(bad({ partialSill: 0 })).toThrow('a sill')
    expect(() => krige(line, [[1, 0]], { ...model, nugget: -0.1 }, { kind: 'ordinary' })).toThrow('model.nugget')
    expect(() => krige([], [[1, 0]], model, { kind: 'ordinary' })).toThrow('at least one sample')
    expect(() => krige([[0, 0, NaN]], [[1, 0]], model, { kind: 'ordinary' })).toThrow('points[0][2]')
    expect(() => krige(line, [[Infinity, 0]], model, { kind: 'ordinary' })).toThrow('targets[0][0]')
    expect(() => krige(line, [[1, 0]], model, { kind: 'ordinary', errorVariance: [0, 0, -1, 0] })).toThrow('errorVariance[2]')
    expect(() => krige(line, [[1, 0]], model, { kind: 'ordinary', errorVariance: [0] })).toThrow('errorVariance')
    expect(() => krige(line, [[1, 0]], model, { kind: 'ordinary', neighbours: 0 })).toThrow('neighbours')
    expect(() => krige(line, [[1, 0]], model, { kind: 'ordinary', block: [0, 1] })).toThrow('block[0]')
  })

  it('[KO5] arguments are left as they were', () => {
    const freeze = <T>(value: T): T => {
      if (typeof value === 'object' && value !== null) Object.values(value).forEach(freeze)
      return Object.freeze(value)
    }
    const points = freeze<Sample[]>([[2, 1, 1], [1, 0, 5], [0, 1, 2], [0, 1, 3]])
    const options = freeze<KrigeOptions>({ kind: 'ordinary', errorVariance: [0, 1, 1, 2] })
    expect(krige(points, freeze<Point2[]>([[1, 1]]), freeze(structuredClone(model)), options).merged).toBe(1)
  })
})
