import { describe, expect, it } from 'vitest'
import { krige, krigePanels, polygonPanel, rectangularPanels, totalOver } from '@lodebook/reckon/geostatistics'
import type { Point2, VariogramModel } from '@lodebook/reckon/geostatistics'
import { logZinc, worst } from './reference.ts'

const points = logZinc()
const model: VariogramModel = { nugget: 0.05, structures: [{ type: 'spherical', partialSill: 0.59, range: 897 }] }
const centres = Array.from({ length: 12 }, (_, k): Point2 => [179500 + 100 * (k % 4), 331000 + 100 * Math.floor(k / 4)])
/** Sums of the same few hundred products in another order. */
const SUM = 1e-12

describe('panels together', () => {
  it.each(['simple', 'ordinary', 'universal'] as const)('[PA1] means and the diagonal are those of block kriging one by one, %s', (kind) => {
    const errorVariance = points.map((_, i) => 0.01 * (i % 3))
    const together = krigePanels(points, rectangularPanels(centres, [100, 100]), model, { kind, mean: 5.9, errorVariance })
    const single = krige(points, centres, model, { kind, mean: 5.9, errorVariance, block: [100, 100] })
    expect(worst(together.means, [...single.means])).toBeLessThan(SUM)
    expect(worst(centres.map((_, i) => together.covariance[i * 13]!), [...single.variances])).toBeLessThan(SUM)
  })

  it('[PA2] four panels that make up a square: their total is the square', () => {
    const quarter: Point2[] = [[-25, -25], [25, -25], [-25, 25], [25, 25]].map(([dx, dy]) => [180000 + dx!, 332000 + dy!])
    const options = { kind: 'ordinary' } as const
    const parts = krigePanels(points, rectangularPanels(quarter, [50, 50], { cells: 4 }), model, options)
    const whole = krigePanels(points, rectangularPanels([[180000, 332000]], [100, 100], { cells: 8 }), model, options)
    const total = totalOver(parts, [0.25, 0.25, 0.25, 0.25])
    expect(total.mean).toBeCloseTo(whole.means[0]!, 12)
    expect(total.variance).toBeCloseTo(whole.covariance[0]!, 12)
    // Neighbours err together: adding their own variances alone would claim far too much.
    const own = [0, 1, 2, 3].reduce((sum, i) => sum + parts.covariance[i * 5]! / 16, 0)
    expect(own).toBeLessThan(0.5 * total.variance)
  })

  it('[PA3] a polygon that is a rectangle is that rectangle; an L is its three squares', () => {
    const square: Point2[] = [[180000, 332000], [180100, 332000], [180100, 332100], [180000, 332100]]
    const byPolygon = krigePanels(points, [polygonPanel(square, 12.5)], model, { kind: 'ordinary' })
    const byBlock = krigePanels(points, rectangularPanels([[180050, 332050]], [100, 100], { cells: 8 }), model, { kind: 'ordinary' })
    expect(byPolygon.means[0]).toBeCloseTo(byBlock.means[0]!, 12)
    expect(byPolygon.covariance[0]).toBeCloseTo(byBlock.covariance[0]!, 12)
    const ell: Point2[] = [[0, 0], [200, 0], [200, 100], [100, 100], [100, 200], [0, 200], [0, 0]].map(([x, y]) => [180000 + x!, 332000 + y!])
    const squares = rectangularPanels([[180050, 332050], [180150, 332050], [180050, 332150]], [100, 100], { cells: 8 })
    const joint = totalOver(krigePanels(points, squares, model, { kind: 'ordinary' }), [1 / 3, 1 / 3, 1 / 3])
    const one = krigePanels(points, [polygonPanel(ell, 12.5)], model, { kind: 'ordinary' })
    expect(one.means[0]).toBeCloseTo(joint.mean, 12)
    expect(one.covariance[0]).toBeCloseTo(joint.variance, 12)
  })

  it('[PA4] no panels, slivers and polygons without area', () => {
    expect(krigePanels(points, [], model, { kind: 'ordinary' }).covariance.length).toBe(0)
    expect(polygonPanel([[0, 0], [100, 1], [100, 1.5]], 50).support.weights.length).toBeGreaterThan(0)
    expect(() => polygonPanel([[0, 0], [1, 1], [2, 2]], 1)).toThrow('no area')
    expect(() => polygonPanel([[0, 0], [1, 1], [2, 2]], 0)).toThrow('spacing')
    expect(() => polygonPanel([[0, 0], [1000, 0], [1000, 1000]], 1)).toThrow('spacing')
  })
})
