import type { Cursors, Posting } from '@lodebook/book'

/** What a hub says of itself. */
export interface HubBook { readonly id: string, readonly name: string, readonly postings: number, readonly cursors: Cursors }
export interface Taken { readonly added: number, readonly refused: readonly { readonly seq?: number, readonly message?: string }[] }

/** The crew's hub, as the device speaks to it. Every call throws when the hub can't be reached, and NoHub when nothing there is a hub. */
export interface Hub {
  readonly book: () => Promise<HubBook>
  /** Postings after the cursors, page by page. */
  readonly since: (cursors: Cursors) => AsyncIterable<readonly unknown[]>
  readonly send: (postings: readonly Posting[]) => Promise<Taken>
  readonly putBlob: (sha256: string, bytes: Uint8Array) => Promise<void>
  readonly getBlob: (sha256: string) => Promise<Uint8Array | undefined>
}

/** Something answers at the address, but it is no hub: the app was put on a plain server. */
export class NoHub extends Error { override readonly name = 'NoHub' }

/** A hub reached over HTTP at the address the app came from. */
export function httpHub(base: string, ask: typeof fetch = fetch): Hub {
  const call = async (path: string, init?: RequestInit): Promise<Response> => {
    const answer = await ask(new URL(path, base), { cache: 'no-store', ...init })
    if (!answer.ok && answer.status !== 404 && answer.status !== 405) throw new Error(`the hub answered ${answer.status}`)
    return answer
  }
  return {
    async book() {
      const answer = await call('api/book')
      if (!answer.ok || !answer.headers.get('content-type')?.includes('json')) throw new NoHub('there is no hub at this address')
      return await answer.json() as HubBook
    },
    async* since(cursors) {
      const after = `api/postings?after=${encodeURIComponent(JSON.stringify(cursors))}`
      for (let from: string | null = ''; from !== null;) {
        const answer: Response = await call(from === '' ? after : `${after}&from=${encodeURIComponent(from)}`)
        yield (await answer.text()).split('\n').filter(line => line !== '').map(line => JSON.parse(line) as unknown)
        from = answer.headers.get('lodebook-next')
      }
    },
    async send(postings) {
      const answer = await call('api/postings', { method: 'POST', body: postings.map(p => `${JSON.stringify(p)}\n`).join(''), headers: { 'content-type': 'application/jsonl' } })
      return await answer.json() as Taken
    },
    async putBlob(sha256, bytes) { await call(`api/blobs/${sha256}`, { method: 'PUT', body: bytes as BodyInit, headers: { 'content-type': 'application/octet-stream' } }) },
    async getBlob(sha256) {
      const answer = await call(`api/blobs/${sha256}`)
      return answer.ok ? new Uint8Array(await answer.arrayBuffer()) : undefined
    },
  }
}
