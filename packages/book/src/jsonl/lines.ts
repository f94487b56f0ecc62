import { readUtf8 } from '../read-utf8.ts'
import type { Problem } from '../schema/problem.ts'
import { longestLine } from './format.ts'

/** A line with the bytes it was made of, its `\n` among them, or what is wrong with it. */
export type Line = WholeLine | { readonly ok: false, readonly problem: Problem }
interface WholeLine { readonly ok: true, readonly row: number, readonly text: string, readonly bytes: Uint8Array }

const strangers: readonly (readonly [start: readonly number[], what: string])[] = [
  [[0xff, 0xfe], 'UTF-16 text'], [[0xfe, 0xff], 'UTF-16 text'], [[0xef, 0xbb, 0xbf], 'text that another program saved with a byte order mark'],
  [[0x1f, 0x8b], 'a compressed file'], [[0x50, 0x4b, 0x03, 0x04], 'a zipped file'], [[0x53, 0x51, 0x4c, 0x69, 0x74, 0x65], 'a SQLite file'],
]

/** A refusal of a file, at a row. */
export const refuseRow = (row: number, value: unknown, sentence: string, expected = 'a book as Lodebook wrote it'): Problem =>
  ({ field: 'file', value, row, expected, message: `Row ${row}: ${sentence}; expected ${expected}. Nothing was imported.` })

/**
 * Cuts bytes into lines of UTF-8, holding no more than one line at a time. Stops at the first line that will not do: too long, another
 * encoding, or cut off before its end.
 */
export async function* linesOf(chunks: AsyncIterable<Uint8Array> | Iterable<Uint8Array>): AsyncGenerator<Line, void, undefined> {
  let row = 1
  let parts: Uint8Array[] = []
  let size = 0
  for await (const chunk of chunks) {
    let start = 0
    while (start < chunk.length) {
      const end = chunk.indexOf(10, start)
      const part = chunk.subarray(start, end < 0 ? chunk.length : end + 1)
      parts.push(part)
      size += part.length
      if (size - (end < 0 ? 0 : 1) >= longestLine) {
        yield { ok: false, problem: refuseRow(row, size, 'the line has 10 MB or more', 'lines of less than 10 MB') }
        return
      }
      start += part.length
      if (end < 0) continue
      const line = decode(row, join(parts, size))
      yield line
      if (!line.ok) return
      parts = []
      size = 0
      row += 1
    }
  }
  if (size > 0) yield decode(row, join(parts, size), true)
}

function join(parts: readonly Uint8Array[], size: number): Uint8Array {
  const bytes = new Uint8Array(size)
  let at = 0
  for (const part of parts) {
    bytes.set(part, at)
    at += part.length
  }
  return bytes
}

function decode(row: number, bytes: Uint8Array, cut = false): Line {
  const stranger = row === 1 ? strangers.find(([start]) => start.every((byte, i) => bytes[i] === byte))?.[1] : undefined
  if (stranger !== undefined) return { ok: false, problem: refuseRow(row, stranger, `the file is ${stranger}`, 'a book as Lodebook wrote it, in UTF-8') }
  const { text, stray } = readUtf8(bytes)
  if (stray !== undefined) {
    if (cut && stray > bytes.length - 4) return brokenOff(row, '')
    return { ok: false, problem: refuseRow(row, `byte ${stray + 1}`, `byte ${stray + 1} is not UTF-8, so it was altered or saved by another program`, 'text in UTF-8') }
  }
  if (cut) return brokenOff(row, text)
  return { ok: true, row, text: text.slice(0, -1), bytes }
}

const brokenOff = (row: number, text: string): Line => ({ ok: false, problem: refuseRow(row, text.slice(0, 40), 'the file breaks off in the middle of this line') })
