import { InputError } from '../core/index.ts'

/**
 * Chances raised for having asked several questions at once, so that the chance of one false yes among all of them stays as stated.
 * @param chances  one a question, 0 to 1, in any order
 * @returns in the same order
 * Source: Holm, Scand. J. Statist. 6, 1979, 65 (from memory); checked against R's p.adjust.
 */
export function holm(chances: readonly number[]): readonly number[] {
  chances.forEach((p, i) => { if (!(p >= 0 && p <= 1)) throw new InputError(`chances[${i}]`, p, '0 to 1') })
  const order = chances.map((_, i) => i).sort((a, b) => chances[a]! - chances[b]!), raised = new Array<number>(chances.length).fill(0)
  let least = 0
  order.forEach((i, rank) => {
    least = Math.max(least, Math.min(1, (chances.length - rank) * chances[i]!))
    raised[i] = least
  })
  return raised
}
