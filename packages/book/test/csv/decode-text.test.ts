import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { decodeText } from '../../src/csv/decode-text.ts'
import { utf8 } from './helpers.ts'

const problem = (bytes: Uint8Array) => {
  const decoded = decodeText(bytes)
  if (!('problem' in decoded)) throw new Error('it was taken')
  return decoded.problem
}

describe('decodeText', () => {
  it('reads UTF-8 with and without a byte order mark', () => {
    expect(decodeText(utf8('bag;größe ½ 𝔐'))).toEqual({ text: 'bag;größe ½ 𝔐' })
    expect(decodeText(utf8('\ufeffbag'))).toEqual({ text: 'bag' })
    expect(decodeText(new Uint8Array())).toEqual({ text: '' })
  })

  it('reads whatever the platform writes as UTF-8, letter for letter', () => {
    fc.assert(fc.property(fc.string({ unit: 'grapheme', maxLength: 300 }).filter(text => !text.includes('\0') && !text.startsWith('\ufeff')), (text) => {
      const decoded = decodeText(utf8(text))
      expect('text' in decoded ? decoded.text : decoded).toBe(text)
    }), { seed: 7 })
  })

  it('refuses exactly what the platform\'s strict decoder refuses', () => {
    const letters = fc.oneof(fc.integer({ min: 0x20, max: 0xff }), fc.constantFrom(0xc2, 0xe2, 0x82, 0xac, 0xf0, 0x9f, 0xed, 0xa0, 0xc0, 0xf5, 0x0a))
    fc.assert(fc.property(fc.array(letters, { minLength: 1, maxLength: 12 }), (numbers) => {
      const bytes = Uint8Array.from([0x61, ...numbers])
      let strict: string | undefined
      try { strict = new TextDecoder('utf-8', { fatal: true }).decode(bytes) } catch { strict = undefined }
      const decoded = decodeText(bytes)
      expect('text' in decoded ? decoded.text : undefined).toBe(strict)
    }), { seed: 11, numRuns: 2000 })
  })

  it('names UTF-16 with and without its mark', () => {
    const le = Uint8Array.from([...'bag,width'].flatMap(letter => [letter.charCodeAt(0), 0]))
    for (const bytes of [Uint8Array.from([0xff, 0xfe, ...le]), Uint8Array.from([0xfe, 0xff, 0, 0x62]), le]) {
      expect(problem(bytes)).toMatchObject({ field: 'file', value: 'UTF-16 text' })
      expect(problem(bytes).message).toBe('The file: UTF-16 text will not do; expected a table saved as text in UTF-8 (in a spreadsheet: save as CSV UTF-8).')
    }
  })

  it('names a spreadsheet, a PDF and a database for what they are', () => {
    expect(problem(Uint8Array.from([0x50, 0x4b, 3, 4, 20])).value).toBe('a spreadsheet or other zipped file')
    expect(problem(utf8('%PDF-1.7')).value).toBe('a PDF')
    expect(problem(utf8('SQLite format 3')).value).toBe('a SQLite file')
  })

  it('names the row, the column and the text of a byte from another encoding', () => {
    const text = 'bag,note\nB-1,fine\nB-2,Café level\n'
    const latin = Uint8Array.from(text, letter => letter.charCodeAt(0))
    expect(problem(latin)).toMatchObject({ row: 3, field: 'note', value: 'Café level' })
    expect(problem(latin).message).toContain('Row 3, note: "Café level" holds the byte 0xE9, which is no UTF-8')
  })

  it('says that a file with zero bytes is no text', () => {
    expect(problem(utf8('bag,note\nB-1,' + 'x'.repeat(50) + '\0')).message).toContain('zero bytes')
  })
})
