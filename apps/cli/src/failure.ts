import type { StoreError, StoreFailure } from '@lodebook/book'
import { InputError } from '@lodebook/reckon'
import { CommanderError } from 'commander'
import { exit } from './exit.ts'
import type { Io } from './io/io.ts'
import { plain, Refusal, sentence } from './refusal.ts'

/** What the operating system calls a failure: what it means to the person at the prompt, and what would be right. */
const unreachable: Readonly<Record<string, readonly [is: string, expected: string]>> = {
  ENOENT: ['there is no such file or folder', 'a file that is there'],
  ENOTDIR: ['a part of the path is no folder', 'a folder where the path says one is'],
  EISDIR: ['this is a folder', 'a file'],
  EACCES: ['you may not read or write this', 'a file that you may read and write'],
  EPERM: ['you may not read or write this', 'a file that you may read and write'],
  EROFS: ['this disk can only be read', 'a disk that can be written to'],
  ENOSPC: ['the disk is full; nothing was written', 'room on the disk'],
  EFBIG: ['the file may not grow so large; nothing was written', 'room on the disk'],
  EDQUOT: ['your share of the disk is full; nothing was written', 'room on the disk'],
}

/** What a store's failure asks for, and how the command ends. */
const stores: Readonly<Record<StoreFailure, { readonly expected: string, readonly code: number }>> = {
  forked: { expected: 'postings that follow from those in the book', code: exit.problems },
  misnamed: { expected: 'a file whose bytes fit its name', code: exit.badInput },
  damaged: { expected: 'a sound book', code: exit.problems },
  'not a book': { expected: 'a book', code: exit.badInput },
  newer: { expected: 'a book that this version reads', code: exit.unreachable },
  full: { expected: 'room on the disk', code: exit.unreachable },
  'read-only': { expected: 'a book that you may write to', code: exit.unreachable },
  busy: { expected: 'a book that no other program is writing to', code: exit.unreachable },
  closed: { expected: 'an open book', code: exit.fault },
  failed: { expected: 'a disk that reads and writes', code: exit.unreachable },
}

/**
 * Says why a command ended, on standard error: one line of text, or one JSON object.
 * @returns the exit code
 */
export function sayFailure(failure: unknown, io: Io, as: { readonly json: boolean }): number {
  if (failure instanceof CommanderError) {
    if (failure.exitCode === 0) return exit.ok
    if (as.json) io.err(`${JSON.stringify({ error: failure.message.replace(/^error: /, ''), field: 'command line', value: null, expected: 'what --help lists' })}\n`)
    return exit.badInput
  }
  const refusal = asRefusal(failure)
  if (!refusal) {
    io.err(`Something went wrong inside the program; nothing more was done.\n${failure instanceof Error ? failure.stack ?? failure.message : String(failure)}\n`)
    return exit.fault
  }
  io.err(as.json ? `${JSON.stringify(refusal.refused)}\n` : `${refusal.refused.error}\n`)
  return refusal.code
}

/** By its name, so that a command that opens no book need not load one to say why it failed. */
const isStoreError = (failure: unknown): failure is StoreError => failure instanceof Error && failure.name === 'StoreError'

function asRefusal(failure: unknown): Refusal | undefined {
  if (failure instanceof Refusal) return failure
  if (failure instanceof InputError) {
    const error = failure.value === undefined ? sentence(failure.field, undefined, failure.expected) : failure.message
    return new Refusal({ error, field: failure.field, value: plain(failure.value), expected: failure.expected })
  }
  if (isStoreError(failure)) {
    return new Refusal({ error: failure.message, field: 'book', value: null, expected: stores[failure.reason].expected }, stores[failure.reason].code)
  }
  if (!(failure instanceof Error) || !('code' in failure) || typeof failure.code !== 'string') return undefined
  const found = unreachable[failure.code]
  if (found === undefined) return undefined
  const file = 'path' in failure && typeof failure.path === 'string' ? failure.path : 'The disk'
  const [is, expected] = found
  return new Refusal({ error: `${file}: ${is}.`, field: 'file', value: file, expected }, exit.unreachable)
}
