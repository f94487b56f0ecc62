// `npm start`: from a fresh clone to the app in a browser. Options: --book FILE, --port N, --host ADDRESS.
import { spawn } from 'node:child_process'
import { existsSync, mkdirSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import { parseArgs } from 'node:util'
import { buildWeb, checkNode, install, root, run } from './prepare.mjs'

checkNode()
const { values } = parseArgs({ options: { book: { type: 'string' }, port: { type: 'string', default: '4870' }, host: { type: 'string', default: '127.0.0.1' } } })
install()
if (buildWeb() !== 0) process.exit(1)

const lodebook = join(root, 'bin/lodebook')
const book = resolve(values.book ?? join(root, '.lodebook/demo.book'))
if (!existsSync(book)) {
  if (values.book) {
    console.error(`There is no book at ${book}. Begin one with: bin/lodebook new ${values.book}`)
    process.exit(2)
  }
  mkdirSync(dirname(book), { recursive: true })
  if (run(process.execPath, [lodebook, 'demo', book]) !== 0) process.exit(1)
}
const hub = spawn(process.execPath, [lodebook, 'serve', book, '--port', values.port, '--host', values.host], { stdio: 'inherit' })
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => hub.kill(signal))
hub.on('exit', code => process.exit(code ?? 0))
