import type { RowOf } from './equations.ts'
import type { Model } from './model.ts'
import type { BlockPattern } from '../sparse/block-pattern.ts'
import { blockPattern } from '../sparse/block-pattern.ts'
import { minimumDegree } from '../sparse/minimum-degree.ts'
import { rowsOf } from './equations.ts'
import { adjacencyOf } from './rows.ts'

/** A network with its equations listed and its unknowns put in order. */
export interface Problem {
  readonly model: Model
  readonly list: readonly RowOf[]
  /** Block of each station and, after them, of each set of instruments; -1 for a held station. */
  readonly blockOf: Int32Array
  readonly pattern: BlockPattern
}

/** Puts the unknowns in an order that keeps the factor sparse. */
export function orderUnknowns(model: Model, list: readonly RowOf[]): Problem {
  const stations = model.names.length
  const blockOf = new Int32Array(stations + model.instruments.length).fill(-1)
  let free = 0
  for (let i = 0; i < stations; i++) if (!model.held.has(i)) blockOf[i] = free++
  model.instruments.forEach((_, i) => { blockOf[stations + i] = free + i })
  const adjacency = adjacencyOf(rowsOf(model, list, blockOf), free + model.instruments.length)
  // A set of instruments touches every one of its stations; it goes last, where that costs one block a station.
  const order = minimumDegree(adjacency.slice(0, free).map(near => near.filter(other => other < free)))
  const position = Int32Array.from(adjacency, (_, i) => i)
  order.forEach((node, place) => { position[node] = place })
  const permuted: number[][] = new Array<number[]>(adjacency.length)
  adjacency.forEach((near, node) => { permuted[position[node]!] = near.map(other => position[other]!) })
  return { model, list, blockOf: blockOf.map(block => block < 0 ? -1 : position[block]!), pattern: blockPattern(permuted) }
}
