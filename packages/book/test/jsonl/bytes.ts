import { exportLines } from '../../src/index.ts'
import type { Store } from '../../src/index.ts'

export const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text)

export async function exported(store: Store, options: { blobs?: boolean } = {}): Promise<string> {
  let text = ''
  for await (const line of exportLines(store, options)) text += line
  return text
}

/** A file read in chunks of so many bytes. */
export function* chunked(bytes: Uint8Array, size = 65_536): Generator<Uint8Array, void, undefined> {
  for (let at = 0; at < bytes.length; at += size) yield bytes.subarray(at, at + size)
}
