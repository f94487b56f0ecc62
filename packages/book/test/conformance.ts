import { describe, expect, it } from 'vitest'
import { sha256Hex } from '../src/index.ts'
import type { Posting, Store } from '../src/index.ts'
import { postingsOf } from './posting/sample-postings.ts'

/** A place where a store keeps a book: opened twice it holds the same book. */
export interface Shelf {
  /** Opens the book that lies there, or a new one. */
  open(): Promise<Store>
  /** Clears it away. */
  drop(): Promise<void>
}

const bags = (device: string, n: number): readonly Posting[] =>
  postingsOf(device, Array.from({ length: n }, (_, i) => ({ entry: `${device}.${i + 1}`, kind: 'sample', set: { bag: `${device}-${i + 1}` } })))

const one = bags('d1', 5)
const two = bags('d2', 3)
const rival = postingsOf('d1', [{ entry: 'other', kind: 'sample', set: { bag: 'another' } }])[0]!
const picture = Uint8Array.from({ length: 70_000 }, (_, i) => (i * 31) % 251)

/**
 * What every store must do, by the rules of docs/postings.md.
 * @param lasts  whether the book outlives the store that was closed
 */
export function conformance(name: string, shelf: () => Promise<Shelf>, { lasts }: { readonly lasts: boolean }): void {
  const on = (sentence: string, act: (store: Store, again: () => Promise<Store>) => Promise<void>) => it(sentence, async () => {
    const place = await shelf()
    const open: Store[] = []
    const again = async () => { const store = await place.open(); open.push(store); return store }
    try {
      await act(await again(), again)
    } finally {
      for (const store of open) await store.close()
      await place.drop()
    }
  })

  describe(`${name} keeps a book`, () => {
    on('is empty when new', async (store) => {
      expect(await store.since()).toEqual([])
      expect(await store.cursors()).toEqual({})
      expect(await store.append([])).toEqual({ added: 0 })
    })
    on('[S1] gives back what was added, the same to the letter', async (store) => {
      expect(await store.append([...two, ...one])).toEqual({ added: 8 })
      expect(await store.since()).toEqual([...one, ...two])
      expect(JSON.stringify(await store.since())).toBe(JSON.stringify([...one, ...two]))
    })
    on('[S3] passes over what is there already, also within one call', async (store) => {
      await store.append(one)
      expect(await store.append([...one, ...two, ...two])).toEqual({ added: 3 })
      expect(await store.append([...one, ...two])).toEqual({ added: 0 })
      expect(await store.since()).toHaveLength(8)
    })
    on('[S4] refuses a different posting for a place that is taken, and [S2] adds nothing of that call', async (store) => {
      await store.append(one)
      await expect(store.append([...two, rival])).rejects.toMatchObject({ name: 'StoreError', reason: 'forked', message: expect.stringContaining('Device d1, posting 1') as string })
      expect(await store.since()).toEqual(one)
      await expect(store.append([two[0]!, { ...two[0]!, hash: 'f'.repeat(64) }])).rejects.toMatchObject({ reason: 'forked' })
      expect(await store.since()).toEqual(one)
      expect(await store.append(two)).toEqual({ added: 3 })
    })
    on('[S5] a cursor stops at a gap, and since gives everything after it', async (store) => {
      await store.append([one[0]!, one[1]!, one[3]!, two[1]!])
      expect(await store.cursors()).toEqual({ d1: 2 })
      expect(await store.since(await store.cursors())).toEqual([one[3], two[1]])
      await store.append([one[2]!, two[0]!])
      expect(await store.cursors()).toEqual({ d1: 4, d2: 2 })
      expect(await store.since({ d1: 4, d9: 7 })).toEqual([two[0], two[1]])
      expect(await store.since({ d1: 99, d2: 99 })).toEqual([])
    })
    on('[S2] many calls at once each add all of theirs', async (store) => {
      const devices = Array.from({ length: 8 }, (_, i) => bags(`m${i}`, 6))
      const added = await Promise.all(devices.map(postings => store.append(postings)))
      expect(added).toEqual(devices.map(() => ({ added: 6 })))
      expect(await store.since()).toHaveLength(48)
    })
    on('[S6] keeps files by their hash and refuses bytes that do not fit', async (store) => {
      const name = sha256Hex(picture)
      expect(await store.getBlob(name)).toBeUndefined()
      await store.putBlob(name, picture)
      await store.putBlob(name, picture)
      expect(Buffer.compare(Buffer.from(await store.getBlob(name) ?? []), Buffer.from(picture))).toBe(0)
      await expect(store.putBlob('0'.repeat(64), picture)).rejects.toMatchObject({ name: 'StoreError', reason: 'misnamed' })
      expect(await store.getBlob('0'.repeat(64))).toBeUndefined()
      await store.putBlob(sha256Hex(new Uint8Array()), new Uint8Array())
      expect(await store.getBlob(sha256Hex(new Uint8Array()))).toHaveLength(0)
    })
    on('does not change what it is given, nor is changed by it', async (store) => {
      const given = [...one]
      await store.append(given)
      given.length = 0
      expect(await store.since()).toEqual(one)
      await store.append(Object.freeze(two.map(posting => Object.freeze({ ...posting, set: Object.freeze({ ...posting.set }) }))))
      expect(await store.since()).toEqual([...one, ...two])
      const bytes = picture.slice()
      await store.putBlob(sha256Hex(picture), bytes)
      bytes.fill(0)
      expect(sha256Hex(await store.getBlob(sha256Hex(picture)) ?? new Uint8Array())).toBe(sha256Hex(picture))
    })
    on('[S7] refuses every call once closed, and closing again is nothing', async (store) => {
      await store.close()
      await store.close()
      for (const call of [() => store.append(one), () => store.since(), () => store.cursors(), () => store.putBlob(sha256Hex(picture), picture), () => store.getBlob('0'.repeat(64))]) {
        await expect(call()).rejects.toMatchObject({ name: 'StoreError', reason: 'closed' })
      }
    })
    if (lasts) {
      on('[S1] holds the same book when opened again', async (store, again) => {
        await store.append([...one, ...two])
        await store.putBlob(sha256Hex(picture), picture)
        await store.close()
        const later = await again()
        expect(await later.since()).toEqual([...one, ...two])
        expect(await later.cursors()).toEqual({ d1: 5, d2: 3 })
        expect(await later.getBlob(sha256Hex(picture))).toHaveLength(picture.length)
      })
      on('two that are open at once see each other\'s postings', async (store, again) => {
        const other = await again()
        await store.append(one)
        expect(await other.since()).toEqual(one)
        await other.append(two)
        expect(await store.cursors()).toEqual({ d1: 5, d2: 3 })
        await expect(other.append([rival])).rejects.toMatchObject({ reason: 'forked' })
      })
    }
  })
}
