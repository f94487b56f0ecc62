import { byChain, canonicalJson } from '@lodebook/book'
import { makeDemo, type DemoOptions } from './make-demo.ts'

/** The demo's book as JSON Lines, one posting a line, by device and place in its chain, each line ended: the whole-book file. */
export const demoLines = (seed = 1, options: DemoOptions = {}): string =>
  [...makeDemo(seed, options).postings].sort(byChain).map(posting => `${canonicalJson(posting)}\n`).join('')
