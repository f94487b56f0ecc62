import { StoreError, upgrade } from '@lodebook/book'
import type { Posting, Problem, Store } from '@lodebook/book'

export interface Refused { readonly posting: unknown, readonly device?: string, readonly seq?: number, readonly message: string, readonly problem: Problem }
export interface Taken { readonly added: number, readonly refused: readonly Refused[] }

/**
 * Takes in what a device hands over: what every door accepts is added and durable before this returns, and the rest is refused one by one
 * with its reason. A posting that is there already is neither.
 */
export async function takePostings(store: Store, raw: readonly unknown[]): Promise<Taken> {
  const opened = raw.map(posting => ({ posting, result: upgrade(posting) }))
  const good = opened.flatMap(({ result }) => result.ok ? [result.posting] : [])
  const bad = opened.flatMap(({ posting, result }) => result.ok ? [] : [refused(posting, result.problem)])
  const { added, refused: forked } = await append(store, good)
  return { added, refused: [...bad, ...forked] }
}

/** All at once; one by one only when a device's chain has forked, so that the others come in. */
async function append(store: Store, postings: readonly Posting[]): Promise<Taken> {
  try {
    return { ...await store.append(postings), refused: [] }
  } catch (error) {
    if (!isFork(error)) throw error
  }
  const forked: Refused[] = []
  let added = 0
  for (const posting of postings) {
    try {
      added += (await store.append([posting])).added
    } catch (error) {
      if (!isFork(error)) throw error
      forked.push(refused(posting, { field: 'seq', value: posting.seq, expected: 'one posting for each place in a chain', message: error.message }))
    }
  }
  return { added, refused: forked }
}

const isFork = (error: unknown): error is StoreError => error instanceof StoreError && error.reason === 'forked'

const refused = (posting: unknown, problem: Problem): Refused => ({ posting, ...place(posting), message: problem.message, problem })

function place(posting: unknown): { readonly device?: string, readonly seq?: number } {
  if (typeof posting !== 'object' || posting === null) return {}
  const { device, seq } = posting as Partial<Posting>
  return { ...(typeof device === 'string' ? { device } : {}), ...(typeof seq === 'number' ? { seq } : {}) }
}
