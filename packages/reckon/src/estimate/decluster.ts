import { finite, InputError, positive } from '../core/index.ts'
import type { VeinPoint } from '../core/index.ts'

/** Offsets of the grid's origin that are averaged over, each way. */
const offsets = 5

/**
 * Weights that undo bunched sampling: samples that share a cell share its one vote. Averaged over 25 origins of the grid.
 * @param cell side of a cell; a good one is about the spacing of the sparse samples
 * @returns weights with mean 1
 * @throws InputError
 * Source: Isaaks and Srivastava, An Introduction to Applied Geostatistics, 1989, ch. 10 (from memory).
 */
export function cellWeights(places: readonly VeinPoint[], cell: number): Float64Array {
  positive(cell, 'cell', 'a length above zero')
  places.forEach((p, i) => { finite(p.along, `places[${i}].along`); finite(p.down, `places[${i}].down`) })
  const weights = new Float64Array(places.length)
  for (let a = 0; a < offsets; a++) {
    for (let d = 0; d < offsets; d++) {
      const names = places.map(p => `${Math.floor(p.along / cell + a / offsets)} ${Math.floor(p.down / cell + d / offsets)}`)
      const counts = new Map<string, number>()
      for (const name of names) counts.set(name, (counts.get(name) ?? 0) + 1)
      names.forEach((name, i) => { weights[i]! += places.length / (counts.get(name)! * counts.size * offsets * offsets) })
    }
  }
  return weights
}

/**
 * Weights by polygons of influence: each sample counts for the ground nearer to it than to any other, out of the ground given; samples at one
 * place share theirs.
 * @param ground points that stand for the ground, each with its area
 * @returns the area each sample stands for
 * @throws InputError without a sample or with an area below zero
 * Source: Hoover, Principles of Mining, 1909, ch. II (each sample counts half-way to its neighbours; from memory).
 */
export function polygonWeights(places: readonly VeinPoint[], ground: readonly (VeinPoint & { readonly area: number })[]): Float64Array {
  if (places.length === 0) throw new InputError('places', places, 'one place or more')
  const weights = new Float64Array(places.length)
  ground.forEach((g, i) => {
    if (!(g.area >= 0 && Number.isFinite(g.area))) throw new InputError(`ground[${i}].area`, g.area, 'an area, zero or more')
    let least = Infinity, nearest: number[] = []
    places.forEach((p, j) => {
      const d = (p.along - g.along) ** 2 + (p.down - g.down) ** 2
      if (d < least) { least = d; nearest = [j] } else if (d === least) nearest.push(j)
    })
    for (const j of nearest) weights[j]! += g.area / nearest.length
  })
  return weights
}
