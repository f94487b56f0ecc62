import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fold, importLines, longestLine, MemoryStore, sha256Hex } from '../../src/index.ts'
import type { Draft, Posting, Store } from '../../src/index.ts'
import { history, postingsOf } from '../posting/sample-postings.ts'
import { chunked, exported, utf8 } from './bytes.ts'

const picture = Uint8Array.from({ length: 3_200_000 }, (_, i) => (i * 2654435761) >>> 24)
const small = utf8('a small picture')
const shows = (entry: string, bytes: Uint8Array): Draft => ({ entry, kind: 'photo', set: { file: { sha256: sha256Hex(bytes), type: 'image/jpeg', bytes: bytes.length } } })
const postings = [
  ...postingsOf('d2', [{ entry: 'f1', kind: 'sample', set: { bag: 'B-9', note: 'größer als gedacht, ½ quartz – “rusty”\n2nd line' } }]),
  ...postingsOf('d1', [{ entry: 'e1', kind: 'sample', set: { bag: 'B-1' } }, { entry: 'e1', kind: 'sample', set: { note: 'clean' } }, { entry: 'e2', kind: 'sample', set: { bag: 'B-2' } }]),
]

async function storeOf(all: readonly Posting[], ...files: readonly Uint8Array[]): Promise<MemoryStore> {
  const store = new MemoryStore()
  await store.append(all)
  for (const file of files) await store.putBlob(sha256Hex(file), file)
  return store
}
const take = (bytes: Uint8Array, store: Store = new MemoryStore(), size?: number) => importLines(() => chunked(bytes, size), store)
async function refusal(bytes: Uint8Array): Promise<{ row: number | undefined, message: string }> {
  const store = new MemoryStore()
  const result = await take(bytes, store)
  if (result.ok) throw new Error('it was taken')
  expect(await store.since()).toEqual([])
  expect(result.problem.message).toMatch(/^Row \d+: .*Nothing was imported\.$/)
  return { row: result.problem.row, message: result.problem.message }
}

describe('[L1] a book as a file', () => {
  it('has a header, its postings in order, and an end', async () => {
    const lines = (await exported(await storeOf(postings))).split('\n')
    expect(lines[0]).toBe('{"blobs":0,"format":1,"lodebook":"book","postings":4}')
    expect(lines.slice(1, 5).map(line => (JSON.parse(line) as Posting).device)).toEqual(['d1', 'd1', 'd1', 'd2'])
    expect(lines[5]).toBe(`{"end":{"lines":5,"sha256":"${sha256Hex(utf8(lines.slice(0, 5).map(line => `${line}\n`).join('')))}"}}`)
    expect(lines[6]).toBe('')
  })
  it('comes back whole, and the second export is the same to the byte', async () => {
    const all = [...postings, ...postingsOf('d3', [shows('p1', picture), shows('p2', small), shows('p3', new Uint8Array()), shows('p4', utf8('not held'))])]
    const first = await exported(await storeOf([...all].reverse(), picture, small, new Uint8Array()))
    const second = new MemoryStore()
    expect(await take(utf8(first), second)).toEqual({ ok: true, postings: 8, added: 8, blobs: 3, faults: [] })
    expect(await second.getBlob(sha256Hex(picture))).toHaveLength(picture.length)
    expect(await second.getBlob(sha256Hex(new Uint8Array()))).toHaveLength(0)
    expect(await exported(second)).toBe(first)
    expect(first.split('\n').map(line => line.length).filter(length => length >= longestLine)).toEqual([])
    expect([...fold(await second.since()).all]).toEqual([...fold(all).all])
  })
  it('without the pictures is whole but for them', async () => {
    const store = await storeOf(postingsOf('d3', [shows('p2', small)]), small)
    const text = await exported(store, { blobs: false })
    expect(text).not.toContain('"blob"')
    expect(await take(utf8(text))).toMatchObject({ ok: true, postings: 1, blobs: 0 })
  })
  it('of nothing is a file too', async () => { expect(await take(utf8(await exported(new MemoryStore())))).toMatchObject({ ok: true, postings: 0, added: 0 }) })
  it('any history comes back the same, however the file is cut into chunks', async () => {
    await fc.assert(fc.asyncProperty(history, fc.integer({ min: 1, max: 200 }), async (all, size) => {
      const text = await exported(await storeOf(all))
      const store = new MemoryStore()
      expect(await take(utf8(text), store, size)).toMatchObject({ ok: true, added: all.length })
      expect(await exported(store)).toBe(text)
    }), { seed: 7, numRuns: 40 })
  })
  it('taken twice adds nothing', async () => {
    const bytes = utf8(await exported(await storeOf(postings)))
    const store = new MemoryStore()
    await take(bytes, store)
    expect(await take(bytes, store)).toMatchObject({ ok: true, postings: 4, added: 0 })
  })
  it('[C2] tells of places that were missing when it was written', async () => {
    const result = await take(utf8(await exported(await storeOf(postings.filter(({ seq, device }) => device === 'd2' || seq !== 2)))))
    expect(result).toMatchObject({ ok: true, faults: [{ sort: 'missing', device: 'd1', seq: 2 }] })
  })
})

describe('[L2] whole or not at all', () => {
  const whole = async () => exported(await storeOf([...postings, ...postingsOf('d3', [shows('p2', small)])], small))
  const lines = async () => (await whole()).trimEnd().split('\n')
  const joined = (all: readonly string[]) => utf8(all.map(line => `${line}\n`).join(''))
  const changed = async (row: number, change: (line: string) => string) => joined((await lines()).map((line, i) => i === row - 1 ? change(line) : line))

  it('cut off anywhere', async () => {
    const bytes = utf8(await whole())
    for (let cut = 1; cut < bytes.length; cut += 37) {
      const rows = bytes.subarray(0, cut).filter(byte => byte === 10).length
      const { row } = await refusal(bytes.subarray(0, cut))
      expect(row).toBe(bytes[cut - 1] === 10 ? rows : rows + 1)
    }
  })
  it('one byte altered anywhere', async () => {
    const bytes = utf8(await whole())
    await fc.assert(fc.asyncProperty(fc.nat(bytes.length - 1), fc.integer({ min: 1, max: 255 }), async (at, by) => {
      const altered = bytes.slice()
      altered[at] = altered[at]! ^ by
      await refusal(altered)
    }), { seed: 11, numRuns: 300 })
  })
  it('a line lost, twice there, or in another place', async () => {
    const all = await lines()
    for (let row = 1; row < all.length; row += 1) {
      await refusal(joined(all.filter((_, i) => i !== row)))
      await refusal(joined([...all.slice(0, row), all[row - 1]!, ...all.slice(row)]))
    }
    await refusal(joined([...all.slice(0, 1), ...all.slice(1, 3).reverse(), ...all.slice(3)]))
  })
  it('names the row and what is wrong', async () => {
    expect(await refusal(new Uint8Array())).toMatchObject({ row: 1, message: expect.stringContaining('the file is empty') as string })
    expect(await refusal(utf8('bag,width\nB-1,0.3\n'))).toMatchObject({ row: 1, message: expect.stringContaining('not whole JSON') as string })
    expect(await refusal(utf8('{"type":"FeatureCollection"}\n'))).toMatchObject({ row: 1, message: expect.stringContaining('does not begin as a book does') as string })
    expect(await refusal(await changed(3, line => line.replace('clean', 'rusty')))).toMatchObject({ row: 3, message: expect.stringContaining('Posting 2 of device d1: it was altered') as string })
    expect(await refusal(await changed(3, line => line.replace(',', ', ')))).toMatchObject({ row: 3, message: expect.stringContaining('another way than Lodebook writes') as string })
    expect(await refusal(await changed(3, line => line.slice(0, 60)))).toMatchObject({ row: 3, message: expect.stringContaining('not whole JSON') as string })
    expect(await refusal(await changed(7, line => line.replace('"data":"Y', '"data":"Z')))).toMatchObject({ row: 7, message: expect.stringContaining('was altered; its bytes have another hash') as string })
    expect(await refusal(joined([...await lines(), 'more']))).toMatchObject({ row: 9, message: expect.stringContaining('something follows') as string })
    expect(await refusal(joined((await lines()).slice(0, 4)))).toMatchObject({ row: 4, message: expect.stringContaining('breaks off after this line') as string })
  })
  it('two different postings for one place', async () => {
    const rival = postingsOf('d1', [{ entry: 'e9', kind: 'sample', set: { bag: 'B-7' } }])[0]!
    const store = await storeOf(postings)
    await expect(take(utf8(await exported(await storeOf([rival]))), store)).rejects.toMatchObject({ reason: 'forked' })
    expect(await store.since()).toHaveLength(4)
    const all = await lines()
    const both = [all[0]!.replace('"postings":5', '"postings":6'), all[1]!, JSON.stringify(JSON.parse(all[1]!)), ...all.slice(2)]
    expect((await refusal(joined(both))).message).toContain('device d1 has its posting 1 in row 2 already')
  })
})

describe('encodings', () => {
  const text = async () => exported(await storeOf(postings))
  it('UTF-16', async () => { expect(await refusal(Buffer.from(`\ufeff${await text()}`, 'utf16le'))).toMatchObject({ row: 1, message: expect.stringContaining('UTF-16') as string }) })
  it('a byte order mark', async () => { expect(await refusal(utf8(`\ufeff${await text()}`))).toMatchObject({ row: 1, message: expect.stringContaining('byte order mark') as string }) })
  it('another alphabet', async () => {
    expect(await refusal(Buffer.from(await text(), 'latin1'))).toMatchObject({ row: 5, message: expect.stringContaining('is not UTF-8') as string })
  })
  it('line ends of another system', async () => { expect(await refusal(utf8((await text()).replaceAll('\n', '\r\n')))).toMatchObject({ row: 1 }) })
})

describe('[L3] limits', () => {
  function* endless(): Generator<Uint8Array, void, undefined> {
    yield utf8('{"blobs":0,"format":1,"lodebook":"book","postings":1}\n{"note":"')
    for (let given = 0; given < 1000; given += 1) yield new Uint8Array(1_000_000).fill(120)
  }
  it('a line of 10 MB is refused as soon as it is as long as that', async () => {
    let read = 0
    const store = new MemoryStore()
    const result = await importLines(function* () { for (const chunk of endless()) { read += chunk.length; yield chunk } }, store)
    expect(result).toMatchObject({ ok: false, problem: { row: 2, message: 'Row 2: the line has 10 MB or more; expected lines of less than 10 MB. Nothing was imported.' } })
    expect(read).toBeLessThan(longestLine + 2_000_000)
    expect(await store.since()).toEqual([])
  })
})

describe('[L4] [P7] versions', () => {
  it('a newer file is refused', async () => {
    expect(await refusal(utf8('{"blobs":0,"format":2,"lodebook":"book","postings":0}\n'))).toMatchObject({ row: 1, message: expect.stringContaining('newer Lodebook') as string })
  })
  it('a newer posting is refused', async () => {
    const posting = JSON.stringify({ ...postings[0], v: 2 })
    expect(await refusal(utf8(`{"blobs":0,"format":1,"lodebook":"book","postings":1}\n${posting}\n`))).toMatchObject({ row: 2, message: expect.stringContaining('newer Lodebook') as string })
  })
})
