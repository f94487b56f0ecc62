import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll } from 'vitest'
import type { Io } from '../src/io/io.ts'
import { lodebook } from '../src/lodebook.ts'

export interface Ended { readonly code: number, readonly out: string, readonly err: string }

/** A folder of its own for a test file, taken away at the end. */
export function folder(): string {
  const made = mkdtempSync(join(tmpdir(), 'lodebook-cli-'))
  afterAll(() => { rmSync(made, { recursive: true, force: true }) })
  return made
}

/** @param serving  called, with what was printed so far, while a hub serves; it ends when this does */
export type Run = (words: readonly string[], stdin?: string | Uint8Array, serving?: (out: string) => Promise<void>) => Promise<Ended>

/** The command line in a folder, with a clock that moves one second a look, and names for devices that follow each other. */
export function prompt(cwd: string, start = Date.UTC(2026, 10, 25, 12)): Run {
  let now = start
  let names = 0
  return async (words, stdin = '', serving = () => Promise.resolve()) => {
    const out: string[] = []
    const err: string[] = []
    const io: Io = {
      stdin: () => Promise.resolve(typeof stdin === 'string' ? new TextEncoder().encode(stdin) : stdin),
      out: (text) => { out.push(text) }, err: (text) => { err.push(text) },
      env: { XDG_CONFIG_HOME: join(cwd, 'config') }, cwd, user: 'rhys', root: fileURLToPath(new URL('../../..', import.meta.url)), columns: 80,
      now: () => now += 1000, random: bytes => new Uint8Array(bytes).fill(++names), stopped: () => serving(out.join('')),
    }
    const code = await lodebook(words, io)
    return { code, out: out.join(''), err: err.join('') }
  }
}
