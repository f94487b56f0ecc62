import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex } from '@noble/hashes/utils.js'
import { canonicalJson } from '../posting/canonical.ts'
import type { Posting } from '../posting/posting.ts'
import { upgrade } from '../posting/upgrade.ts'
import { checkShape } from '../schema/from-zod.ts'
import type { Problem } from '../schema/problem.ts'
import { bytesOfBase64 } from './base64.ts'
import type { BlobLine, End, Header } from './format.ts'
import { blobLineSchema, currentFormat, endSchema, headerSchema } from './format.ts'
import { linesOf, refuseRow } from './lines.ts'

export type Chunks = AsyncIterable<Uint8Array> | Iterable<Uint8Array>

/**
 * Reads a book's file from end to end and checks all of it: the header, every posting by the rules of every door, every file by its hash, the
 * counts and the hash of the whole. Holds the postings and one file at a time.
 * @param take  called with each file as it has been checked
 * @returns the postings in the order of the file, or the first thing wrong, with its row
 */
export async function readBookFile(chunks: Chunks, take: (sha256: string, bytes: Uint8Array) => Promise<void> | void):
Promise<{ readonly ok: true, readonly postings: readonly Posting[], readonly blobs: number } | { readonly ok: false, readonly problem: Problem }> {
  const reader = new Reader()
  let lines = 0
  for await (const line of linesOf(chunks)) {
    if (!line.ok) return line
    const { row, text, bytes } = line
    lines = row
    const problem = reader.line(row, text, bytes)
    if (problem) return { ok: false, problem }
    const file = reader.finished()
    if (file) await take(file.name, file.bytes)
  }
  const problem = lines === 0 ? refuseRow(1, '', 'the file is empty') : reader.incomplete(lines)
  return problem ? { ok: false, problem } : { ok: true, postings: reader.postings, blobs: reader.blobs }
}

class Reader {
  readonly postings: Posting[] = []
  blobs = 0
  readonly #places = new Map<string, number>()
  readonly #digest = sha256.create()
  #header: Header | undefined
  #parts: { line: BlobLine, bytes: Uint8Array }[] = []
  #ended = false

  line(row: number, text: string, bytes: Uint8Array): Problem | undefined {
    if (this.#ended) return refuseRow(row, text.slice(0, 40), 'something follows the line that ends the book')
    let value: unknown
    try { value = JSON.parse(text) } catch { return refuseRow(row, text.slice(0, 40), 'it is not whole JSON, so the file was altered or damaged') }
    const problem = this.#take(row, value)
    if (problem) return problem
    if (canonicalJson(value) !== text) return refuseRow(row, text.slice(0, 40), 'it is written in another way than Lodebook writes, so the file was altered')
    if (!this.#ended) this.#digest.update(bytes)
    return undefined
  }

  /** The file whose last part was just read. */
  finished(): { readonly name: string, readonly bytes: Uint8Array } | undefined {
    const last = this.#parts.at(-1)
    if (last === undefined || last.line.part < last.line.of) return undefined
    const bytes = new Uint8Array(this.#parts.reduce((size, part) => size + part.bytes.length, 0))
    let at = 0
    for (const part of this.#parts) {
      bytes.set(part.bytes, at)
      at += part.bytes.length
    }
    this.#parts = []
    this.blobs += 1
    return { name: last.line.blob, bytes }
  }

  incomplete(row: number): Problem | undefined {
    return this.#ended ? undefined : refuseRow(row, '', 'the file breaks off after this line')
  }

  #take(row: number, value: unknown): Problem | undefined {
    if (this.#header === undefined) return this.#takeHeader(row, value)
    if (isObject(value) && 'end' in value) return this.#takeEnd(row, value)
    if (isObject(value) && 'blob' in value) return this.#takePart(row, value)
    return this.#takePosting(row, value)
  }

  #takeHeader(row: number, value: unknown): Problem | undefined {
    if (!isObject(value) || !('lodebook' in value)) return refuseRow(row, value, 'the file does not begin as a book does')
    if (typeof value['format'] === 'number' && value['format'] > currentFormat) {
      return refuseRow(row, value['format'], 'the file was written by a newer Lodebook; bring this one up to date', `format ${currentFormat} or older`)
    }
    const problem = checkShape(headerSchema, '', 'Header', value)
    if (problem) return at(row, problem)
    this.#header = value as unknown as Header
    return undefined
  }

  #takePosting(row: number, value: unknown): Problem | undefined {
    const late = this.blobs > 0 || this.#parts.length > 0 || this.postings.length === this.#header!.postings
    if (late) return refuseRow(row, value, 'a posting stands where none should')
    const opened = upgrade(value)
    if (!opened.ok) return at(row, opened.problem)
    const { device, seq } = opened.posting
    const place = `${device} ${seq}`
    const other = this.#places.get(place)
    if (other !== undefined) return refuseRow(row, seq, `device ${device} has its posting ${seq} in row ${other} already`)
    this.#places.set(place, row)
    this.postings.push(opened.posting)
    return undefined
  }

  #takePart(row: number, value: object): Problem | undefined {
    const misshapen = checkShape(blobLineSchema, '', 'File', value)
    if (misshapen) return at(row, misshapen)
    const { postings } = this.#header!
    if (this.postings.length < postings) return refuseRow(row, this.postings.length, 'postings are missing before this line', `${postings} postings`)
    const line = value as BlobLine
    const before = this.#parts.at(-1)?.line
    const follows = before === undefined ? line.part === 1
      : line.blob === before.blob && line.of === before.of && line.part === before.part + 1
    if (!follows) return refuseRow(row, line.part, `a part of file ${line.blob.slice(0, 12)}… is missing or out of its place`)
    const bytes = bytesOfBase64(line.data)
    if (bytes === undefined) return refuseRow(row, line.data.slice(0, 40), 'the bytes of a file are not written as they should be')
    this.#parts.push({ line, bytes })
    if (line.part < line.of) return undefined
    const digest = sha256.create()
    for (const part of this.#parts) digest.update(part.bytes)
    const name = bytesToHex(digest.digest())
    return name === line.blob ? undefined : refuseRow(row, name, `file ${line.blob.slice(0, 12)}… was altered; its bytes have another hash`)
  }

  #takeEnd(row: number, value: object): Problem | undefined {
    const misshapen = checkShape(endSchema, '', 'End', value)
    if (misshapen) return at(row, misshapen)
    const { end } = value as End
    const header = this.#header!
    if (this.postings.length !== header.postings) return refuseRow(row, this.postings.length, 'postings are missing before this line', `${header.postings} postings`)
    if (this.blobs !== header.blobs || this.#parts.length > 0) return refuseRow(row, this.blobs, 'files are missing before this line', `${header.blobs} files`)
    if (end.lines !== row - 1) return refuseRow(row, row - 1, 'lines were lost or added', `${end.lines} lines before this one`)
    this.#ended = true
    return end.sha256 === bytesToHex(this.#digest.digest()) ? undefined : refuseRow(row, end.sha256, 'the file was altered after it was written; its hash does not fit')
  }
}

const isObject = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null

const at = (row: number, problem: Problem): Problem => ({ ...problem, row, message: `Row ${row}: ${problem.message} Nothing was imported.` })
