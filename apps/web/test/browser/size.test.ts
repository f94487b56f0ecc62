import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { expect, it } from 'vitest'

const assets = join(import.meta.dirname, '../../dist/assets')
const kib = (match: RegExp): number =>
  readdirSync(assets).filter(name => match.test(name)).reduce((sum, name) => sum + gzipSync(readFileSync(join(assets, name))).length / 1024, 0)

// Budgets, gzip: what a phone must read before the first screen, and the whole of what is kept on it. A rise is a decision, made here.
it('the page itself stays within 90 KiB', () => { expect(kib(/^index-.*\.js$/)).toBeLessThan(90) })
it('both workers stay within 370 KiB', () => { expect(kib(/^worker-.*\.js$/)).toBeLessThan(370) })
it('styles stay within 13 KiB', () => { expect(kib(/\.css$/)).toBeLessThan(13) })
it('nothing is fetched from anywhere else', () => {
  const names = readdirSync(assets).filter(name => /\.(js|css)$/.test(name))
  for (const name of names) expect(readFileSync(join(assets, name), 'utf8')).not.toMatch(/(?:url\(|import\(|fetch\(|src=)["'`]?https?:/)
})
