import type { FieldValue, Fields } from '../values.ts'

/** What one posting said about one field. */
export interface Saying {
  readonly value: FieldValue | null
  readonly clock: string
  readonly device: string
  readonly by: string
  readonly posting: string // its hash
  readonly why?: string
}

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
  /** Every value each field ever had, oldest first. */
  readonly history: Readonly<Record<string, readonly Saying[]>>
}

/** A folded book. Lists hold entries that are not struck, in order of creation; `all` holds struck ones too. */
export interface Book {
  readonly all: ReadonlyMap<string, Entry>
  /** Entries of a kind; the same array as long as none of that kind has changed. */
  of(kind: string): readonly Entry[]
  readonly postings: number
}
