import { readFileSync } from 'node:fs'
import { inverse, Matrix } from 'ml-matrix'
import { describe, expect, it } from 'vitest'
import { adjacencyOf, emptyRows, normalEquations } from '../../src/survey/network/rows.ts'
import type { Rows } from '../../src/survey/network/rows.ts'
import { factorize, solve } from '../../src/survey/sparse/block-cholesky.ts'
import { blockAt, blockPattern } from '../../src/survey/sparse/block-pattern.ts'
import { minimumDegree } from '../../src/survey/sparse/minimum-degree.ts'
import { selectedInverse } from '../../src/survey/sparse/selected-inverse.ts'
import { rowCovariance } from '../../src/survey/network/cofactors.ts'
import { randomSource } from './random.ts'

/** Rows between random blocks, three for each pair, and three on block 0 that hold it. */
function randomRows(seed: number, blocks: number, extra: number): Rows {
  const random = randomSource(seed)
  const pairs: [number, number][] = [[-1, 0]]
  for (let i = 1; i < blocks; i++) pairs.push([random.whole(i), i])
  for (let k = 0; k < extra; k++) { const a = random.whole(blocks - 1); pairs.push([a, a + 1 + random.whole(blocks - a - 1)]) }
  const rows = emptyRows(3 * pairs.length)
  pairs.forEach(([from, to], p) => {
    for (let c = 0; c < 3; c++) {
      const i = 3 * p + c
      rows.from[i] = from
      rows.to[i] = to
      for (let k = 0; k < 3; k++) rows.j[3 * i + k] = random.normal() + (k === c ? 2 : 0)
      rows.residual[i] = random.normal()
    }
  })
  return rows
}

function dense(rows: Rows, blocks: number): { jacobian: Matrix, normal: Matrix } {
  const jacobian = Matrix.zeros(rows.count, 3 * blocks)
  for (let i = 0; i < rows.count; i++) {
    for (let k = 0; k < 3; k++) {
      if (rows.from[i]! >= 0) jacobian.set(i, 3 * rows.from[i]! + k, -rows.j[3 * i + k]!)
      if (rows.to[i]! >= 0) jacobian.set(i, 3 * rows.to[i]! + k, rows.j[3 * i + k]!)
    }
  }
  return { jacobian, normal: jacobian.transpose().mmul(jacobian) }
}

const nine = (check: (row: number, column: number) => void) => { for (let r = 0; r < 3; r++) for (let c = 0; c < 3; c++) check(r, c) }

describe('elimination order', () => {
  it.each([[1, 1, 0], [2, 40, 0], [3, 60, 30], [4, 200, 400]])('seed %i is a permutation and repeats', (seed, blocks, extra) => {
    const adjacency = adjacencyOf(randomRows(seed, blocks, extra * Number(blocks > 1)), blocks)
    const order = minimumDegree(adjacency)
    expect([...order].sort((a, b) => a - b)).toEqual(Array.from({ length: blocks }, (_, i) => i))
    expect(minimumDegree(adjacency)).toEqual(order)
  })
  it('leaves no fill in a tree, whatever its shape', () => {
    const blocks = 300
    const adjacency = adjacencyOf(randomRows(5, blocks, 0), blocks)
    const order = minimumDegree(adjacency)
    const position = new Map([...order].map((node, place) => [node, place]))
    const pattern = blockPattern([...order].map(node => adjacency[node]!.map(other => position.get(other)!)))
    expect(pattern.row.length).toBe(blocks - 1)
  })
  it('fills a grid of drifts far less than the order of the stations does', () => {
    const side = 30
    const besides = (i: number) => [i - side, i + side, ...i % side > 0 ? [i - 1] : [], ...i % side < side - 1 ? [i + 1] : []]
    const adjacency = Array.from({ length: side * side }, (_, i) => besides(i).filter(j => j >= 0 && j < side * side))
    const order = minimumDegree(adjacency)
    const position = new Map([...order].map((node, place) => [node, place]))
    const pattern = blockPattern([...order].map(node => adjacency[node]!.map(other => position.get(other)!)))
    expect(pattern.row.length).toBeLessThan(blockPattern(adjacency).row.length / 2)
  })
})

describe('block factor against ml-matrix', () => {
  it.each([[1, 2, 0], [2, 12, 4], [3, 40, 25]])('seed %i: solution and selected inverse', (seed, blocks, extra) => {
    const rows = randomRows(seed, blocks, extra)
    const pattern = blockPattern(adjacencyOf(rows, blocks))
    const { matrix, right } = normalEquations(rows, pattern)
    const { jacobian, normal } = dense(rows, blocks)
    const cofactors = inverse(normal)
    const factor = factorize(matrix)
    expect(factor.loose).toEqual([])
    const expected = cofactors.mmul(jacobian.transpose().mmul(Matrix.columnVector([...rows.residual]))).to1DArray()
    solve(factor, right).forEach((x, i) => { expect(Math.abs(x - expected[i]!)).toBeLessThan(1e-9) })

    const selected = selectedInverse(factor)
    for (let k = 0; k < blocks; k++) {
      nine((r, c) => { expect(Math.abs(selected.diagonal[9 * k + 3 * r + c]! - cofactors.get(3 * k + r, 3 * k + c))).toBeLessThan(1e-9) })
      for (let p = pattern.start[k]!; p < pattern.start[k + 1]!; p++) {
        const row = pattern.row[p]!
        expect(blockAt(pattern, row, k)).toBe(p)
        nine((r, c) => { expect(Math.abs(selected.lower[9 * p + 3 * r + c]! - cofactors.get(3 * row + r, 3 * k + c))).toBeLessThan(1e-9) })
      }
    }
    const hat = jacobian.mmul(cofactors).mmul(jacobian.transpose())
    for (let i = 0; i < rows.count; i++) expect(Math.abs(rowCovariance(rows, selected, i, i) - hat.get(i, i))).toBeLessThan(1e-9)
  })

  it('finds and holds a direction that nothing determines', () => {
    const rows = randomRows(6, 5, 3)
    for (let i = 0; i < rows.count; i++) rows.j[3 * i + 2] = 0 // nothing sees the third component
    const pattern = blockPattern(adjacencyOf(rows, 5))
    const { matrix, right } = normalEquations(rows, pattern)
    const factor = factorize(matrix)
    expect(factor.loose).toEqual([2, 5, 8, 11, 14])
    const x = solve(factor, right)
    expect(x.every(Number.isFinite)).toBe(true)
    factor.loose.forEach((u) => { expect(x[u]).toBe(0) })
    expect(selectedInverse(factor).diagonal.every(Number.isFinite)).toBe(true)
  })
})

describe('levelling network (R 4.2.2 lm, checks/reference/adjust.json)', () => {
  const reference = (JSON.parse(readFileSync(new URL('../../../../checks/reference/adjust.json', import.meta.url), 'utf8')) as { levelling: Levelling }).levelling
  interface Levelling {
    observations: { from: string, to: string, dh: number, km: number }[]
    heights: Record<'B' | 'C' | 'D', number>
    residual_obs_minus_fit: number[]
    sum_wvv: number
    Qxx: number[][]
    redundancy: number[]
    standardized_internal: number[]
    sigma0: number
  }
  it('heights, cofactors, residuals, redundancy and standardized residuals', () => {
    const names = ['B', 'C', 'D'] as const
    const rows = emptyRows(reference.observations.length)
    reference.observations.forEach(({ from, to, dh, km }, i) => {
      rows.from[i] = names.indexOf(from as 'B')
      rows.to[i] = names.indexOf(to as 'B')
      rows.j[3 * i + 2] = 1 / Math.sqrt(km)
      const known = (to === 'A' ? 100 : 0) - (from === 'A' ? 100 : 0)
      rows.residual[i] = (dh - known) / Math.sqrt(km)
    })
    const pattern = blockPattern(adjacencyOf(rows, 3))
    const { matrix, right } = normalEquations(rows, pattern)
    const factor = factorize(matrix)
    expect(factor.loose.length).toBe(6) // east and north
    const x = solve(factor, right)
    names.forEach((name, i) => { expect(x[3 * i + 2]).toBeCloseTo(reference.heights[name], 10) })
    const cofactors = selectedInverse(factor)
    names.forEach((_, i) => { expect(cofactors.diagonal[9 * i + 8]).toBeCloseTo(reference.Qxx[i]![i]!, 10) })
    expect(cofactors.lower[9 * blockAt(pattern, 2, 0) + 8]).toBeCloseTo(reference.Qxx[0]![2]!, 10)
    let sum = 0
    reference.observations.forEach(({ km }, i) => {
      const height = (block: number) => block < 0 ? 0 : x[3 * block + 2]!
      const residual = rows.residual[i]! - (height(rows.to[i]!) - height(rows.from[i]!)) / Math.sqrt(km)
      const redundancy = 1 - rowCovariance(rows, cofactors, i, i)
      expect(residual * Math.sqrt(km)).toBeCloseTo(reference.residual_obs_minus_fit[i]!, 10)
      expect(redundancy).toBeCloseTo(reference.redundancy[i]!, 10)
      expect(residual / Math.sqrt(redundancy) / reference.sigma0).toBeCloseTo(reference.standardized_internal[i]!, 8)
      sum += residual ** 2
    })
    expect(sum).toBeCloseTo(reference.sum_wvv, 14)
  })
})
// plane_network of the same file is not used here: its angles at a point touch three stations, which no reading of a compass does.
