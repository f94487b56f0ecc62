import { InputError } from '../core/index.ts'

/** A tenth of the samples by value (of those in the top tenth: a hundredth), with its share of the metal. */
export interface MetalShare { readonly from: number, readonly to: number, readonly mean: number, readonly share: number }

export interface TopCutStudy {
  /** Ten tenths, lowest first. */
  readonly tenths: readonly MetalShare[]
  /** Share of the metal in the highest value alone. */
  readonly highest: number
  /** The usual signs that a few values carry too much: the top tenth has more than 40 % of the metal, or more than 2.3 times the one before. */
  readonly topHeavy: boolean
  /** Each cut with what is left of the mean. */
  readonly cuts: readonly { readonly cut: number, readonly values: number, readonly mean: number, readonly kept: number }[]
}

/** Cuts looked at: down to these quantiles of the values. */
const quantiles = [0.995, 0.99, 0.975, 0.95, 0.925, 0.9, 0.85, 0.8]

/**
 * How much of the metal the highest values carry, and what each cut would cost. Guidance only: a cut throws away metal that may be there.
 * @param values grades or accumulations, zero or more
 * @param weights what each stands for (`cellWeights`, `polygonWeights`); alike unless given
 * @throws InputError below two values or when they hold no metal
 * Source: decile rule: Parrish, Mining Engineering, April 1997 (from memory; checks 6.6).
 */
export function topCutStudy(values: readonly number[], weights: ArrayLike<number> = values.map(() => 1)): TopCutStudy {
  if (values.length < 2) throw new InputError('values', values.length, 'two values or more')
  values.forEach((v, i) => { if (!(v >= 0 && Number.isFinite(v))) throw new InputError(`values[${i}]`, v, 'zero or more') })
  if (weights.length !== values.length) throw new InputError('weights', weights.length, `one weight a value, ${values.length} in all`)
  const ordered = values.map((value, i) => ({ value, weight: weights[i]! })).sort((a, b) => a.value - b.value)
  const total = ordered.reduce((sum, o) => sum + o.weight, 0), metal = ordered.reduce((sum, o) => sum + o.weight * o.value, 0)
  if (!(metal > 0)) throw new InputError('values', metal, 'some metal')
  const tenths = Array.from({ length: 10 }, (_, i) => shareBetween(ordered, total * i / 10, total * (i + 1) / 10, metal))
  const [top, before] = [tenths[9]!, tenths[8]!]
  const wanted = [...new Set(quantiles.map(q => Number(valueAt(ordered, q * total).toPrecision(2))))].filter(c => c > 0 && c < ordered.at(-1)!.value)
  return {
    tenths, highest: ordered.at(-1)!.weight * ordered.at(-1)!.value / metal, topHeavy: top.share > 0.4 || (before.mean > 0 && top.mean > 2.3 * before.mean),
    cuts: wanted.map((cut) => {
      const left = ordered.reduce((sum, o) => sum + o.weight * Math.min(cut, o.value), 0)
      return { cut, values: ordered.filter(o => o.value > cut).length, mean: left / total, kept: left / metal }
    }),
  }
}

type Ordered = readonly { readonly value: number, readonly weight: number }[]

/** Metal between two amounts of sampled ground; a value on the edge is parted. */
function shareBetween(ordered: Ordered, from: number, to: number, metal: number): MetalShare {
  let at = 0, sum = 0, low = Infinity, high = 0
  for (const { value, weight } of ordered) {
    const inside = Math.min(at + weight, to) - Math.max(at, from)
    if (inside > 0) { sum += inside * value; low = Math.min(low, value); high = value }
    at += weight
  }
  return { from: low, to: high, mean: sum / (to - from), share: sum / metal }
}

function valueAt(ordered: Ordered, at: number): number {
  let sum = 0
  return ordered.find((o) => { sum += o.weight; return sum >= at })?.value ?? ordered.at(-1)!.value
}
