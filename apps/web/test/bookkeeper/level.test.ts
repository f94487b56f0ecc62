import { MemoryStore, newDevice, sha256Hex, writePostings } from '@lodebook/book'
import type { Posting, Store } from '@lodebook/book'
import { expect, it } from 'vitest'
import type { Hub } from '../../src/bookkeeper/hub.ts'
import { level, waiting } from '../../src/bookkeeper/level.ts'
import type { Notes } from '../../src/bookkeeper/level.ts'

const bags = (device: string, n: number): readonly Posting[] => writePostings(newDevice(device),
  Array.from({ length: n }, (_, i) => ({ entry: `${device}.${i + 1}`, kind: 'sample', set: { bag: `${device}-${i + 1}`, method: 'chip' } })), { by: 'Ada', nowMs: 1e12 }).postings

function notesOf(): Notes {
  const held = new Map<string, string>()
  return { get: name => Promise.resolve(held.get(name)), put: (name, value) => { held.set(name, value); return Promise.resolve() } }
}

/** A hub over a store; `breakAfter` cuts the line after so many calls. */
function hubOf(store: Store, id = 'camp', breakAfter = Infinity): { -readonly [K in keyof Hub]: Hub[K] } & { calls: number } {
  const call = <T>(act: () => Promise<T>): Promise<T> => ++hub.calls > breakAfter ? Promise.reject(new TypeError('Failed to fetch')) : act()
  const hub: { -readonly [K in keyof Hub]: Hub[K] } & { calls: number } = {
    calls: 0,
    book: () => call(async () => ({ id, name: 'Camp', postings: (await store.since()).length, cursors: await store.cursors() })),
    async* since(cursors) {
      const all = await call(() => store.since(cursors))
      for (let i = 0; i < all.length || i === 0; i += 400) yield i === 0 ? all.slice(0, 400) : await call(() => Promise.resolve(all.slice(i, i + 400)))
    },
    send: postings => call(async () => ({ ...await store.append(postings), refused: [] })),
    putBlob: () => Promise.resolve(), getBlob: () => Promise.resolve(undefined),
  }
  return hub
}

it('fetches what the hub has and sends what it lacks; a second time there is nothing to do', async () => {
  const here = new MemoryStore(), there = new MemoryStore(), notes = notesOf(), hub = hubOf(there)
  await there.append(bags('d2', 3))
  expect(await level({ store: here, notes, hub, mine: '' })).toEqual({ is: 'level', fetched: 3, sent: 0 })
  await here.append(bags('d1', 1100))
  expect(await waiting(here, notes)).toBe(1100)
  expect(await level({ store: here, notes, hub, mine: '' })).toEqual({ is: 'level', fetched: 0, sent: 1100 })
  expect(await there.since()).toEqual(await here.since())
  expect(await waiting(here, notes)).toBe(0)
  expect(await level({ store: here, notes, hub, mine: '' })).toEqual({ is: 'level', fetched: 0, sent: 0 })
})

it('cut off after any call, it goes on from there the next time and ends level', async () => {
  for (let calls = 0; calls < 9; calls++) {
    const here = new MemoryStore(), there = new MemoryStore(), notes = notesOf()
    await here.append(bags('d1', 1100))
    await there.append(bags('d2', 900))
    await level({ store: here, notes, hub: hubOf(there, 'camp', calls), mine: 'camp' }).catch((problem: unknown) => expect(problem).toBeInstanceOf(TypeError))
    expect(await level({ store: here, notes, hub: hubOf(there), mine: 'camp' })).toMatchObject({ is: 'level' })
    expect(await there.since()).toEqual(await here.since())
    expect(await there.since()).toHaveLength(2000)
  }
})

it('another mine\'s hub gets nothing and gives nothing', async () => {
  const here = new MemoryStore(), there = new MemoryStore(), notes = notesOf()
  await here.append(bags('d1', 2))
  await there.append(bags('d2', 2))
  expect(await level({ store: here, notes, hub: hubOf(there, 'south'), mine: 'north' })).toMatchObject({ is: 'other-book', book: { id: 'south' } })
  expect([(await here.since()).length, (await there.since()).length]).toEqual([2, 2])
})

it('writing on both sides and never met: it waits for the crew to say that they are one book', async () => {
  const here = new MemoryStore(), there = new MemoryStore(), notes = notesOf()
  await here.append(bags('d1', 2))
  await there.append(bags('d2', 2))
  expect(await level({ store: here, notes, hub: hubOf(there), mine: '' })).toMatchObject({ is: 'unjoined' })
  expect((await there.since()).length).toBe(2)
  expect(await level({ store: here, notes, hub: hubOf(there), mine: '', join: true })).toEqual({ is: 'level', fetched: 2, sent: 2 })
})

it('a posting that was altered on the way is not taken in, and says so', async () => {
  const here = new MemoryStore(), there = new MemoryStore(), hub = hubOf(there)
  const [good, bad] = bags('d2', 2)
  hub.since = async function* () { yield await Promise.resolve([good, { ...bad, by: 'Somebody' }]) }
  const is = await level({ store: here, notes: notesOf(), hub, mine: '' })
  expect(is).toMatchObject({ is: 'refused' })
  expect(is.is === 'refused' && is.says).toMatch(/altered/)
  expect(await here.since()).toEqual([])
})

it('pictures go ahead of the postings that speak of them', async () => {
  const here = new MemoryStore(), there = new MemoryStore(), hub = hubOf(there), order: string[] = []
  const bytes = new Uint8Array([1, 2, 3]), sha256 = sha256Hex(bytes)
  await here.putBlob(sha256, bytes)
  await here.append(writePostings(newDevice('d1'), [{ entry: 'd1.1', kind: 'photo', set: { file: { sha256, type: 'image/jpeg', bytes: 3 } } }], { by: 'Ada', nowMs: 1e12 }).postings)
  hub.putBlob = (name) => { order.push(name); return Promise.resolve() }
  const send = hub.send
  hub.send = (postings) => { order.push('postings'); return send(postings) }
  await level({ store: here, notes: notesOf(), hub, mine: '' })
  expect(order).toEqual([sha256, 'postings'])
})

it('what is written while it is being brought level still counts as waiting', async () => {
  const here = new MemoryStore(), there = new MemoryStore(), notes = notesOf(), hub = hubOf(there), send = hub.send, [first, second] = bags('d1', 2)
  await here.append([first!])
  hub.send = async (postings) => { const taken = await send(postings); await here.append([second!]); return taken }
  await level({ store: here, notes, hub, mine: '' })
  expect(await there.since()).toEqual([first])
  expect(await waiting(here, notes)).toBe(1)
})
