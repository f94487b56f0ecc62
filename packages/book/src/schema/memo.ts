import type { Entry } from '../posting/entry.ts'

/** Keeps what was worked out from lists of entries for as long as those lists stand: a book hands out the same list of a kind until that kind changes. */
export function memo<T>(build: (...lists: (readonly Entry[])[]) => T): (first: readonly Entry[], ...more: (readonly Entry[])[]) => T {
  const kept = new WeakMap<readonly Entry[], { readonly more: readonly (readonly Entry[])[], readonly result: T }>()
  return (first, ...more) => {
    const before = kept.get(first)
    if (before?.more.every((list, i) => list === more[i])) return before.result
    const result = build(first, ...more)
    kept.set(first, { more, result })
    return result
  }
}
