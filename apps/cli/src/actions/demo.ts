import { existsSync, rmSync } from 'node:fs'
import { resolve } from 'node:path'
import { makeDemo } from '@lodebook/demo'
import { beginStore } from '../book/open-store.ts'
import { exit } from '../exit.ts'
import type { Io } from '../io/io.ts'
import { refuse } from '../refusal.ts'

/** `lodebook demo`: the invented mine in a book of its own. The same seed gives the same book. */
export async function demoBook(path: string, options: { readonly seed: string }, io: Io): Promise<number> {
  const file = resolve(io.cwd, path)
  if (existsSync(file)) throw refuse('book', path, 'a file that is not there yet')
  const seed = Number(options.seed)
  if (!Number.isInteger(seed) || seed < 0) throw refuse('--seed', options.seed, 'a whole number of zero or more')
  const { postings } = makeDemo(seed)
  const store = beginStore(file)
  try {
    await store.append(postings)
  } catch (failure) {
    await store.close()
    rmSync(file, { force: true })
    throw failure
  }
  await store.close()
  io.out(`${path} holds the demo: an invented mine, its people and its gold. ${postings.length} postings.\n`)
  return exit.ok
}
