import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs'
import { homedir } from 'node:os'
import { dirname, join } from 'node:path'
import type { Head } from '@lodebook/book'
import type { Io } from '../io/io.ts'

/** What this user's machine remembers of a book file: which device it writes as, and its last posting there. */
export interface Remembered { readonly device: string, readonly head?: Head }

/**
 * The device that the command line writes as is remembered in the user's own folder and not in the book, so that a copied book is never
 * written to by two machines under one name.
 */
const fileOf = (io: Io): string => join(io.env['XDG_CONFIG_HOME'] ?? join(io.env['HOME'] ?? homedir(), '.config'), 'lodebook', 'devices.json')

function readAll(io: Io): Readonly<Record<string, Remembered>> {
  try {
    const all: unknown = JSON.parse(readFileSync(fileOf(io), 'utf8'))
    return typeof all === 'object' && all !== null ? all as Readonly<Record<string, Remembered>> : {}
  } catch {
    return {} // Not written yet, or spoilt: a new device is begun, which costs nothing but a name.
  }
}

/** What is remembered of a book file; undefined when nothing is. */
export const remembered = (io: Io, book: string): Remembered | undefined => readAll(io)[book]

/** Remembers how far this device has come in a book file. A folder that can't be written to is no reason to lose what was written in the book. */
export function remember(io: Io, book: string, state: Remembered): void {
  const file = fileOf(io)
  try {
    mkdirSync(dirname(file), { recursive: true })
    const part = `${file}.${process.pid}`
    writeFileSync(part, `${JSON.stringify({ ...readAll(io), [book]: state }, null, 2)}\n`)
    renameSync(part, file)
  } catch { /* The next command begins a new device. */ }
}

/** A name for a new device; no two are alike. */
export const newDeviceName = (io: Io): string => `cli-${[...io.random(6)].map(byte => byte.toString(16).padStart(2, '0')).join('')}`
