import type { Database } from './database.ts'
import { openDatabase } from './database.ts'
import { Bookkeeper } from './bookkeeper.ts'
import type { BookState, Desk, HubState } from './desk.ts'
import { Drafts } from './drafts.ts'
import { exportLines } from '@lodebook/book'
import { certificateDrafts, previewCsv } from '@lodebook/book/csv'
import type { CsvPreview } from '@lodebook/book/csv'
import { httpHub, NoHub } from './hub.ts'
import type { Hub } from './hub.ts'
import { IndexedDbStore } from './indexed-db-store.ts'
import { level, waiting } from './level.ts'
import type { Notes } from './level.ts'
import { conflictLines, helpFor, lineOf, stateOf, surveyors } from './queries.ts'
import { changeBook, labelBook, openShelf } from './shelf.ts'

/** What the desk needs from the world around it. */
export interface Surroundings {
  /** The address of the hub. */
  readonly base: string
  readonly alone: <T>(job: () => Promise<T>) => Promise<T>
  /** Where windows of the same browser tell each other that something was written. */
  readonly others: BroadcastChannel
  readonly now: () => number
  /** Does a job again and again, and when the device is back on a network. */
  readonly every: (seconds: number, job: () => void) => void
  readonly hub?: Hub
}

const askEvery = 20 // seconds

/** The book on this device behind the one interface that the screens use. */
export function openDesk(around: Surroundings): Desk {
  const hub = around.hub ?? httpHub(around.base)
  let keeper: Bookkeeper, database: Database, notes: Notes, drafts: Drafts, writer = '', device = '', name = '', hubAhead = 0
  let hubState: HubState = { state: 'asking', waiting: 0 }
  let tell: ((state: BookState) => void) | undefined
  let levelling: Promise<void> | undefined, preview: CsvPreview | undefined, previewed: Uint8Array = new Uint8Array()

  const latest = (): number => around.now() + Math.max(0, hubAhead)
  const state = (): BookState => ({ ...stateOf(keeper.book), writer, begun: drafts.begun, device, database: name, hub: hubState })
  const changed = (): void => tell?.(state())
  const hubIs = async (is: Omit<HubState, 'waiting' | 'levelAt'> & { readonly levelAt?: string }): Promise<void> => {
    hubState = { ...(hubState.levelAt === undefined ? {} : { levelAt: hubState.levelAt }), ...is, waiting: await waiting(keeper.store, notes) }
    changed()
  }

  async function openBook(at: string): Promise<void> {
    name = at
    database = await openDatabase(at)
    notes = {
      get: key => database.get('facts', key),
      put: async (key, value) => { await database.put('facts', value, key) },
    }
    keeper = new Bookkeeper({ store: new IndexedDbStore(database), device, now: around.now, latest, alone: around.alone })
    drafts = await Drafts.of(database)
    writer = await database.get('facts', 'writer') ?? ''
    await keeper.catchUp()
  }

  async function levelOnce(join: boolean): Promise<void> {
    try {
      const mine = keeper.book.of('mine')[0]?.id ?? ''
      const is = await level({ store: keeper.store, notes, hub, mine, join })
      if (await keeper.catchUp()) around.others.postMessage('written')
      if (is.is === 'level') {
        const id = keeper.book.of('mine')[0]?.id
        if (id !== undefined) await labelBook(id, name)
        await hubIs({ state: 'level', levelAt: new Date(around.now()).toISOString() })
      } else await hubIs(is.is === 'refused' ? { state: 'refused', says: is.says } : { state: is.is, book: { id: is.book.id, name: is.book.name } })
    } catch (problem) {
      await hubIs({ state: problem instanceof NoHub ? 'none' : 'unreachable', says: problem instanceof Error ? problem.message : String(problem) })
    }
  }

  /** One levelling at a time; a call while one runs is answered by the next. */
  const bringLevel = (join = false): Promise<void> => {
    const next = (levelling ?? Promise.resolve()).then(() => levelOnce(join))
    levelling = next
    return next
  }

  let isOpen: () => void = () => undefined
  const opened = new Promise<void>((resolve) => { isOpen = resolve })
  const whenOpen = <A extends unknown[], R>(act: (...args: A) => R | Promise<R>) => async (...args: A): Promise<R> => { await opened; return act(...args) }

  return {
    async open() {
      const shelf = await openShelf()
      device = shelf.device
      await openBook(shelf.database)
      isOpen()
      around.others.onmessage = () => { void keeper.catchUp().then((fresh) => { if (fresh) changed() }) }
      around.every(askEvery, () => { void bringLevel() })
      void bringLevel()
      return state()
    },
    onChange(listener) { tell = listener },
    hubClock(ahead) { hubAhead = ahead },
    write: whenOpen(async (by, draft) => {
      const written = await keeper.write(by, draft)
      if (written.saved) {
        around.others.postMessage('written')
        await hubIs({ ...hubState, state: hubState.state === 'level' ? 'sending' : hubState.state })
        void bringLevel()
      }
      return written
    }),
    check: whenOpen(draft => keeper.check(draft)),
    entriesOf: whenOpen(kind => [...keeper.book.all.values()].filter(e => e.kind === kind).map(lineOf)),
    entries: whenOpen(ids => ids.flatMap(id => keeper.book.all.get(id) ?? []).map(lineOf)),
    writtenSince: whenOpen(iso => [...keeper.book.all.values()].filter(e => e.id.startsWith(`${device}.`) && e.createdAt >= iso).reverse().map(lineOf)),
    formHelp: whenOpen((kind, mend) => {
      const draft = drafts.get(kind, mend)
      return { ...helpFor(keeper.book, kind, entry => entry.id.startsWith(`${device}.`)), ...(draft ? { draft } : {}) }
    }),
    keepDraft: whenOpen(async (kind, mend, texts) => {
      const before = drafts.begun
      await drafts.keep(kind, mend, texts)
      if (drafts.begun.join() !== before.join()) changed()
    }),
    setWriter: whenOpen(async (name) => {
      writer = name
      await database.put('facts', name, 'writer')
      changed()
    }),
    conflicts: whenOpen(() => conflictLines(keeper.book)),
    surveyedBy: whenOpen(() => surveyors(keeper.book)),
    previewFile: whenOpen((bytes, options) => {
      previewed = bytes
      preview = previewCsv(bytes, options, { book: keeper.book, now: latest() })
      return preview
    }),
    acceptFile: whenOpen(async (by, name) => {
      const drafts = preview?.drafts ?? []
      const kept = preview ? certificateDrafts(preview, { name, bytes: previewed.length }, keeper.book) : []
      if (kept.length > 0) await keeper.putBlob(previewed)
      preview = undefined
      previewed = new Uint8Array()
      const added = await keeper.writeAll(by, [...drafts, ...kept]) - kept.length
      around.others.postMessage('written')
      await hubIs(hubState)
      void bringLevel()
      return added
    }),
    exportBook: whenOpen(() => textOf(exportLines(keeper.store))),
    syncNow: whenOpen(() => bringLevel()),
    joinHub: whenOpen(() => bringLevel(true)),
    openHubsBook: whenOpen(async () => {
      const book = hubState.book
      if (!book) return
      await openBook(await changeBook(book.id))
      hubState = { state: 'asking', waiting: 0 }
      changed()
      await bringLevel()
    }),
    putBlob: whenOpen(bytes => keeper.putBlob(bytes)),
    getBlob: whenOpen(async sha256 => await keeper.store.getBlob(sha256) ?? await hub.getBlob(sha256).catch(() => undefined)),
  }
}

async function textOf(lines: AsyncIterable<string>): Promise<string> {
  const all: string[] = []
  for await (const line of lines) all.push(line)
  return all.join('')
}
