import { computed, effect, signal } from '@preact/signals'
import type { ReadonlySignal } from '@preact/signals'
import { wrap } from 'comlink'
import type { PartName as Part, Reckoned } from '@lodebook/answers'
import type { Reckoner } from '../reckoner/reckoner.ts'
import { book } from './desk.ts'

/** The worker that works the answers out, apart from the one that writes, so that saving never waits for a long reckoning. */
const reckoner = wrap<Reckoner>(new Worker(new URL('../reckoner/worker.ts', import.meta.url), { type: 'module', name: 'reckoner' }))

export type { Part }

export interface Asked<P extends Part> {
  readonly value: Reckoned[P] | undefined
  /** How many postings it rests on; -1 before the first. */
  readonly postings: number
  readonly trouble?: string
}

const postings = computed(() => book.value?.postings ?? -1)
const made = new Map<Part, { readonly answer: ReadonlySignal<Asked<Part>>, readonly want: () => void }>()

/**
 * A part of what the book answers. It is worked out when first asked for and again whenever the book has grown; until the new one is
 * there the last one stands.
 */
function make<P extends Part>(part: P) {
  const answer = signal<Asked<P>>({ value: undefined, postings: -1 })
  let wanted = false, busy = false
  const run = async (): Promise<void> => {
    if (busy) return
    busy = true
    while (answer.peek().postings !== postings.peek()) {
      const now = postings.peek()
      try {
        const value: unknown = await reckoner.answer(part, now, book.peek()!.database)
        // eslint-disable-next-line @typescript-eslint/no-unnecessary-type-assertion -- without it the compiler would follow every part at once, which it can't
        answer.value = { value: value as Reckoned[P], postings: now }
      } catch (problem) {
        answer.value = { ...answer.peek(), postings: now, trouble: problem instanceof Error ? problem.message : String(problem) }
      }
    }
    busy = false
  }
  return {
    answer,
    want: (): void => {
      if (wanted) return
      wanted = true
      effect(() => { if (postings.value >= 0) void run() })
    },
  }
}

/** Asks for a part and gives the signal that will hold it. */
export function ask<P extends Part>(part: P): Asked<P> {
  const one = made.get(part) ?? make(part)
  made.set(part, one)
  one.want()
  return one.answer.value as Asked<P>
}

/** Whether a newer answer than the one shown is being worked out. */
export const isBehind = (asked: Asked<Part>): boolean => asked.postings !== postings.value
