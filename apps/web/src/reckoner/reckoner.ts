import type { PartName, Reckoned } from '@lodebook/answers'

/** What the worker that works the answers out does for the screens. */
export interface Reckoner {
  /**
   * A part of what the book answers.
   * @param postings  how many postings the answer must rest on at least
   * @param database  the database that holds the book
   */
  answer<P extends PartName>(part: P, postings: number, database: string): Promise<Reckoned[P]>
}
