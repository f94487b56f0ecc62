import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { fold, newDevice, writePostings } from '@lodebook/book'
import type { DeviceState, Draft, Posting } from '@lodebook/book'
import { alarmText, SqliteStore, startHub, watchCallOuts } from '../src/index.ts'
import type { Hub } from '../src/index.ts'
import { temporary } from './temporary.ts'

const at = (clock: string) => Date.parse(`2026-06-01T${clock}:00Z`)
let place = temporary(), hub: Hub | undefined, clock = at('08:00')
let written: Posting[] = [], state: DeviceState
beforeEach(() => { place = temporary(); clock = at('08:00'); written = []; state = newDevice('phone') })
afterEach(async () => { await hub?.close(); hub = undefined; place.drop() })

const on = async () => { hub = await startHub({ bookFile: place.file('mine.book'), port: 0, now: () => clock }) }
const off = async () => { await hub!.close(); hub = undefined }
async function write(set: Draft['set'], entry = 'g1'): Promise<void> {
  const made = writePostings(state, [{ entry, kind: 'going-in', set }], { by: 'Ada', nowMs: clock, book: fold(written) })
  state = made.state
  written.push(...made.postings)
  const answer = await fetch(new URL('api/postings', hub!.url), { method: 'POST', body: made.postings.map(p => `${JSON.stringify(p)}\n`).join(''), headers: { 'content-type': 'application/jsonl' } })
  expect(await answer.json()).toMatchObject({ refused: [] })
}
const goIn = (more: Draft['set'] = {}) => write({ people: ['Ada', 'Bo'], in: '2026-06-01T08:00Z', due: '2026-06-01T12:00Z', outside: 'Cy', ...more })
const asked = async () => await (await fetch(new URL('api/call-out', hub!.url))).json() as { now: number, open: { entry: string, state: string, overdueBy: number }[] }
const stateNow = async () => (await asked()).open.map(c => c.state)

describe('the call-out clock at the hub', () => {
  it('[W1] watches whoever is written as in and not as out', async () => {
    await on()
    expect((await asked()).open).toEqual([])
    await goIn()
    expect(await stateNow()).toEqual(['in'])
    await write({ out: '2026-06-01T10:30Z' })
    expect((await asked()).open).toEqual([])
  })

  it('[W2] goes from in to due soon, overdue and call for help by the hub\'s clock', async () => {
    await on()
    await goIn()
    for (const [time, is] of [['11:44', 'in'], ['11:45', 'due soon'], ['11:59', 'due soon'], ['12:00', 'overdue'], ['12:29', 'overdue'], ['12:30', 'call for help']] as const) {
      clock = at(time)
      expect(await stateNow()).toEqual([is])
    }
  })
  it('[W2] help is called for when the book says, if it says', async () => {
    await on()
    await goIn({ callAfter: { text: '2 h', value: 2, unit: 'h' } })
    clock = at('13:59')
    expect(await stateNow()).toEqual(['overdue'])
    clock = at('14:00')
    expect(await stateNow()).toEqual(['call for help'])
  })

  it('[W3] a time that fell due while the hub was off rings when it is on again', async () => {
    await on()
    await goIn()
    await off()
    clock = at('12:05')
    await on()
    expect((await asked()).open).toMatchObject([{ entry: 'g1', state: 'overdue', overdueBy: 5 }])
  })

  it('[W4] tells at once, again for help, and every minute, until they are out', async () => {
    await on()
    await goIn({ call: 'the sheriff' })
    const store = new SqliteStore(place.file('mine.book')), told: string[] = []
    const watch = watchCallOuts(store, { now: () => clock, tell: (overdue) => { told.push(alarmText(overdue)) } })
    const look = async (time: string) => { clock = at(time); await watch.look() }
    await look('11:59')
    expect(told).toHaveLength(0)
    await look('12:00')
    expect(told).toHaveLength(1)
    expect(told[0]).toContain('OVERDUE: Ada, Bo')
    expect(told[0]).toContain('\u0007')
    await watch.look()
    expect(told).toHaveLength(1)
    await look('12:01')
    await look('12:30')
    expect(told).toHaveLength(3)
    expect(told[2]).toContain('CALL FOR HELP')
    expect(told[2]).toContain('Call the sheriff')
    await write({ out: '2026-06-01T12:31Z' })
    await look('12:40')
    expect(told).toHaveLength(3)
    watch.stop()
    await store.close()
  })
  it('[W4] a later time due ends it until that has passed', async () => {
    await on()
    await goIn()
    clock = at('12:10')
    await write({ due: '2026-06-01T13:00Z' })
    expect(await stateNow()).toEqual(['in'])
    clock = at('13:00')
    expect(await stateNow()).toEqual(['overdue'])
  })
  it('[W6] heard is not out', async () => {
    await on()
    await goIn()
    clock = at('12:10')
    await write({ heard: '2026-06-01T12:10Z', heardBy: 'Cy' })
    expect(await stateNow()).toEqual(['overdue'])
  })
  it('[W7] says what its own clock is', async () => {
    await on()
    expect((await asked()).now).toBe(clock)
  })
  it('two parties, the later first; a struck entry is none', async () => {
    await on()
    await goIn()
    await write({ people: ['Di'], in: '2026-06-01T08:00Z', due: '2026-06-01T09:00Z' }, 'g2')
    clock = at('12:00')
    expect((await asked()).open.map(c => c.entry)).toEqual(['g2', 'g1'])
  })
})
