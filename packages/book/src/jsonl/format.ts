import { z } from 'zod'

/** The lines of a book as a file; see docs/postings.md. */

export const currentFormat = 1
/** A line of so many bytes or more is refused. */
export const longestLine = 10_000_000
/** Files are cut into parts so that every line stays well below that. A multiple of 3, so that parts join without padding between them. */
export const partBytes = 3 * 1024 * 1024

const count = z.int('a whole number of zero or more').min(0, 'a whole number of zero or more')
const hash = z.string().regex(/^[0-9a-f]{64}$/, 'a hash of 64 hexadecimal digits')

export const headerSchema = z.strictObject({ lodebook: z.literal('book'), format: z.literal(currentFormat), postings: count, blobs: count })
export const blobLineSchema = z.strictObject({ blob: hash, part: count.min(1), of: count.min(1), data: z.string() })
export const endSchema = z.strictObject({ end: z.strictObject({ lines: count, sha256: hash }) })

export type Header = z.infer<typeof headerSchema>
export type BlobLine = z.infer<typeof blobLineSchema>
export type End = z.infer<typeof endSchema>
