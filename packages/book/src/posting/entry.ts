import type { FieldValue, Fields } from '../values.ts'

/** Who wrote, when and where. */
interface Authorship {
  readonly clock: string
  readonly device: string
  readonly by: string
  readonly posting: string // its hash
  readonly why?: string
}

/** What one posting said about one field. */
export interface Saying extends Authorship {
  readonly value: FieldValue | null
  /** The writings of this field that the writer saw standing, as `<clock>@<device>`. */
  readonly saw?: readonly string[]
}

/** One striking through (true) or restoring (false). */
export interface Strike extends Authorship { readonly struck: boolean }

/** The state of one entry: the fold of its postings. */
export interface Entry {
  readonly id: string
  readonly kind: string
  /** The fields in force. */
  readonly fields: Fields
  readonly struck: boolean
  readonly struckWhy?: string
  readonly createdBy: string
  readonly createdAt: string // ISO 8601, from the clock of its first posting
  readonly changedAt: string
  /** Where it came from when not typed; see Posting.origin. */
  readonly origin?: string
  /** Every value each field ever had, oldest first. */
  readonly history: Readonly<Record<string, readonly Saying[]>>
  /** Every time it was struck through or restored, oldest first. */
  readonly strikes?: readonly Strike[]
  /** Hashes of postings that took it for another kind; they are kept and change nothing. */
  readonly strays?: readonly string[]
}

/** A folded book. Lists hold entries that are not struck, in order of creation; `all` holds struck ones too. */
export interface Book {
  readonly all: ReadonlyMap<string, Entry>
  /** Entries of a kind; the same array as long as none of that kind has changed. */
  of(kind: string): readonly Entry[]
  readonly postings: number
}
