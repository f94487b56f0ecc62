import { InputError } from '../../core/index.ts'
import type { Range } from '../../core/index.ts'
import type { VariogramModel } from '../model.ts'
import { streamOf } from '../simulation/streams.ts'
import type { LikelihoodFit } from './fit-likelihood.ts'

/**
 * A range that holds a parameter with the stated share of belief, tails alike. Between values of the grid it is read off in the logarithm.
 * @throws InputError when confidence is not between 0 and 1
 */
export function parameterRange(fit: LikelihoodFit, parameter: 'nugget' | 'partialSill' | 'range' | 'sill', confidence: number): Range {
  if (!(confidence > 0 && confidence < 1)) throw new InputError('confidence', confidence, 'a share between 0 and 1')
  const weights = new Map<number, number>()
  for (const node of fit.nodes) weights.set(node[parameter], (weights.get(node[parameter]) ?? 0) + node.weight)
  const ordered = [...weights].sort(([a], [b]) => a - b)
  // Each value stands at the middle of its own share.
  let sum = 0
  const middles = ordered.map(([value, weight]) => {
    sum += weight
    return { value, at: sum - weight / 2 }
  })
  const read = (share: number) => {
    const next = middles.findIndex(({ at }) => at >= share)
    if (next <= 0) return middles.at(next)!.value
    const [low, high] = [middles[next - 1]!, middles[next]!]
    return low.value * (high.value / low.value) ** ((share - low.at) / (high.at - low.at))
  }
  return { low: read((1 - confidence) / 2), high: read((1 + confidence) / 2), confidence }
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
