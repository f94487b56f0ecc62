import { signal } from '@preact/signals'
import { proxy, wrap } from 'comlink'
import type { BookState, Desk } from '../bookkeeper/desk.ts'
import { keepFromClearing } from './keep-from-clearing.ts'

/** The worker that owns the book on this device. */
export const desk = wrap<Desk>(new Worker(new URL('../bookkeeper/worker.ts', import.meta.url), { type: 'module', name: 'bookkeeper' }))

/** The book as it stands; undefined until it has been opened. */
export const book = signal<BookState | undefined>(undefined)
/** What the browser answered when asked never to clear the book away; undefined until it has. */
export const persisted = signal<boolean | undefined>(undefined)
/** Why the book could not be opened, when it could not. */
export const trouble = signal<string | undefined>(undefined)

export async function openBook(): Promise<void> {
  try {
    await desk.onChange(proxy((state) => { book.value = state }))
    book.value = await desk.open()
    persisted.value = await keepFromClearing()
  } catch (problem) {
    trouble.value = problem instanceof Error ? problem.message : String(problem)
  }
}
