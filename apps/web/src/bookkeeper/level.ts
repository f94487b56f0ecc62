import type { Cursors, Posting, Store } from '@lodebook/book'
import { blobsNamed, upgrade } from '@lodebook/book'
import type { Hub, HubBook } from './hub.ts'

/** What of a book's standing with its hub is kept beside it on the device. */
export interface Notes { get(name: string): Promise<string | undefined>, put(name: string, value: string): Promise<void> }

export type Levelled =
  | { readonly is: 'level', readonly fetched: number, readonly sent: number }
  | { readonly is: 'other-book' | 'unjoined', readonly book: HubBook }
  | { readonly is: 'refused', readonly says: string }

export interface Sides {
  readonly store: Store
  readonly notes: Notes
  readonly hub: Hub
  /** The entry that names the mine in the book here; '' when nobody has written it yet. */
  readonly mine: string
  /** The crew has said that the hub's book and the one here are the same. */
  readonly join?: boolean
}

const atOnce = 500 // postings in one request, so that a weak signal gets somewhere

/**
 * Brings the device and its hub level: fetches what the hub has and the device has not, sends what the hub lacks. Every posting that comes
 * in is checked as at any other door. Cut short at any point, the next time goes on from there; what is sent twice adds nothing.
 */
export async function level({ store, notes, hub, mine, join = false }: Sides): Promise<Levelled> {
  const theirs = await hub.book(), held = await store.cursors()
  const same = join || await notes.get('joined') === 'yes' || Object.keys(held).length === 0 || theirs.postings === 0
  if (mine !== '' && theirs.id !== '' && mine !== theirs.id) return { is: 'other-book', book: theirs }
  if (!same && (mine === '' || theirs.id === '')) return { is: 'unjoined', book: theirs }
  await notes.put('joined', 'yes')
  let fetched = 0
  for await (const page of hub.since(held)) {
    const refused = await take(store, page)
    if (refused !== undefined) return { is: 'refused', says: refused }
    fetched += page.length
  }
  return send(store, notes, hub, theirs.cursors, held, fetched)
}

/** Takes a page in, or says why not. */
async function take(store: Store, page: readonly unknown[]): Promise<string | undefined> {
  const postings: Posting[] = []
  for (const one of page) {
    const opened = upgrade(one)
    if (!opened.ok) return opened.problem.message
    postings.push(opened.posting)
  }
  await store.append(postings)
  return undefined
}

/** What was held before and the hub has not, with the files it speaks of ahead of it, so that a posting never names what the hub can't give. */
async function send(store: Store, notes: Notes, hub: Hub, given: Cursors, held: Cursors, fetched: number): Promise<Levelled> {
  const lacking = (await store.since(given)).filter(p => p.seq <= (held[p.device] ?? 0))
  for (let i = 0; i < lacking.length; i += atOnce) {
    const batch = lacking.slice(i, i + atOnce)
    for (const name of blobsNamed(batch)) {
      const bytes = await store.getBlob(name)
      if (bytes) await hub.putBlob(name, bytes)
    }
    const { refused } = await hub.send(batch)
    if (refused.length > 0) return { is: 'refused', says: refused[0]!.message ?? 'it gave no reason' }
  }
  await notes.put('level', JSON.stringify(furthest(given, held)))
  return { is: 'level', fetched, sent: lacking.length }
}

/** For each device the further of the two. */
function furthest(a: Cursors, b: Cursors): Cursors {
  return Object.fromEntries([...Object.keys(a), ...Object.keys(b)].map(device => [device, Math.max(a[device] ?? 0, b[device] ?? 0)]))
}

/** How many postings here the hub has not been seen to hold. */
export async function waiting(store: Store, notes: Notes): Promise<number> {
  return (await store.since(JSON.parse(await notes.get('level') ?? '{}') as Cursors)).length
}
