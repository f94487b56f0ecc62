import { MemoryStore, upgrade } from '@lodebook/book'
import type { Cursors, Posting } from '@lodebook/book'
import { createServer } from 'node:http'
import type { IncomingMessage, Server } from 'node:http'
import { readFile } from 'node:fs/promises'
import { extname, join, normalize } from 'node:path'
import type { AddressInfo } from 'node:net'

const dist = join(import.meta.dirname, '../../dist')
const types: Readonly<Record<string, string>> = {
  '.html': 'text/html', '.js': 'text/javascript', '.css': 'text/css', '.svg': 'image/svg+xml', '.png': 'image/png', '.woff2': 'font/woff2', '.webmanifest': 'application/manifest+json',
}

/** A hub as the app sees one: the built app and the few calls it makes, over a store in memory. It can be switched off and on at the same address. */
export class Camp {
  readonly store = new MemoryStore()
  readonly id: string
  #server: Server | undefined
  #port = 0
  constructor(id = 'camp') { this.id = id }

  get address(): string { return `http://localhost:${this.#port}/` }

  async on(): Promise<void> {
    this.#server = createServer((request, response) => {
      void this.#answer(request).then(({ status, type, body }) => { response.writeHead(status, { 'content-type': type, connection: 'close' }).end(body) })
    })
    await new Promise<void>(resolve => this.#server!.listen(this.#port, '127.0.0.1', resolve))
    this.#port = (this.#server.address() as AddressInfo).port
  }

  async off(): Promise<void> {
    this.#server?.closeAllConnections()
    await new Promise(resolve => this.#server?.close(resolve))
  }

  async #answer(request: IncomingMessage): Promise<{ status: number, type: string, body: string | Buffer }> {
    const { pathname, searchParams } = new URL(request.url!, this.address), json = (body: unknown) => ({ status: 200, type: 'application/json', body: JSON.stringify(body) })
    if (pathname === '/api/book') return json({ id: this.id, name: 'Camp', postings: (await this.store.since()).length })
    if (pathname === '/api/postings' && request.method === 'GET') {
      const fresh = await this.store.since(JSON.parse(searchParams.get('after') ?? '{}') as Cursors)
      return { status: 200, type: 'application/jsonl', body: fresh.map(p => `${JSON.stringify(p)}\n`).join('') }
    }
    if (pathname === '/api/postings') {
      const opened = (await textOf(request)).split('\n').filter(Boolean).map(line => upgrade(JSON.parse(line)))
      const good = opened.flatMap(o => o.ok ? [o.posting] : [])
      return json({ ...await this.store.append(good), refused: opened.flatMap(o => o.ok ? [] : [o.problem]) })
    }
    if (pathname.startsWith('/api/')) return { status: 404, type: 'text/plain', body: '' }
    const path = normalize(pathname === '/' ? '/index.html' : pathname)
    try { return { status: 200, type: types[extname(path)] ?? 'application/octet-stream', body: await readFile(join(dist, path)) } } catch { return { status: 404, type: 'text/plain', body: 'not here' } }
  }
}

async function textOf(request: IncomingMessage): Promise<string> {
  const parts: Buffer[] = []
  for await (const part of request) parts.push(part as Buffer)
  return Buffer.concat(parts).toString()
}

export type { Posting }
