import type { Reckoned, SecondLook } from '@lodebook/answers'

/** What the screens ask for: the answers, and what in the book is worth a second look. */
export interface Parts extends Reckoned { readonly secondLooks: readonly SecondLook[] }

/** What the worker that works the answers out does for the screens. */
export interface Reckoner {
  /**
   * A part of what the book answers.
   * @param postings  how many postings the answer must rest on at least
   * @param database  the database that holds the book
   */
  answer<P extends keyof Parts>(part: P, postings: number, database: string): Promise<Parts[P]>
}
