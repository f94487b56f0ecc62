import type { Entry } from '@lodebook/book'
import { standing } from '../assumptions.ts'
import { textOf } from '../read.ts'
import type { SecondLook } from './second-look.ts'

const known = Object.keys(standing)

/** Assumptions under a name that nothing asks for: they change no answer, most likely by a slip of the pen. The nearest known names are given. */
export function unknownAssumptions(entries: readonly Entry[]): readonly SecondLook[] {
  return entries.flatMap((entry): SecondLook[] => {
    const name = (textOf(entry, 'name') ?? '').trim()
    if (known.includes(name.toLowerCase())) return []
    const near = [...known].sort((a, b) => likeness(b, name) - likeness(a, name)).slice(0, 3)
    return [{
      sort: 'assumption', entries: [entry.id], times: 1, sentence: `Nothing is reckoned with an assumption called “${name}”, so it changes no answer.`,
      todo: `Did you mean ${near.slice(0, -1).join(', ')} or ${near.at(-1)!}? Then correct its name.`,
    }]
  })
}

/** Share of pairs of letters that two names have in common (Dice's measure). */
function likeness(a: string, b: string): number {
  const pairs = (text: string) => new Set(Array.from({ length: Math.max(0, text.length - 1) }, (_, i) => text.toLowerCase().slice(i, i + 2)))
  const [x, y] = [pairs(a), pairs(b)]
  return 2 * [...x].filter(p => y.has(p)).length / Math.max(1, x.size + y.size)
}
