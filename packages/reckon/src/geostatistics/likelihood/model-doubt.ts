import { InputError } from '../../core/index.ts'
import type { Range } from '../../core/index.ts'
import type { VariogramModel } from '../model.ts'
import { streamOf } from '../simulation/streams.ts'
import type { LikelihoodFit } from './fit-likelihood.ts'

/**
 * A range that holds a parameter with the stated share of belief, tails alike; its ends are values on the grid.
 * @throws InputError when confidence is not between 0 and 1
 */
export function parameterRange(fit: LikelihoodFit, parameter: 'nugget' | 'partialSill' | 'range' | 'sill', confidence: number): Range {
  if (!(confidence > 0 && confidence < 1)) throw new InputError('confidence', confidence, 'a share between 0 and 1')
  const ordered = fit.nodes.map(node => ({ value: node[parameter], weight: node.weight })).sort((a, b) => a.value - b.value)
  const at = (share: number) => {
    let sum = 0
    for (const { value, weight } of ordered) {
      sum += weight
      if (sum >= share) return value
    }
    return ordered.at(-1)!.value
  }
  return { low: at((1 - confidence) / 2), high: at((1 + confidence) / 2), confidence }
}

/**
 * Draws models in proportion to belief, evenly spread over it (one random start, equal steps), so that simulations can carry the doubt
 * about the variogram. The same seed gives the same models.
 * @throws InputError when count is not a whole number >= 0
 */
export function drawModels(fit: LikelihoodFit, count: number, seed: number): VariogramModel[] {
  if (!(Number.isInteger(count) && count >= 0)) throw new InputError('count', count, 'a whole number, 0 or more')
  const start = streamOf(seed, -2).uniform()
  const models: VariogramModel[] = []
  let index = 0
  let upTo = fit.nodes[0]!.weight
  for (let i = 0; i < count; i++) {
    const at = (i + start) / count
    while (upTo < at && index + 1 < fit.nodes.length) upTo += fit.nodes[++index]!.weight
    models.push(fit.nodes[index]!.model)
  }
  return models
}
