import type { Book } from '@lodebook/book'
import { signal } from '@preact/signals-core'
import type { ReadonlySignal } from '@preact/signals-core'
import type { PartName, Reckoned } from '../reckoned.ts'
import { graphOf } from './graph.ts'
import { makers } from './parts/index.ts'

/** Keeps the answers to one book. Nothing is computed until asked for, and after a change only what hangs on it is computed again. */
export interface Reckoner {
  /** Takes a newer state of the book. Lists of kinds that did not change must be the same arrays, as the fold gives them. */
  readonly setBook: (book: Book) => void
  readonly answer: <P extends PartName>(part: P) => Reckoned[P]
  /** How often each node has been computed since the reckoner began. */
  readonly runs: Readonly<Record<string, number>>
}

export function createReckoner(first?: Book): Reckoner {
  const book = signal<Book | undefined>(first)
  const runs: Record<string, number> = {}
  const made: { [P in PartName]?: ReadonlySignal<Reckoned[P]> } = {}
  const answer = <P extends PartName>(part: P): Reckoned[P] => {
    const node = made[part] ??= makers[part](graph) as typeof made[P]
    return (node as ReadonlySignal<Reckoned[P]>).value
  }
  const graph = graphOf(book, answer, runs)
  return { setBook: (next) => { book.value = next }, answer, runs }
}
