import { existsSync, realpathSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { alarmText, HubError, startHub } from '@lodebook/hub'
import { exit } from '../exit.ts'
import type { Io } from '../io/io.ts'
import { Refusal, refuse } from '../refusal.ts'

export interface ServeOptions { readonly port: string, readonly host: string }

/** `lodebook serve`: the crew's hub over a book, until it is told to stop. */
export async function serveBook(path: string, options: ServeOptions, io: Io): Promise<number> {
  const file = resolve(io.cwd, path)
  if (!existsSync(file)) throw refuse('book', path, 'a book that is there; `lodebook new` begins one', exit.unreachable)
  const port = Number(options.port)
  if (!Number.isInteger(port) || port < 0 || port > 65_535) throw refuse('--port', options.port, 'a port from 0 to 65535; 0 takes one that is free')
  const webRoot = join(io.root, 'apps/web/dist')
  try {
    const hub = await startHub({
      bookFile: realpathSync(file), port, host: options.host, ...(existsSync(webRoot) ? { webRoot } : {}),
      onOverdue: (overdue) => { io.err(alarmText(overdue)) },
      report: (error) => { io.err(`${error instanceof Error ? error.stack ?? error.message : String(error)}\n`) },
    })
    io.out(`${path} is at ${hub.url}\n${existsSync(webRoot) ? '' : 'The app is not built; `npm start` builds it. Devices can reach the book all the same.\n'}`)
    await io.stopped()
    await hub.close()
    return exit.ok
  } catch (failure) {
    if (!(failure instanceof HubError)) throw failure
    throw new Refusal({ error: failure.message, field: 'port', value: port, expected: 'an address and a port that are free' }, exit.unreachable)
  }
}
