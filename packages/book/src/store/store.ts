import type { Posting } from '../posting/posting.ts'

/** How far a copy of the book has come: the last place in each device's chain that it holds without a gap. */
export type Cursors = Readonly<Record<string, number>>

/**
 * Where postings are kept. `append` resolves only when they are durable, and is all or nothing; a posting already there is passed over.
 * The rules are numbered
 * in docs/postings.md, [S1] to [S7]; one conformance suite holds for every store. What cannot be done is a StoreError.
 */
export interface Store {
  append(postings: readonly Posting[]): Promise<{ readonly added: number }>
  /** All postings after the cursors, by device and place in its chain; all of them when none are given. */
  since(cursors?: Cursors): Promise<readonly Posting[]>
  cursors(): Promise<Cursors>
  putBlob(sha256: string, bytes: Uint8Array): Promise<void>
  getBlob(sha256: string): Promise<Uint8Array | undefined>
  close(): Promise<void>
}
