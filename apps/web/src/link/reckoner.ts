import { computed, effect, signal } from '@preact/signals'
import { wrap } from 'comlink'
import type { Parts, Reckoner } from '../reckoner/reckoner.ts'
import { book } from './desk.ts'

/** The worker that works the answers out, apart from the one that writes, so that saving never waits for a long reckoning. */
const reckoner = wrap<Reckoner>(new Worker(new URL('../reckoner/worker.ts', import.meta.url), { type: 'module', name: 'reckoner' }))

export type Part = keyof Parts
export interface Asked<P extends Part> {
  readonly value: Parts[P] | undefined
  /** How many postings it rests on; -1 before the first. */
  readonly postings: number
  readonly trouble?: string
}

const postings = computed(() => book.value?.postings ?? -1)
const parts = { workings: make('workings'), vein: make('vein'), grade: make('grade'), pay: make('pay'), secondLooks: make('secondLooks') }

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
        answer.value = { value: await reckoner.answer(part, now, book.peek()!.database) as Parts[P], postings: now }
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
  parts[part].want()
  return parts[part].answer.value as unknown as Asked<P>
}

/** Whether a newer answer than the one shown is being worked out. */
export const isBehind = (asked: Asked<Part>): boolean => asked.postings !== postings.value
