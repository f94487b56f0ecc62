import { readUtf8 } from '../read-utf8.ts'
import type { Problem } from '../schema/problem.ts'

export type Decoded = { readonly text: string } | { readonly problem: Problem }

const encodings = 'a table saved as text in UTF-8 (in a spreadsheet: save as CSV UTF-8)'

/**
 * The text of a file of columns, which has to be UTF-8, with or without a byte order mark.
 *
 * Other encodings are refused rather than guessed at: the same byte is one letter in one of them and another in the next.
 * @returns the text, or a problem that names what the file seems to be and, for a stray byte, the row, the column and what stands round it
 */
export function decodeText(bytes: Uint8Array): Decoded {
  const seems = signature(bytes)
  if (seems !== undefined) return whole(`${seems} will not do`, seems)
  const start = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? 3 : 0
  const { text, stray } = readUtf8(bytes, start)
  if (stray !== undefined) return strayByte(bytes, stray)
  const nul = text.indexOf('\0')
  if (nul >= 0) return whole('the file holds zero bytes, so it is no text', 'zero bytes')
  return { text }
}

const whole = (what: string, value: string): Decoded =>
  ({ problem: { field: 'file', value, expected: encodings, message: `The file: ${what}; expected ${encodings}.` } })

const signatures: readonly (readonly [name: string, ...start: number[]])[] = [
  ['UTF-16 text', 0xff, 0xfe],
  ['UTF-16 text', 0xfe, 0xff],
  ['a spreadsheet or other zipped file', 0x50, 0x4b, 0x03, 0x04],
  ['an old spreadsheet file', 0xd0, 0xcf, 0x11, 0xe0],
  ['a compressed file', 0x1f, 0x8b],
  ['a PDF', 0x25, 0x50, 0x44, 0x46],
  ['a SQLite file', 0x53, 0x51, 0x4c, 0x69, 0x74, 0x65],
]

function signature(bytes: Uint8Array): string | undefined {
  const known = signatures.find(([, ...start]) => start.every((byte, i) => bytes[i] === byte))
  if (known) return known[0]
  // Plain letters in UTF-16 have a zero in every other byte.
  const head = bytes.subarray(0, 1000)
  const zeros = head.filter(byte => byte === 0).length
  return zeros > head.length / 4 ? 'UTF-16 text' : undefined
}

/** Names the row and, as far as a line without quotes tells, the column of a byte that is not UTF-8. */
function strayByte(bytes: Uint8Array, at: number): Decoded {
  const latin = (from: number, to: number) => String.fromCharCode(...bytes.subarray(from, to))
  const row = bytes.subarray(0, at).filter(byte => byte === 0x0a).length + 1
  const lineStart = bytes.lastIndexOf(0x0a, at) + 1
  const before = latin(Math.max(lineStart, at - 2000), at)
  const separator = [',', ';', '\t'].find(mark => before.includes(mark)) ?? ','
  const firstEnd = bytes.indexOf(0x0a)
  const headings = row > 1 && at - lineStart <= 2000 ? latin(0, Math.min(firstEnd, 2000)).split(separator) : []
  const heading = headings[before.split(separator).length - 1]?.trim()
  const value = (before.split(separator).at(-1) ?? '').slice(-30) + (/^[^,;\t\r\n]{0,30}/.exec(latin(at, at + 30))?.[0] ?? '')
  const field = heading || 'file'
  const hex = `0x${bytes[at]!.toString(16).padStart(2, '0').toUpperCase()}`
  return {
    problem: {
      field, value, row, expected: encodings,
      message: `Row ${row}, ${field}: ${JSON.stringify(value)} holds the byte ${hex}, which is no UTF-8 (it may be Windows-1252 or Latin-1); expected ${encodings}.`,
    },
  }
}
