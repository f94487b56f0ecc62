import type { Saying } from './entry.ts'

/** How a posting names a writing of one field that its writer saw. */
export const sightOf = ({ clock, device }: { readonly clock: string, readonly device: string }): string => `${clock}@${device}`

/**
 * [F8] The sayings of one field that nobody has written over knowingly: not seen by a later writer of it, and not followed by another of
 * the same device. One in an undisturbed book; two or more when people wrote without knowing of each other. The last is in force.
 * @param sayings  in order
 */
export function standing(sayings: readonly Saying[]): readonly Saying[] {
  if (sayings.length < 2) return sayings
  const seen = new Set(sayings.flatMap(({ saw }) => saw ?? []))
  const last = new Map(sayings.map((saying, i) => [saying.device, i]))
  return sayings.filter((saying, i) => last.get(saying.device) === i && !seen.has(sightOf(saying)))
}
