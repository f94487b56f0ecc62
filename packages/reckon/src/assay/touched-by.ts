import { InputError } from '../core/index.ts'

/** One place of a batch in the order in which it was run. A control of a sort passed or failed; a bag is neither. */
export interface RunPlace { readonly control?: { readonly sort: string, readonly passed: boolean } }

/**
 * Which bags a failed control puts in question: all that were run between the last control of its sort that passed and the next that did.
 *
 * A blank speaks against what came after the gold was picked up as much as before it, so both sides are named; where no control stands
 * at an end, the batch's end is taken.
 * @param failed  place of the failed control
 * @returns places of bags, in order
 * @throws InputError
 */
export function touchedBy(run: readonly RunPlace[], failed: number): readonly number[] {
  const control = run[failed]?.control
  if (!control || control.passed) throw new InputError('failed', failed, 'the place of a control that failed')
  const passed = (i: number) => run[i]!.control?.sort === control.sort && run[i]?.control?.passed === true
  let [from, to] = [failed, failed]
  while (from > 0 && !passed(from - 1)) from--
  while (to < run.length - 1 && !passed(to + 1)) to++
  return run.slice(from, to + 1).flatMap((place, i) => place.control ? [] : [from + i])
}
