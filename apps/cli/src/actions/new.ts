import { existsSync, realpathSync, rmSync } from 'node:fs'
import { resolve } from 'node:path'
import { fold, input, isError, newDevice, newEntryId, writePostings } from '@lodebook/book'
import { newDeviceName, remember } from '../book/device.ts'
import { beginStore } from '../book/open-store.ts'
import { writer } from '../book/open-book.ts'
import { exit } from '../exit.ts'
import type { Io } from '../io/io.ts'
import { problemJson } from '../print/problems.ts'
import { Refusal, refuse } from '../refusal.ts'

export interface NewOptions { readonly name?: string, readonly units?: string, readonly currency?: string, readonly by?: string }

/** `lodebook new`: begins a book in a file of its own, with the mine's name in it. */
export async function newBook(path: string, options: NewOptions, io: Io): Promise<number> {
  const file = resolve(io.cwd, path)
  if (existsSync(file)) throw refuse('book', path, 'a file that is not there yet')
  const by = writer(options.by, io)
  const device = newDevice(newDeviceName(io))
  const texts = { name: options.name ?? '', units: options.units ?? '', currency: options.currency ?? '' }
  const written = Object.values(texts).some(text => text !== '')
  const { set, problems } = written ? input('mine', texts, { book: fold([]), now: io.now() }) : { set: {}, problems: [] }
  const wrong = problems.find(isError)
  if (wrong) throw new Refusal(problemJson(wrong))
  const store = beginStore(file)
  try {
    if (written) {
      const { postings, state } = writePostings(device, [{ entry: newEntryId(device), kind: 'mine', set }], { by, nowMs: io.now() })
      await store.append(postings)
      remember(io, realpathSync(file), { device: state.device, head: { seq: state.seq, hash: state.last } })
    }
  } catch (failure) {
    await store.close()
    rmSync(file, { force: true })
    throw failure
  }
  await store.close()
  io.out(`${path} is begun.\n`)
  return exit.ok
}
