import { build } from 'esbuild'
import { spawn } from 'node:child_process'
import { mkdirSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { verifyChain } from '@lodebook/book'
import { SqliteStore } from '../../src/index.ts'
import { temporary } from '../temporary.ts'

const root = fileURLToPath(new URL('../../../..', import.meta.url))
const place = temporary()
// Beside node_modules, so that the bundle finds the SQLite binding.
const folder = join(root, 'node_modules/.cache', `lodebook-kill-${process.pid}`)
const writer = join(folder, 'writer.mjs')

/** Lets the writer write, kills it with signal 9 once it has acknowledged so many calls, and tells the last place acknowledged. */
const writeUntilKilled = (file: string, calls: number) => new Promise<number>((resolve, reject) => {
  const child = spawn(process.execPath, [writer, file], { stdio: ['ignore', 'pipe', 'pipe'] })
  let out = ''
  let err = ''
  child.stdout.setEncoding('utf8').on('data', (text: string) => {
    out += text
    if (out.split('\n').length > calls) child.kill('SIGKILL')
  })
  child.stderr.setEncoding('utf8').on('data', (text: string) => { err += text })
  child.on('close', (_, signal) => {
    if (signal === 'SIGKILL') resolve(Number(out.trimEnd().split('\n').at(-1)))
    else reject(new Error(`the writer ended by itself: ${err}`))
  })
})

/** Kills a writing program again and again, on one book, and looks each time at what is there. */
export function killing(times: number): void {
  beforeAll(async () => {
    mkdirSync(folder, { recursive: true })
    await build({ entryPoints: [fileURLToPath(new URL('./writer.ts', import.meta.url))], outfile: writer, bundle: true, format: 'esm', platform: 'node', target: 'node20',
      external: ['better-sqlite3'], logLevel: 'silent', absWorkingDir: root })
  })
  afterAll(() => { rmSync(folder, { recursive: true, force: true }); place.drop() })

  it(`[S1] [S2] killed in mid-write ${times} times, nothing acknowledged is lost and no call is half there`, async () => {
    const file = place.file('mine.book')
    let before = 0
    for (let kill = 0; kill < times; kill += 1) {
      const acknowledged = await writeUntilKilled(file, 1 + (kill * 7) % 12)
      const store = new SqliteStore(file)
      const postings = await store.since()
      await store.close()
      expect(acknowledged).toBeGreaterThan(before)
      expect(postings.length).toBeGreaterThanOrEqual(acknowledged)
      expect(verifyChain(postings)).toEqual([])
      expect(postings.map(({ seq }) => seq)).toEqual(postings.map((_, i) => i + 1))
      // A run writes 1, 2, 3, 1, 2, 3… postings a call: what is there ends with a call.
      const run = postings.length - before
      expect([0, 1, 3]).toContain(run % 6)
      before = postings.length
    }
  }, 300_000)
}
