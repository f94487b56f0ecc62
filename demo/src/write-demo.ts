import { exportLines, MemoryStore } from '@lodebook/book'
import { makeDemo, type DemoOptions } from './make-demo.ts'

/** The demo's book as the text of a book file (JSON Lines), the same to the byte for the same seed. */
export async function demoLines(seed = 1, options: DemoOptions = {}): Promise<string> {
  const store = new MemoryStore()
  await store.append(makeDemo(seed, options).postings)
  const lines: string[] = []
  for await (const line of exportLines(store)) lines.push(line)
  return lines.join('')
}
