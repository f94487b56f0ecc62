import type { FieldValue } from '../values.ts'

/**
 * One immutable write to the book. A book is its postings and nothing else; the order in which they arrive does not matter.
 * The rules are numbered in docs/postings.md.
 */
export interface Posting {
  readonly v: 1
  /** The device that wrote it, and its place in that device's chain: 1, 2, 3… */
  readonly device: string
  readonly seq: number
  /** Hash of the device's posting before this one; '' for its first. */
  readonly prev: string
  /** Hybrid logical clock: `<ms since 1970, 13 digits>-<counter, 4 digits>`; compared as text, then by device. */
  readonly clock: string
  readonly by: string
  /** The entry written to, and its kind. An entry begins with its first posting. */
  readonly entry: string
  readonly kind: string
  /** Fields set; null takes a field's value away. Fields not named stay as they were. */
  readonly set: Readonly<Record<string, FieldValue | null>>
  /** For each field set that had been written before, the writings that the writer saw standing, as `<clock>@<device>`, so that conflicts can be listed. */
  readonly saw?: Readonly<Record<string, readonly string[]>>
  /** Strikes the entry through (true) or restores it (false). Nothing is ever erased. */
  readonly struck?: boolean
  readonly why?: string
  /** Where it came from when not typed: `csv:<file sha256>:<row>`; importing the same again adds nothing. */
  readonly origin?: string
  /** SHA-256 of the canonical JSON of all the above. */
  readonly hash: string
}

/** A posting before the device has given it a place in its chain. */
export type Draft = Pick<Posting, 'entry' | 'kind' | 'set'> & Partial<Pick<Posting, 'struck' | 'why' | 'origin'>>
