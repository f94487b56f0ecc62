import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { conflicts, fold, importLines, MemoryStore } from '../../src/index.ts'
import { chunked, exported } from './bytes.ts'

const file = readFileSync(new URL('../files/book-v1.jsonl', import.meta.url))

it('[P7] [L4] a book of version 1 opens, and says what it said', async () => {
  const store = new MemoryStore()
  expect(await importLines(() => chunked(file), store)).toEqual({ ok: true, postings: 17, added: 17, blobs: 1, faults: [] })
  const book = fold(await store.since())
  expect(book.of('mine')[0]?.fields).toMatchObject({ name: 'Hollow Lantern', people: ['Ines', 'Tomas', 'Wren'] })
  expect(book.of('sample')[0]?.fields).toMatchObject({
    bag: 'B-017', vein: 'East', width: { text: '20 in', value: 0.508, unit: 'm' },
    place: { by: 'station', station: 'A1', along: { text: '2.3 m', value: 2.3 }, toward: 'A2', side: 'left rib', height: { value: 1.2 } },
  })
  expect(book.of('sample')[0]?.fields).not.toHaveProperty('visibleGold')
  expect(book.of('assay').map(({ fields }) => fields['gold'])).toMatchObject([{ mark: 'trace', value: null }, { text: '0.35 oz/ton' }])
  expect(book.of('shot')).toEqual([])
  expect(book.all.get('slate.3')).toMatchObject({ struck: true, struckWhy: 'wrong station', fields: { distance: { text: '4\'7½"', value: 1.4097 } } })
  expect(conflicts(book)).toMatchObject([{ entry: 'gravel.1', field: 'vein', sayings: [{ value: 'Main', why: 'seen by lamp' }, { value: 'East' }] }])
})
it('[L1] and is written out as it was, for as long as this is the present version', async () => {
  const store = new MemoryStore()
  await importLines(() => chunked(file), store)
  expect(await exported(store)).toBe(file.toString('utf8'))
})
