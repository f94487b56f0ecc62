import type { Posting } from '../posting/posting.ts'
import { blobSchema } from '../schema/value-schemas.ts'

/** The hashes of the files that any of these postings names, in order, each once. */
export const blobsNamed = (postings: readonly Posting[]): readonly string[] => [...new Set(postings.flatMap(({ set }) => Object.values(set).flatMap((value) => {
  const blob = blobSchema.safeParse(value)
  return blob.success ? [blob.data.sha256] : []
})))].sort()
