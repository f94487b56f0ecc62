import type { StoreError, StoreFailure } from '@lodebook/book'
import { InputError } from '@lodebook/reckon'
import { CommanderError } from 'commander'
import { exit } from './exit.ts'
import type { Io } from './io/io.ts'
import { plain, Refusal, refuse, sentence } from './refusal.ts'

/** What the operating system calls a failure, and what it means to the person at the prompt. */
const unreachable: Readonly<Record<string, string>> = {
  ENOENT: 'a file that is there',
  ENOTDIR: 'a folder where the path says one is',
  EISDIR: 'a file, not a folder',
  EACCES: 'a file that you may read and write',
  EPERM: 'a file that you may read and write',
  EROFS: 'a disk that can be written to',
  ENOSPC: 'room on the disk; nothing was written',
  EFBIG: 'room on the disk; nothing was written',
  EDQUOT: 'room on the disk; nothing was written',
  EADDRINUSE: 'a port that nothing else is using',
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
  const expected = unreachable[failure.code]
  return expected === undefined ? undefined : refuse('file', pathOf(failure), expected, exit.unreachable)
}

const pathOf = (failure: Error): string => 'path' in failure && typeof failure.path === 'string' ? failure.path : failure.message
