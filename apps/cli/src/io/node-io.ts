import { randomBytes } from 'node:crypto'
import { userInfo } from 'node:os'
import type { Io } from './io.ts'

/** The real machine. */
export function nodeIo(root: string): Io {
  // A reader that has seen enough, such as `head`, is no fault of ours.
  process.stdout.on('error', (failure: NodeJS.ErrnoException) => { if (failure.code === 'EPIPE') process.exit(0); else throw failure })
  return {
    stdin: async () => {
      if (process.stdin.isTTY) process.stderr.write('Reading from the keyboard; end with Ctrl-D.\n')
      const parts: Buffer[] = []
      for await (const part of process.stdin) parts.push(part as Buffer)
      return Buffer.concat(parts)
    },
    out: (text) => { process.stdout.write(text) },
    err: (text) => { process.stderr.write(text) },
    env: process.env,
    cwd: process.cwd(),
    user: loggedIn(),
    root,
    columns: process.stdout.columns || 80,
    now: () => Date.now(),
    random: bytes => new Uint8Array(randomBytes(bytes)),
    stopped: () => new Promise((resolve) => { for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => { resolve() }) }),
  }
}

function loggedIn(): string {
  try { return userInfo().username } catch { return '' }
}
