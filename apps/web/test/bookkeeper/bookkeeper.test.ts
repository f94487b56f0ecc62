import { MemoryStore, verifyChain } from '@lodebook/book'
import type { Store } from '@lodebook/book'
import { expect, it } from 'vitest'
import { Bookkeeper } from '../../src/bookkeeper/bookkeeper.ts'
import { conflictLines, helpFor, stateOf } from '../../src/bookkeeper/queries.ts'

const noon = Date.UTC(2026, 4, 3, 12)
/** One pen for all windows, as the browser's lock gives it. */
function onePen(): <T>(job: () => Promise<T>) => Promise<T> {
  let last: Promise<unknown> = Promise.resolve()
  return (job) => { const next = last.then(job); last = next.catch(() => undefined); return next }
}
const keeperOf = (store: Store, device = 'd1', alone = onePen(), latest = noon) => new Bookkeeper({ store, device, now: () => noon, latest: () => latest, alone })
const bag = (name: string) => ({ kind: 'sample', set: { bag: name, method: 'channel' } })

it('what is saved is in the store when it says saved', async () => {
  const store = new MemoryStore(), written = await keeperOf(store).write('Ada', bag('B-001'))
  expect(written).toEqual({ saved: true, entry: 'd1.1', at: '2026-05-03T12:00:00.000Z' })
  expect((await store.since())[0]).toMatchObject({ device: 'd1', seq: 1, by: 'Ada', kind: 'sample', set: { bag: 'B-001', method: 'channel' } })
})

it('it says saved only after the store has said so, and nothing is in the book when the store fails', async () => {
  const store = new MemoryStore(), keeper = keeperOf(store), order: string[] = []
  const append = store.append.bind(store)
  store.append = async (postings) => { await Promise.resolve(); order.push('durable'); return append(postings) }
  await keeper.write('Ada', bag('B-001')).then(() => order.push('saved'))
  expect(order).toEqual(['durable', 'saved'])
  store.append = () => Promise.reject(new Error('the device is full'))
  await expect(keeper.write('Ada', bag('B-002'))).rejects.toThrow('the device is full')
  expect(keeper.book.of('sample')).toHaveLength(1)
  store.append = append
  expect(await keeper.write('Ada', bag('B-002'))).toMatchObject({ saved: true, entry: 'd1.2' })
})

it('a time that has come by a better clock than the device\'s is not in the future; one that has not is refused', async () => {
  const out = { kind: 'going-in', set: { people: ['Ada'], in: '2026-05-03T09:00+00:00', due: '2026-05-03T12:30+00:00', out: '2026-05-03T14:00+00:00' } }, hour = 3_600_000
  expect(await keeperOf(new MemoryStore()).write('Ada', out)).toMatchObject({ saved: false, problems: [{ field: 'out' }] })
  expect(await keeperOf(new MemoryStore(), 'd1', onePen(), noon + 3 * hour).write('Ada', out)).toMatchObject({ saved: true, at: '2026-05-03T12:00:00.000Z' })
})

it('a bag used twice is refused with the field named, and nothing is written', async () => {
  const store = new MemoryStore(), keeper = keeperOf(store)
  await keeper.write('Ada', bag('B-001'))
  const again = await keeper.write('Bo', bag('B-001'))
  expect(again.saved).toBe(false)
  expect(again).toMatchObject({ problems: [{ field: 'bag', warning: false }] })
  expect(await store.since()).toHaveLength(1)
})

it('a doubt is told and does not stand in the way', async () => {
  const keeper = keeperOf(new MemoryStore())
  const pan = { kind: 'pan', set: { bag: 'B-404', mass: { text: '2 kg', value: 2000, unit: 'g' as const }, colours: [] } }
  expect(keeper.check(pan)).toMatchObject([{ field: 'bag', warning: true }])
  expect(await keeper.write('Ada', pan)).toMatchObject({ saved: true })
})

it('two windows of one browser write one chain', async () => {
  const store = new MemoryStore(), pen = onePen(), one = keeperOf(store, 'd1', pen), two = keeperOf(store, 'd1', pen)
  await Promise.all([one.write('Ada', bag('B-001')), two.write('Ada', bag('B-002')), one.write('Ada', bag('B-003')), two.write('Ada', bag('B-004'))])
  const postings = await store.since()
  expect(postings.map(p => p.seq)).toEqual([1, 2, 3, 4])
  expect(verifyChain(postings)).toEqual([])
  await one.catchUp()
  expect(one.book.of('sample')).toHaveLength(4)
})

it('two windows that share no lock still write one chain: the store refuses the place that is taken, and the later one takes the next', async () => {
  const store = new MemoryStore(), free = <T>(job: () => Promise<T>) => job(), one = keeperOf(store, 'd1', free), two = keeperOf(store, 'd1', free)
  await Promise.all([one.write('Ada', bag('B-001')), two.write('Ada', bag('B-002'))])
  await Promise.all([two.write('Ada', bag('B-003')), one.write('Ada', bag('B-004'))])
  const postings = await store.since()
  expect(postings.map(p => p.set['bag']).sort()).toEqual(['B-001', 'B-002', 'B-003', 'B-004'])
  expect(verifyChain(postings)).toEqual([])
})

it('mended and struck out: the history stays, and struck entries can be restored', async () => {
  const keeper = keeperOf(new MemoryStore())
  const first = await keeper.write('Ada', bag('B-001')), entry = first.saved ? first.entry : ''
  await keeper.write('Bo', { kind: 'sample', entry, set: { method: 'chip' }, why: 'looked again' })
  expect(keeper.book.all.get(entry)?.history['method']?.map(s => [s.value, s.by])).toEqual([['channel', 'Ada'], ['chip', 'Bo']])
  await keeper.write('Bo', { kind: 'sample', entry, set: {}, struck: true, why: 'bag burst' })
  expect(keeper.book.of('sample')).toHaveLength(0)
  expect(stateOf(keeper.book).counts['sample']).toEqual({ standing: 0, struck: 1 })
  await keeper.write('Bo', { kind: 'sample', entry, set: {}, struck: false })
  expect(keeper.book.of('sample')).toHaveLength(1)
})

it('a form is offered what was written before, on this device first, and nothing from a blank or a standard', async () => {
  const store = new MemoryStore(), mine = keeperOf(store, 'd1'), other = keeperOf(store, 'd2')
  await mine.write('Ada', { kind: 'sample', set: { bag: 'B-001', method: 'channel', vein: 'Main', collector: 'Ada' } })
  await other.write('Bo', { kind: 'sample', set: { bag: 'B-002', method: 'chip', collector: 'Bo' } })
  await other.write('Bo', { kind: 'sample', set: { bag: 'B-003', method: 'pulp', role: 'standard', standard: 'S1' } })
  await mine.catchUp()
  const help = helpFor(mine.book, 'sample', e => e.id.startsWith('d1.'))
  expect(help.before).toMatchObject({ method: 'channel', collector: 'Ada', vein: 'Main' })
  expect(help.used['bag']?.[0]).toBe('B-003')
})

it('two devices that wrote one field without knowing of each other show as a conflict, in words', async () => {
  const store = new MemoryStore(), here = keeperOf(store, 'd1'), far = keeperOf(new MemoryStore(), 'd2')
  await here.write('Ada', bag('B-001'))
  await far.store.append(await store.since())
  await here.write('Ada', { kind: 'sample', entry: 'd1.1', set: { method: 'chip' } })
  await far.write('Bo', { kind: 'sample', entry: 'd1.1', set: { method: 'grab' } })
  await store.append(await far.store.since())
  await here.catchUp()
  expect(conflictLines(here.book)).toMatchObject([{ entry: 'd1.1', title: 'Sample B-001', label: 'Method', sayings: [{ by: 'Ada', text: 'chip' }, { by: 'Bo', text: 'grab' }] }])
})
