import { mkdirSync, writeFileSync } from 'node:fs'
import { request as httpRequest } from 'node:http'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { conflicts, fold, foldMore, MemoryStore, newDevice, newEntryId, seen, sha256Hex, verifyChain, writePostings } from '@lodebook/book'
import type { Cursors, Draft, Posting } from '@lodebook/book'
import { postingsOf } from '../../../packages/book/test/posting/sample-postings.ts'
import { HubError, SqliteStore, startHub } from '../src/index.ts'
import type { Hub } from '../src/index.ts'
import { temporary } from './temporary.ts'

const sample = (bag: string, entry = bag): Draft => ({ entry, kind: 'sample', set: { bag } })
const one = postingsOf('d1', ['B-1', 'B-2', 'B-3'].map(bag => sample(bag)))
const lines = (postings: readonly unknown[]) => postings.map(posting => `${JSON.stringify(posting)}\n`).join('')
const parsed = (text: string) => text.split('\n').filter(line => line !== '').map(line => JSON.parse(line) as Posting)

let place = temporary()
let hub: Hub
beforeEach(async () => {
  place = temporary()
  mkdirSync(place.file('web/assets'), { recursive: true })
  writeFileSync(place.file('web/index.html'), '<!doctype html><title>Lodebook</title>')
  writeFileSync(place.file('web/assets/app-a1B2c3D4.js'), 'export {}')
  writeFileSync(place.file('web/sw.js'), '// worker')
  writeFileSync(place.file('secret.txt'), 'not for the web')
  hub = await startHub({ bookFile: place.file('mine.book'), port: 0, webRoot: place.file('web') })
})
afterEach(async () => { await hub.close(); place.drop() })

const get = (path: string, init?: RequestInit) => fetch(new URL(path, hub.url), init)
const post = (body: string, headers: Record<string, string> = { 'content-type': 'application/jsonl' }) => get('api/postings', { method: 'POST', body, headers })
const json = async (answer: Promise<Response>) => { const it = await answer; return { status: it.status, body: await it.json() as Record<string, unknown> } }
const all = async (after: Cursors = {}) => parsed(await (await get(`api/postings?after=${encodeURIComponent(JSON.stringify(after))}`)).text())

describe('the hub', () => {
  it('listens on this machine only, unless it is told otherwise', () => { expect(hub.url).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/) })
  it('says what book it has', async () => {
    expect(await json(get('api/book'))).toEqual({ status: 200, body: { id: '', name: '', postings: 0, cursors: {} } })
    await post(lines([...postingsOf('d7', [{ entry: 'm1', kind: 'mine', set: { name: 'Hollow Lantern' } }]), ...one]))
    expect(await json(get('api/book'))).toEqual({ status: 200, body: { id: 'm1', name: 'Hollow Lantern', postings: 4, cursors: { d1: 3, d7: 1 } } })
  })
  it('takes postings and hands them on after the cursors', async () => {
    expect(await json(post(lines(one)))).toEqual({ status: 200, body: { added: 3, refused: [] } })
    expect(await json(post(JSON.stringify({ postings: one }), { 'content-type': 'application/json' }))).toEqual({ status: 200, body: { added: 0, refused: [] } })
    expect(await all()).toEqual(one)
    expect(await all({ d1: 2 })).toEqual(one.slice(2))
    expect(await all({ d1: 3, d2: 9 })).toEqual([])
  })
  it('[S1] has what it took in the file before it says so', async () => {
    await post(lines(one))
    const beside = new SqliteStore(place.file('mine.book'), { readOnly: true })
    expect(await beside.since()).toEqual(one)
    await beside.close()
  })
  it('hands on page by page', async () => {
    await post(lines(one))
    const first = await get('api/postings?limit=2')
    expect(parsed(await first.text())).toEqual(one.slice(0, 2))
    const next = first.headers.get('lodebook-next')!
    const second = await get(`api/postings?limit=2&from=${encodeURIComponent(next)}`)
    expect(parsed(await second.text())).toEqual(one.slice(2))
    expect(second.headers.get('lodebook-next')).toBeNull()
  })
  it('[P6] refuses what no door takes, one by one, and keeps the rest', async () => {
    const altered = { ...one[1]!, by: 'Someone else' }
    const { status, body } = await json(post(lines([one[0], altered, { v: 2 }, one[2]])))
    expect(status).toBe(200)
    expect(body).toMatchObject({ added: 2, refused: [
      { device: 'd1', seq: 2, posting: altered, message: expect.stringContaining('it was altered') as string, problem: { field: 'hash' } },
      { message: expect.stringContaining('newer Lodebook') as string },
    ] })
    expect(await all()).toEqual([one[0], one[2]])
  })
  it('[S4] refuses the fork of a chain, and takes the others', async () => {
    await post(lines(one))
    const rival = postingsOf('d1', [sample('B-99')])
    const other = postingsOf('d2', [sample('B-7')])
    expect((await json(post(lines([...rival, ...other])))).body).toMatchObject({ added: 1, refused: [{ device: 'd1', seq: 1, message: expect.stringContaining('copied and written to twice') as string }] })
    expect(await all()).toEqual([...one, ...other])
  })
})

describe('the hub says no clearly', () => {
  it.each<[string, string, RequestInit, number, string]>([
    ['no JSON', 'api/postings', { method: 'POST', body: 'bag,width\n' }, 400, 'Row 1: this is not JSON'],
    ['half a line', 'api/postings', { method: 'POST', body: '{"v":1' }, 400, 'Row 1: the file breaks off'],
    ['another encoding', 'api/postings', { method: 'POST', body: Buffer.from('{"by":"José"}\n', 'latin1') }, 400, 'Row 1: byte 11 is not UTF-8'],
    ['JSON without postings', 'api/postings', { method: 'POST', body: '[]', headers: { 'content-type': 'application/json' } }, 400, 'holds no list of postings'],
    ['cursors that are none', 'api/postings?after=12', {}, 400, 'after: "12" will not do'],
    ['cursors below nothing', 'api/postings?after={"d1":-1}', {}, 400, 'after:'],
    ['a file by another name', 'api/blobs/photo.jpg', {}, 400, '64 hexadecimal digits'],
    ['a file it does not hold', `api/blobs/${'0'.repeat(64)}`, {}, 404, 'does not hold'],
    ['bytes that do not fit', `api/blobs/${'0'.repeat(64)}`, { method: 'PUT', body: 'picture' }, 400, 'another SHA-256'],
    ['a question it does not know', 'api/everything', {}, 404, 'does not know GET /api/everything'],
    ['a way of asking it does not know', 'api/book', { method: 'DELETE' }, 404, 'does not know DELETE /api/book'],
    ['a page of another site', 'api/book', { headers: { origin: 'http://elsewhere.example' } }, 403, 'may not use this book'],
  ])('%s', async (_, path, init, status, message) => {
    const answer = await json(get(path, init))
    expect(answer.status).toBe(status)
    expect(answer.body['error']).toContain(message)
    expect(await all()).toEqual([])
  })
  it('a name that is not its own', async () => {
    const status = await new Promise((resolve, reject) => {
      httpRequest(new URL('api/book', hub.url), { headers: { host: 'elsewhere.example' } }, (answer) => { answer.resume(); resolve(answer.statusCode) }).on('error', reject).end()
    })
    expect(status).toBe(403)
  })
  it('[L3] a line of 10 MB, and nothing of the request is kept', async () => {
    const { status, body } = await json(post(`${lines(one)}{"note":"${'x'.repeat(10_000_000)}"}\n`))
    expect(status).toBe(400)
    expect(body).toMatchObject({ error: expect.stringContaining('Row 4: the line has 10 MB or more') as string, row: 4 })
    expect(await all()).toEqual([])
  })
  it('more than a request may bring', async () => {
    const { status, body } = await json(get(`api/blobs/${'0'.repeat(64)}`, { method: 'PUT', body: new Uint8Array(100_000_001) }))
    expect([status, body['error']]).toEqual([413, 'This is more than 100 MB; send it in parts.'])
  })
  it('a port that is taken', async () => {
    await expect(startHub({ bookFile: place.file('other.book'), port: hub.port })).rejects.toThrow(HubError)
    await expect(startHub({ bookFile: place.file('other.book'), port: hub.port })).rejects.toThrow(/in use already/)
  })
})

describe('files', () => {
  it('[S6] go in by their hash and come out the same', async () => {
    const bytes = Uint8Array.from({ length: 300_000 }, (_, i) => (i * 7) % 256)
    const path = `api/blobs/${sha256Hex(bytes)}`
    expect((await get(path, { method: 'PUT', body: bytes })).status).toBe(204)
    expect((await get(path, { method: 'PUT', body: bytes })).status).toBe(204)
    const answer = await get(path)
    expect(sha256Hex(new Uint8Array(await answer.arrayBuffer()))).toBe(sha256Hex(bytes))
    expect(answer.headers.get('cache-control')).toContain('immutable')
    expect(answer.headers.get('x-content-type-options')).toBe('nosniff')
  })
  it('of the web app have their types, and screens get its page', async () => {
    const seenAs = async (path: string) => { const it = await get(path); return [it.status, it.headers.get('content-type'), it.headers.get('cache-control')] }
    expect(await seenAs('')).toEqual([200, 'text/html; charset=utf-8', 'no-cache'])
    expect(await seenAs('workings/A6')).toEqual([200, 'text/html; charset=utf-8', 'no-cache'])
    expect(await seenAs('assets/app-a1B2c3D4.js')).toEqual([200, 'text/javascript; charset=utf-8', 'public, max-age=31536000, immutable'])
    expect(await seenAs('sw.js')).toEqual([200, 'text/javascript; charset=utf-8', 'no-cache'])
    expect((await seenAs('assets/gone.js'))[0]).toBe(404)
    const head = await get('sw.js', { method: 'HEAD' })
    expect([head.headers.get('content-length'), await head.text()]).toEqual(['9', ''])
  })
  it.each(['..%2fsecret.txt', '%2e%2e/secret.txt', 'assets/..%2f..%2fsecret.txt', '%00', '%E0%A4%A'])('beside the web app are not served: %s', async (path) => {
    const status = await new Promise((resolve, reject) => {
      httpRequest({ port: hub.port, host: '127.0.0.1', path: `/${path}` }, (answer) => {
        let text = ''
        answer.setEncoding('utf8').on('data', (part: string) => { text += part }).on('end', () => { resolve(text.includes('not for the web') ? 'leaked' : answer.statusCode) })
      }).on('error', reject).end()
    })
    expect([404, 400]).toContain(status)
  })
})

/** A phone or laptop with a book of its own, in reach of the hub or not. */
class Device {
  readonly store = new MemoryStore()
  #state
  #book = fold([])
  constructor(readonly name: string) { this.#state = newDevice(name) }
  get book() { return this.#book }
  #take(postings: readonly Posting[]): void {
    this.#state = seen(this.#state, postings)
    this.#book = foldMore(this.#book, postings)
  }

  async write(nowMs: number, draft: Omit<Draft, 'entry'> & { entry?: string }): Promise<string> {
    const entry = draft.entry ?? newEntryId(this.#state)
    const { postings } = writePostings(this.#state, [{ ...draft, entry }], { by: this.name, nowMs, book: this.#book })
    await this.store.append(postings)
    this.#take(postings)
    return entry
  }

  async sync(): Promise<void> {
    const { cursors } = (await json(get('api/book'))).body as { cursors: Cursors }
    await post(lines(await this.store.since(cursors)))
    const fresh = await all(await this.store.cursors())
    await this.store.append(fresh)
    this.#take(fresh)
  }
}

describe('two devices and a hub', () => {
  it('come to the same book, with what they wrote out of reach of each other', async () => {
    const start = Date.UTC(2026, 4, 3)
    const [phone, laptop] = [new Device('phone'), new Device('laptop')]
    const bag = await phone.write(start, { kind: 'sample', set: { bag: 'B-1', method: 'channel' } })
    await phone.sync()
    await laptop.sync()
    expect(laptop.book.all.get(bag)?.fields).toEqual({ bag: 'B-1', method: 'channel' })

    await phone.write(start + 60_000, { kind: 'sample', entry: bag, set: { vein: 'Main' } })
    await laptop.write(start + 30_000, { kind: 'sample', entry: bag, set: { vein: 'East', collector: 'Tomas' } })
    await laptop.write(start + 40_000, { kind: 'sample', set: { bag: 'B-2', method: 'grab' } })
    for (const device of [laptop, phone, laptop]) await device.sync()

    expect([...phone.book.all]).toEqual([...laptop.book.all])
    expect(phone.book.all.get(bag)?.fields).toEqual({ bag: 'B-1', method: 'channel', vein: 'Main', collector: 'Tomas' })
    expect(phone.book.of('sample')).toHaveLength(2)
    expect(conflicts(laptop.book)).toMatchObject([{ field: 'vein', sayings: [{ value: 'East', by: 'laptop' }, { value: 'Main', by: 'phone' }] }])

    await laptop.write(start + 90_000, { kind: 'sample', entry: bag, set: { vein: 'East' } })
    await laptop.sync()
    await phone.sync()
    expect(conflicts(phone.book)).toEqual([])
    expect(phone.book.all.get(bag)?.fields['vein']).toBe('East')
    expect(verifyChain(await all())).toEqual([])
  })
  it('a hub that was stopped goes on with the same book', async () => {
    const phone = new Device('phone')
    await phone.write(Date.UTC(2026, 4, 3), { kind: 'sample', set: { bag: 'B-1', method: 'channel' } })
    await phone.sync()
    await hub.close()
    hub = await startHub({ bookFile: place.file('mine.book'), port: 0 })
    await phone.write(Date.UTC(2026, 4, 4), { kind: 'sample', set: { bag: 'B-2', method: 'channel' } })
    await phone.sync()
    expect(await all()).toEqual(await phone.store.since())
    expect((await json(get('workings'))).body['error']).toContain('the web app is not with it')
  })
})
