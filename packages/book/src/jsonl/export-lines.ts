import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'
import { canonicalJson } from '../posting/canonical.ts'
import { byChain } from '../posting/order.ts'
import type { Posting } from '../posting/posting.ts'
import type { Store } from '../store/store.ts'
import { base64 } from './base64.ts'
import { blobsNamed } from './blobs-named.ts'
import type { BlobLine, End, Header } from './format.ts'
import { currentFormat, partBytes } from './format.ts'

/**
 * [L1] A whole book as lines of text, each with its `\n`; the same book always gives the same lines.
 * @param blobs  whether the photos and other files are put in; without them the book is small and whole but for its pictures
 */
export async function* exportLines(store: Store, { blobs = true }: { readonly blobs?: boolean } = {}): AsyncGenerator<string, void, undefined> {
  const postings = [...await store.since()].sort(byChain)
  const held: string[] = []
  if (blobs) for (const name of blobsNamed(postings)) if (await store.getBlob(name) !== undefined) held.push(name)
  const digest = sha256.create()
  let lines = 0
  const line = (value: Header | Posting | BlobLine | End): string => {
    const text = `${canonicalJson(value)}\n`
    digest.update(utf8ToBytes(text))
    lines += 1
    return text
  }
  yield line({ lodebook: 'book', format: currentFormat, postings: postings.length, blobs: held.length })
  for (const posting of postings) yield line(posting)
  for (const name of held) {
    const bytes = await store.getBlob(name) ?? new Uint8Array()
    const of = Math.max(1, Math.ceil(bytes.length / partBytes))
    for (let part = 1; part <= of; part += 1) yield line({ blob: name, data: base64(bytes.subarray((part - 1) * partBytes, part * partBytes)), of, part })
  }
  const end: End = { end: { lines, sha256: bytesToHex(digest.digest()) } }
  yield `${canonicalJson(end)}\n`
}
