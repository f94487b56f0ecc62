import Database from 'better-sqlite3'
import { spawnSync } from 'node:child_process'
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, afterEach, beforeEach, describe, expect, it } from 'vitest'
import { verifyChain } from '@lodebook/book'
import { conformance } from '../../../packages/book/test/conformance.ts'
import { postingsOf } from '../../../packages/book/test/posting/sample-postings.ts'
import { SqliteStore, type SqliteOptions } from '../src/index.ts'
import { temporary } from './temporary.ts'

conformance('a SQLite file', () => {
  const place = temporary()
  return Promise.resolve({ open: () => Promise.resolve(new SqliteStore(place.file('mine.book'))), drop: () => { place.drop(); return Promise.resolve() } })
}, { lasts: true })

const bags = (device: string, n: number, note = '') => postingsOf(device, Array.from({ length: n }, (_, i) =>
  ({ entry: `${device}.${i + 1}`, kind: 'sample', set: { bag: `${device}-${i + 1}`, ...(note === '' ? {} : { note }) } })))

const refusal = (act: () => unknown) => { try { act() } catch (error) { return error } return undefined }

describe('a SQLite file', () => {
  let place = temporary()
  beforeEach(() => { place = temporary() })
  afterEach(() => { place.drop() })

  it('syncs in full, through a write-ahead log', async () => {
    const store = new SqliteStore(place.file('mine.book'))
    await store.append(bags('d1', 1))
    expect(await store.settings()).toEqual({ journal: 'wal', synchronous: 2 })
    await store.close()
  })
  it('opened only to read refuses to write, and the book is as it was', async () => {
    const store = new SqliteStore(place.file('mine.book'))
    await store.append(bags('d1', 3))
    const reader = new SqliteStore(place.file('mine.book'), { readOnly: true })
    await expect(reader.append(bags('d2', 1))).rejects.toMatchObject({
      name: 'StoreError', reason: 'read-only', message: `${place.file('mine.book')}: this file may only be read. Nothing was saved and the book is as it was.`,
    })
    expect(await reader.since()).toEqual(bags('d1', 3))
    await reader.close()
    await store.close()
  })
  it('is not begun where it must exist', () => {
    expect(refusal(() => new SqliteStore(place.file('none.book'), { mustExist: true }))).toMatchObject({ name: 'StoreError', reason: 'failed' })
    expect(refusal(() => new SqliteStore(place.file('no/such/folder.book')))).toMatchObject({ name: 'StoreError', reason: 'failed' })
  })
  it('refuses what is not a book', () => {
    writeFileSync(place.file('letter.txt'), 'Dear Ines, the assays are in.\n'.repeat(200))
    expect(refusal(() => new SqliteStore(place.file('letter.txt')))).toMatchObject({ name: 'StoreError', reason: 'not a book' })
    const other = new Database(place.file('other.db'))
    other.exec('CREATE TABLE t (x)')
    other.close()
    expect(refusal(() => new SqliteStore(place.file('other.db')))).toMatchObject({ name: 'StoreError', reason: 'not a book' })
    expect(readFileSync(place.file('letter.txt'), 'utf8')).toContain('Dear Ines')
  })
  it('refuses a book of a newer layout', async () => {
    await new SqliteStore(place.file('mine.book')).close()
    const newer = new Database(place.file('mine.book'))
    newer.pragma('user_version = 99')
    newer.close()
    expect(refusal(() => new SqliteStore(place.file('mine.book')))).toMatchObject({ name: 'StoreError', reason: 'newer' })
  })
  it('refuses a damaged file in words', async () => {
    const store = new SqliteStore(place.file('mine.book'))
    await store.append(bags('d1', 400))
    await store.close()
    const bytes = readFileSync(place.file('mine.book'))
    bytes.fill(0xa5, 4096, bytes.length - 4096)
    writeFileSync(place.file('mine.book'), bytes)
    const again = new SqliteStore(place.file('mine.book'))
    await expect(again.since()).rejects.toMatchObject({ name: 'StoreError', reason: 'damaged', message: expect.stringContaining('the file is damaged') as string })
    await again.close()
  })
  it('waits for a program that is writing, and says so when it takes too long', async () => {
    const store = new SqliteStore(place.file('mine.book'), { waitMs: 20 })
    const other = new Database(place.file('mine.book'))
    other.exec('BEGIN IMMEDIATE')
    await expect(store.append(bags('d1', 1))).rejects.toMatchObject({ reason: 'busy' })
    other.exec('ROLLBACK')
    other.close()
    expect(await store.append(bags('d1', 1))).toEqual({ added: 1 })
    await store.close()
  })
})

describe('[S2] when the disk is full', () => {
  const place = temporary()
  const disk = place.file('disk')
  mkdirSync(disk)
  // A disk of 400 kB needs the right to mount one; elsewhere the limit on the file's own size stands in for it.
  const mounted = spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=400k', 'lodebook-test', disk]).status === 0
  afterAll(() => {
    if (mounted) spawnSync('umount', [disk])
    place.drop()
  })
  const fill = async (file: string, options: SqliteOptions) => {
    const store = new SqliteStore(file, options)
    const all = bags('d1', 400, 'quartz with iron stain along the hanging wall, rusty gouge on the foot, '.repeat(20).trim())
    let kept = 0
    let refusal: unknown
    for (let at = 0; at < all.length && refusal === undefined; at += 20) {
      await store.append(all.slice(at, at + 20)).then(() => { kept = at + 20 }, (error: unknown) => { refusal = error })
    }
    expect(refusal).toMatchObject({ name: 'StoreError', reason: 'full', message: expect.stringContaining('the disk is full. Nothing of this was saved') as string })
    expect(kept).toBeGreaterThan(0)
    expect(await store.since()).toEqual(all.slice(0, kept))
    await store.close()
    const again = new SqliteStore(file, { readOnly: true })
    expect(await again.since()).toEqual(all.slice(0, kept))
    expect(verifyChain(await again.since())).toEqual([])
    await again.close()
  }
  it('one clear error, and the book is as it was', () => fill(place.file('small.book'), { maxBytes: 400_000 }))
  it.skipIf(!mounted)('a book that was closed can be read from a disk that cannot be written to (skipped where no disk may be mounted)', async () => {
    const all = bags('d1', 3)
    const store = new SqliteStore(join(disk, 'closed.book'))
    await store.append(all)
    await store.close()
    expect(readdirSync(disk).filter(name => name.startsWith('closed'))).toEqual(['closed.book'])
    expect(spawnSync('mount', ['-o', 'remount,ro', disk]).status).toBe(0)
    try {
      expect(refusal(() => new SqliteStore(join(disk, 'closed.book')))).toMatchObject({ name: 'StoreError', reason: 'read-only' })
      const reader = new SqliteStore(join(disk, 'closed.book'), { readOnly: true })
      expect(await reader.since()).toEqual(all)
      await expect(reader.append(bags('d2', 1))).rejects.toMatchObject({ reason: 'read-only' })
      await reader.close()
    } finally {
      spawnSync('mount', ['-o', 'remount,rw', disk])
    }
  })
  it.skipIf(!mounted)('the same on a real disk (skipped where no disk may be mounted)', () => fill(join(disk, 'mine.book'), {}))
})
