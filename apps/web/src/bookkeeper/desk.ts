import type { Draft, Entry, Fields } from '@lodebook/book'
import type { CsvOptions, CsvPreview } from '@lodebook/book/csv'

/** How the device stands with the crew's hub. */
export interface HubState {
  /**
   * `none`: there is no hub at this address. `unreachable`: it does not answer now. `other-book`: it keeps another mine's book.
   * `unjoined`: both it and this device hold writing, and nobody has said yet that they are one book.
   */
  readonly state: 'asking' | 'none' | 'unreachable' | 'level' | 'sending' | 'refused' | 'other-book' | 'unjoined'
  /** When the two last agreed, ISO 8601. */
  readonly levelAt?: string
  /** Postings here that the hub has not taken yet. */
  readonly waiting: number
  /** The hub's book, when it is another. */
  readonly book?: { readonly id: string, readonly name: string }
  readonly says?: string
}

/** What the screens need to know of the book at any time. */
export interface BookState {
  readonly name: string
  readonly district: string
  readonly datum: string
  readonly currency: string
  /** How the crew likes answers and bare numbers: metres and g/t, or feet and oz/ton. */
  readonly units: 'metres and g/t' | 'feet and oz/ton'
  readonly people: readonly string[]
  /** The crew's own size classes of colours: what one grain of each weighs, milligrams. */
  readonly colourMg: Readonly<Record<string, number>>
  /** Who writes on this device; '' when nobody has said. */
  readonly writer: string
  /** Kinds of which a new entry is half written on this device. */
  readonly begun: readonly string[]
  readonly postings: number
  /** Entries that stand and entries struck through, by kind. */
  readonly counts: Readonly<Record<string, { readonly standing: number, readonly struck: number }>>
  readonly conflicts: number
  readonly device: string
  /** The name of the database that holds the book on this device. */
  readonly database: string
  readonly hub: HubState
}

/** What is half written, as typed, by field. */
export type Texts = Readonly<Record<string, string>>

/** An entry as a list shows it. */
export interface EntryLine { readonly entry: Entry, readonly title: string }

/** What a form can offer before a key is pressed. */
export interface FormHelp {
  /** Words used before in a field, latest first. */
  readonly used: Readonly<Record<string, readonly string[]>>
  readonly stations: readonly string[]
  /** What was last written in each field of the kind: on this device, or by anybody when nothing was. */
  readonly before: Fields
  /** What was half written when the form was last open. */
  readonly draft?: Texts
}

export interface Finding { readonly field: string, readonly message: string, readonly warning: boolean }
/** A draft for an entry; without an id it begins a new one. */
export type Writable = Omit<Draft, 'entry'> & { readonly entry?: string }
export type Written = { readonly saved: true, readonly entry: string, readonly at: string } | { readonly saved: false, readonly problems: readonly Finding[] }

/** A field into which people wrote different things without having seen each other's. The last saying stands. */
export interface ConflictLine {
  readonly entry: string
  readonly title: string
  readonly field: string
  readonly label: string
  readonly sayings: readonly { readonly by: string, readonly clock: string, readonly text: string }[]
}

/** Who surveyed what is drawn, and from when to when. */
export interface SurveyedBy { readonly surveyors: readonly string[], readonly from: string, readonly to: string }

/** What the worker that owns the book does for the screens. Everything returned is a copy; what is asked before the book is open waits until it is. */
export interface Desk {
  open(): Promise<BookState>
  onChange(tell: (state: BookState) => void): void
  /** Takes how far the hub's clock is ahead of this device's, milliseconds: a time that has come by either is not in the future. */
  hubClock(ahead: number): void
  /** Resolves as saved only when it is durable on this device. */
  write(by: string, draft: Writable): Promise<Written>
  /** Problems and doubts of something half written, without writing it. */
  check(draft: Writable): Promise<readonly Finding[]>
  entriesOf(kind: string): Promise<readonly EntryLine[]>
  entries(ids: readonly string[]): Promise<readonly EntryLine[]>
  /** Entries begun on this device since a moment, latest first. */
  writtenSince(iso: string): Promise<readonly EntryLine[]>
  /** @param mend  the entry that the form is to mend; a new one when left out */
  formHelp(kind: string, mend?: string): Promise<FormHelp>
  /** Keeps what is half written, at every key, as durably as what is saved; without texts it is done with. */
  keepDraft(kind: string, mend: string | undefined, texts: Texts | undefined): Promise<void>
  setWriter(name: string): Promise<void>
  conflicts(): Promise<readonly ConflictLine[]>
  surveyedBy(): Promise<SurveyedBy>
  /** What a file of columns would add. Nothing is written. */
  previewFile(bytes: Uint8Array, options: CsvOptions): Promise<CsvPreview>
  /** Writes what the last preview showed; certificates that assays name keep the file whole. How many entries were added, certificates aside. */
  acceptFile(by: string, fileName: string): Promise<number>
  exportBook(): Promise<string>
  syncNow(): Promise<void>
  /** Says that the hub's book and the one here are one and the same. */
  joinHub(): Promise<void>
  /** Lays this book aside on the device, untouched, and opens the hub's. */
  openHubsBook(): Promise<void>
  putBlob(bytes: Uint8Array): Promise<string>
  getBlob(sha256: string): Promise<Uint8Array | undefined>
}
