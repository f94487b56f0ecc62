// `npm run bench` runs every benchmark in bench/src; `node bench/run.mjs NAME...` those named. A benchmark is a file bench/src/NAME.ts
// that exports `run()`. It is bundled as the app is, so that what is measured is what ships.
import { mkdirSync, readdirSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'
import { build } from 'esbuild'

const here = dirname(fileURLToPath(import.meta.url))
const source = join(here, 'src')
const out = join(here, '../node_modules/.cache/lodebook/bench')
const all = readdirSync(source).filter(file => file.endsWith('.ts')).map(file => basename(file, '.ts')).sort()
const [, , ...asked] = process.argv
const unknown = asked.filter(name => !all.includes(name))
if (unknown.length > 0) {
  console.error(`No benchmark ${unknown.join(', ')}; there are: ${all.join(', ')}`)
  process.exit(2)
}

mkdirSync(out, { recursive: true })
for (const name of asked.length > 0 ? asked : all) {
  const outfile = join(out, `${name}.mjs`)
  await build({
    entryPoints: [join(source, `${name}.ts`)], outfile, bundle: true, platform: 'node', format: 'esm', target: 'node20', logLevel: 'error',
    banner: { js: 'import { createRequire as makeRequire } from "node:module"; const require = makeRequire(import.meta.url);' },
  })
  const { run } = await import(pathToFileURL(outfile).href)
  console.log(`\n== ${name}`)
  await run()
}
