import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex } from '@noble/hashes/utils.js'
import type { Book } from '../posting/entry.ts'
import type { Draft } from '../posting/posting.ts'
import { namesIn } from '../schema/known.ts'
import { sameName } from '../schema/same-name.ts'
import type { CsvPreview } from './csv-preview.ts'

/**
 * The certificates that a file of assays names and the book has not: one entry each, with the file itself, whole, under the hash of its bytes.
 * Whoever writes them keeps the bytes as a blob under `preview.sha256` first.
 * @param file  its name and how many bytes it has
 */
export function certificateDrafts(preview: CsvPreview, file: { readonly name: string, readonly bytes: number }, book: Book): readonly Draft[] {
  const assays = preview.drafts.filter(draft => draft.kind === 'assay'), known = namesIn(book, 'certificate', 'name')
  const names = new Map(assays.flatMap(({ set }) => typeof set['certificate'] === 'string' ? [[sameName(set['certificate']), set['certificate']] as const] : []))
  return [...names].filter(([key]) => !known.has(key)).map(([, name]): Draft => {
    const own = assays.filter(({ set }) => set['certificate'] === name)
    const said = (field: string) => { const values = [...new Set(own.map(({ set }) => set[field]))]; return values.length === 1 ? values[0] : undefined }
    const laboratory = said('laboratory'), reported = said('reported')
    return {
      entry: bytesToHex(sha256(Uint8Array.from(`csv:${preview.sha256}:certificate:${sameName(name)}`, letter => letter.charCodeAt(0) & 0xff))).slice(0, 24), kind: 'certificate',
      set: {
        name, file: { sha256: preview.sha256, type: 'text/csv', bytes: file.bytes, name: file.name },
        ...(laboratory == null ? {} : { laboratory }), ...(reported == null ? {} : { reported }),
      },
    }
  })
}
