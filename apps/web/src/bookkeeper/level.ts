import type { Cursors, Posting, Store } from '@lodebook/book'
import { upgrade } from '@lodebook/book'
import type { Hub, HubBook } from './hub.ts'

/** What of a book's standing with its hub is kept beside it on the device. */
export interface Notes { get(name: string): Promise<string | undefined>, put(name: string, value: string): Promise<void> }

export type Levelled =
  | { readonly is: 'level', readonly fetched: number, readonly sent: number }
  | { readonly is: 'other-book' | 'unjoined', readonly book: HubBook }
  | { readonly is: 'refused', readonly says: string }

const atOnce = 500 // postings in one request, so that a weak signal gets somewhere

/**
 * Brings the device and its hub level: fetches what the hub has and the device has not, sends what the hub lacks. Every posting that comes
 * in is checked as at any other door. Cut short at any point, the next time goes on from there; what is sent twice adds nothing.
 * @param join  the crew has said that the hub's book and the one here are the same
 */
export async function level(store: Store, notes: Notes, hub: Hub, join = false): Promise<Levelled> {
  const theirs = await hub.book(), known = await notes.get('book'), held = await store.cursors()
  if (known !== undefined && known !== theirs.id) return { is: 'other-book', book: theirs }
  if (known === undefined) {
    if (!join && Object.keys(held).length > 0 && theirs.postings > 0) return { is: 'unjoined', book: theirs }
    await notes.put('book', theirs.id)
  }
  const fetched = await take(store, await hub.since(held))
  if (typeof fetched === 'string') return { is: 'refused', says: fetched }
  const given = theirs.cursors ?? JSON.parse(await notes.get('sent') ?? '{}') as Cursors
  const lacking = (await store.since(later(given, fetched)))
  for (let i = 0; i < lacking.length; i += atOnce) {
    const batch = lacking.slice(i, i + atOnce)
    const { refused } = await hub.send(batch)
    if (refused.length > 0) return { is: 'refused', says: refused[0]!.message ?? 'it gave no reason' }
    await notes.put('sent', JSON.stringify(later(given, lacking.slice(0, i + batch.length))))
  }
  return { is: 'level', fetched: fetched.length, sent: lacking.length }
}

/** The postings taken in, or why they were not. */
async function take(store: Store, raw: readonly unknown[]): Promise<readonly Posting[] | string> {
  const postings: Posting[] = []
  for (const one of raw) {
    const opened = upgrade(one)
    if (!opened.ok) return opened.problem.message
    postings.push(opened.posting)
  }
  await store.append(postings)
  return postings
}

/** Cursors that also count these postings as held. */
function later(cursors: Cursors, postings: readonly Posting[]): Cursors {
  const heads: Record<string, number> = { ...cursors }
  for (const { device, seq } of postings) heads[device] = Math.max(heads[device] ?? 0, seq)
  return heads
}

/** How many postings here the hub has not taken, as far as the device knows. */
export async function waiting(store: Store, notes: Notes): Promise<number> {
  return (await store.since(JSON.parse(await notes.get('sent') ?? '{}') as Cursors)).length
}
