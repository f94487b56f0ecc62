import type { Draft } from '../posting/posting.ts'
import type { Problem } from '../schema/problem.ts'

/** An entry that a row would add. */
export interface RowDraft extends Draft {
  readonly row: number
  readonly origin: string
}

/** What became of one column of the file. */
export interface ColumnUse {
  readonly heading: string
  readonly letter: string
  /** The fields that it feeds, with the unit of bare numbers in it; none for a column that is left out or goes into the note. */
  readonly feeds: readonly { readonly kind: string, readonly field: string, readonly label: string, readonly unit?: string }[]
  readonly toNote: boolean
  /** The first thing that stands in it. */
  readonly example: string
}

/** A row that the book holds already: from this very file, or as an entry that says the same. */
export interface AlreadyThere {
  readonly row: number
  readonly kind: string
  readonly entry: string
  readonly why: 'this file' | 'same content'
  readonly struck: boolean
}

/** What a file would add to a book. */
export interface CsvPreview {
  /** Of the file's bytes. */
  readonly sha256: string
  readonly kinds: readonly string[]
  /** Rows below the headings that hold something. */
  readonly rows: number
  readonly columns: readonly ColumnUse[]
  /** Entries that may be written, from rows without an error. */
  readonly drafts: readonly RowDraft[]
  readonly already: readonly AlreadyThere[]
  /** Words that were read as a choice because the crew said so, each with its number of rows. */
  readonly readAs: readonly { readonly field: string, readonly text: string, readonly choice: string, readonly rows: number }[]
  /** Errors and warnings, by row. A problem without a row is about the file or its headings as a whole. */
  readonly problems: readonly Problem[]
}
