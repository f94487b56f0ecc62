import fc from 'fast-check'
import { EigenvalueDecomposition, Matrix } from 'ml-matrix'
import { describe, expect, it } from 'vitest'
import { symmetricEigen } from '../../src/structure/index.ts'
import type { Matrix3 } from '../../src/core/index.ts'

const entry = fc.integer({ min: -1e8, max: 1e8 }).map(v => v / 1e6) // ml-matrix loses digits among numbers near the smallest double
const symmetric = fc.tuple(entry, entry, entry, entry, entry, entry)
  .map(([a, b, c, d, e, f]): Matrix3 => [[a, b, c], [b, d, e], [c, e, f]])
const size = (m: Matrix3) => Math.max(...m.flat().map(Math.abs), Number.MIN_VALUE)

describe('symmetricEigen', () => {
  it('agrees with ml-matrix on the eigenvalues', () => {
    fc.assert(fc.property(symmetric, (m) => {
      const library = new EigenvalueDecomposition(new Matrix(m.map(row => [...row])), { assumeSymmetric: true }).realEigenvalues.sort((a, b) => b - a)
      symmetricEigen(m).values.forEach((value, i) => { expect(Math.abs(value - library[i]!)).toBeLessThanOrEqual(1e-13 * size(m)) })
    }), { seed: 11, numRuns: 500 })
  })
  it('gives M v = l v for each pair, with right-handed unit vectors', () => {
    fc.assert(fc.property(symmetric, (m) => {
      const { values, vectors: [u, v, w] } = symmetricEigen(m)
      ;[u, v, w].forEach((vector, k) => {
        expect(Math.hypot(...vector)).toBeCloseTo(1, 14)
        m.forEach((row, i) => {
          const product = row[0] * vector[0] + row[1] * vector[1] + row[2] * vector[2]
          expect(Math.abs(product - values[k as 0 | 1 | 2] * vector[i]!)).toBeLessThanOrEqual(4e-15 * size(m))
        })
      })
      const handed = u[0] * (v[1] * w[2] - v[2] * w[1]) + u[1] * (v[2] * w[0] - v[0] * w[2]) + u[2] * (v[0] * w[1] - v[1] * w[0])
      expect(handed).toBeCloseTo(1, 13)
    }), { seed: 12, numRuns: 500 })
  })
  it('takes the zero matrix, a multiple of the identity and a rank-one matrix', () => {
    expect(symmetricEigen([[0, 0, 0], [0, 0, 0], [0, 0, 0]]).values).toEqual([0, 0, 0])
    expect(symmetricEigen([[3, 0, 0], [0, 3, 0], [0, 0, 3]]).values).toEqual([3, 3, 3])
    const { values, vectors } = symmetricEigen([[1, 2, 2], [2, 4, 4], [2, 4, 4]])
    expect(values[0]).toBeCloseTo(9, 13)
    expect(Math.abs(values[1]) + Math.abs(values[2])).toBeLessThan(1e-14)
    expect(Math.abs(vectors[0][0] * 1 / 3 + vectors[0][1] * 2 / 3 + vectors[0][2] * 2 / 3)).toBeCloseTo(1, 14)
  })
})
