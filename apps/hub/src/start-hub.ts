import { serve } from '@hono/node-server'
import type { ServerType } from '@hono/node-server'
import { hostname } from 'node:os'
import type { CallOut } from '@lodebook/answers'
import { watchCallOuts } from './call-out-watch.ts'
import { HubError } from './hub-error.ts'
import { hubApp } from './hub-app.ts'
import type { HubOptions } from './hub-app.ts'
import { SqliteStore } from './sqlite-store.ts'

export interface HubStart extends HubOptions {
  readonly bookFile: string
  /** 0 for one that is free. */
  readonly port: number
  /** The address to listen at; only this machine can reach the hub unless another is given. */
  readonly host?: string
  /** Told of people who are overdue, again and again until they are written as out. */
  readonly onOverdue?: (overdue: readonly CallOut[]) => void
}

export interface Hub {
  /** Where to reach it, with a slash at its end. */
  readonly url: string
  readonly port: number
  /** Lets what is under way end, and closes the book. */
  close(): Promise<void>
}

/**
 * Begins serving a book; the file is begun where there is none.
 * @throws StoreError when the book cannot be opened, HubError when the address cannot be had
 */
export async function startHub({ bookFile, port, host = '127.0.0.1', onOverdue, ...options }: HubStart): Promise<Hub> {
  const store = new SqliteStore(bookFile)
  const names = [...options.names ?? [], host, ...(isLocal(host) ? [] : [hostname()])]
  try {
    const { server, at } = await listen(hubApp(store, { ...options, names }).fetch, host, port)
    const shown = host === '0.0.0.0' || host === '::' ? 'localhost' : host.includes(':') ? `[${host}]` : host
    const watch = onOverdue && watchCallOuts(store, { now: options.now ?? Date.now, tell: onOverdue, ...options.report ? { report: options.report } : {} })
    void watch?.look()
    return { url: `http://${shown}:${at}/`, port: at, close: () => { watch?.stop(); return end(server, store) } }
  } catch (error) {
    await store.close()
    throw error
  }
}

const isLocal = (host: string): boolean => host === 'localhost' || host === '::1' || host.startsWith('127.')

const listen = (fetch: (request: Request) => Response | Promise<Response>, hostname: string, port: number) =>
  new Promise<{ server: ServerType, at: number }>((resolve, reject) => {
    const server = serve({ fetch, hostname, port }, (info) => { resolve({ server, at: info.port }) })
    server.once('error', (error: NodeJS.ErrnoException) => { reject(refused(error, hostname, port)) })
  })

function refused(error: NodeJS.ErrnoException, host: string, port: number): Error {
  switch (error.code) {
    case 'EADDRINUSE': return new HubError(`Port ${port} is in use already; choose another.`, { cause: error })
    case 'EACCES': return new HubError(`Port ${port} may not be used by you; choose one above 1023.`, { cause: error })
    case 'EADDRNOTAVAIL': case 'ENOTFOUND': return new HubError(`${host} is not an address of this machine.`, { cause: error })
    default: return error
  }
}

/** How long requests that are under way may take to end, milliseconds. */
const grace = 1000

async function end(server: ServerType, store: SqliteStore): Promise<void> {
  await new Promise<void>((resolve) => {
    server.close(() => { resolve() })
    // A browser keeps its connection open for the next request, which is not coming.
    if ('closeAllConnections' in server) setTimeout(() => { server.closeAllConnections() }, grace).unref()
  })
  await store.close()
}
