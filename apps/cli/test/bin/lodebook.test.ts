import { spawnSync } from 'node:child_process'
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'
import { beforeAll, describe, expect, it } from 'vitest'
import { folder } from '../run.ts'

const root = fileURLToPath(new URL('../../../..', import.meta.url))
const cwd = folder()
const program = join(root, 'bin/lodebook')
/** Starts the bundle that is there, so that nothing is built while files may not grow. */
const bundled = join(cwd, 'bundled.mjs')

/** The real program in a real process, from a folder that is not the checkout. */
function lodebook(words: readonly string[], options: { readonly input?: string, readonly fileBlocks?: number } = {}) {
  const [file, ...args] = options.fileBlocks === undefined ? [process.execPath, program, ...words]
    : ['bash', '-c', `ulimit -f ${options.fileBlocks}; exec "$@"`, 'bash', process.execPath, bundled, ...words]
  const ended = spawnSync(file, args, { cwd, encoding: 'utf8', input: options.input ?? '', env: { ...process.env, XDG_CONFIG_HOME: join(cwd, 'config') } })
  return { code: ended.status, out: ended.stdout, err: ended.stderr }
}

beforeAll(() => {
  lodebook(['--help'])
  const cache = join(root, 'node_modules/.cache/lodebook/cli')
  const main = pathToFileURL(join(cache, readFileSync(join(cache, 'current'), 'utf8'), 'main.mjs')).href
  writeFileSync(bundled, `import { main } from ${JSON.stringify(main)}\nawait main({ root: ${JSON.stringify(root)} })\n`)
}, 120_000)

describe('bin/lodebook', () => {
  it('runs from any folder', () => {
    expect(lodebook(['reckon', 'convert'], { input: '{"value": 3, "from": "ft", "to": "m"}' })).toEqual({ code: 0, out: '{"value":0.9144}\n', err: '' })
    expect(lodebook(['--help']).out).toMatch(/^Usage: lodebook/)
  }, 120_000)

  it('refuses bad input with 2, nothing on standard output, and one JSON object on standard error', () => {
    const { code, out, err } = lodebook(['reckon', 'convert'], { input: '{"value": "three", "from": "ft", "to": "m"}' })
    expect([code, out]).toEqual([2, ''])
    expect(JSON.parse(err)).toEqual({ error: 'value: "three" will not do; expected a number', field: 'value', value: 'three', expected: 'a number' })
  })

  it('leaves the book as it was when the disk takes no more', () => {
    lodebook(['new', 'a.book', '--name', 'A'])
    const before = lodebook(['export', 'a.book']).out
    writeFileSync(join(cwd, 'many.csv'), `Bag,Method,Note\n${Array.from({ length: 500 }, (_, i) => `B-${i},chip,${'x'.repeat(400)}\n`).join('')}`)
    // A limit on the size of files stands for a full disk: the write-ahead log outgrows it in the middle of the import.
    const { code, out, err } = lodebook(['import', 'a.book', 'many.csv', '--kind', 'sample', '--accept'], { fileBlocks: 200 })
    expect([code, out]).toEqual([3, ''])
    expect(err).toMatch(/^\S+a\.book: the disk failed \(SQLITE_\w+\)\. Nothing of this was saved\.\n$/)
    expect(lodebook(['export', 'a.book']).out).toBe(before)
    expect(lodebook(['check', 'a.book']).code).toBe(0)
  }, 60_000)

  it('makes no half of a book or of an export when the disk takes no more', () => {
    expect(lodebook(['demo', 'demo.book'], { fileBlocks: 200 })).toMatchObject({ code: 3, out: '' })
    expect(lodebook(['show', 'demo.book'])).toMatchObject({ code: 3, err: expect.stringContaining('expected a book that is there') as string })
    lodebook(['export', 'a.book', '--out', 'a.jsonl'])
    const before = readFileSync(join(cwd, 'a.jsonl'), 'utf8')
    lodebook(['import', 'a.book', 'many.csv', '--kind', 'sample', '--accept'])
    const { code, err } = lodebook(['export', 'a.book', '--out', 'a.jsonl'], { fileBlocks: 100 })
    expect([code, err]).toEqual([3, `${join(cwd, 'a.jsonl')}: the file may not grow so large; nothing was written.\n`])
    expect(readFileSync(join(cwd, 'a.jsonl'), 'utf8')).toBe(before)
  }, 60_000)
})
