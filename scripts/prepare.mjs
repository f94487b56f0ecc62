// Brings a checkout to where its parts can run: dependencies as the lock file says, the app built from the sources that are there.
import { spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

export const root = fileURLToPath(new URL('..', import.meta.url)).replace(/[\\/]$/, '')

const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm'

/** Runs a program with our output, or with the given streams, in the checkout; returns its exit code. */
export function run(program, args, env = {}, stdio = 'inherit') {
  const ended = spawnSync(program, args, { cwd: root, stdio, env: { ...process.env, ...env } })
  if (ended.error) throw ended.error
  return ended.status ?? 1
}

export function checkNode() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number)
  if (major > 20 || (major === 20 && minor >= 19)) return
  console.error(`Lodebook needs Node 20.19 or newer; this is ${process.versions.node}.`)
  process.exit(2)
}

const time = path => existsSync(path) ? statSync(path).mtimeMs : 0

/** The latest change under a folder or of a file. */
export function newest(path) {
  if (!existsSync(path)) return 0
  const stat = statSync(path)
  if (!stat.isDirectory()) return stat.mtimeMs
  return readdirSync(path).filter(name => name !== 'node_modules' && name !== 'dist')
    .reduce((latest, name) => Math.max(latest, newest(join(path, name))), stat.mtimeMs)
}

const lockFile = join(root, 'package-lock.json')
const stamp = join(root, 'node_modules/.cache/lodebook/installed')
const lockHash = () => createHash('sha256').update(readFileSync(lockFile)).digest('hex')

/** Whether what is installed is what the lock file says: by our stamp, or, where npm was run by hand, by npm's own record being the later. */
function installed() {
  if (!existsSync(join(root, 'node_modules/.package-lock.json'))) return false
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === lockHash()) return true
  if (time(join(root, 'node_modules/.package-lock.json')) < time(lockFile)) return false
  writeStamp()
  return true
}

function writeStamp() {
  mkdirSync(dirname(stamp), { recursive: true })
  writeFileSync(stamp, lockHash())
}

/** Runs `work` while no other process of this checkout does; one that comes meanwhile waits for it. A lock left by a killed process lapses. */
function alone(work) {
  const lock = join(root, '.lodebook/installing')
  mkdirSync(dirname(lock), { recursive: true })
  for (;;) {
    try { mkdirSync(lock); break } catch (error) {
      if (error.code !== 'EEXIST') throw error
      if (Date.now() - time(lock) > 15 * 60_000) rmSync(lock, { recursive: true, force: true })
      else Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 500)
    }
  }
  try { return work() } finally { rmSync(lock, { recursive: true, force: true }) }
}

/** Installs when what is there is not what the lock file says. `quiet` keeps standard output free for results. */
export function install({ quiet = false } = {}) {
  if (installed()) return
  const code = alone(() => {
    if (installed()) return 0
    if (!quiet) console.log('Installing what Lodebook is built from (once; a few minutes where SQLite has to be compiled)…')
    const code = run(npm, ['ci', '--include=dev', '--no-audit', '--no-fund', '--loglevel=error'], {}, quiet ? ['ignore', 'ignore', 2] : 'inherit')
    if (code === 0) writeStamp()
    return code
  })
  if (code === 0) return
  console.error('Installing failed. With a network and, where SQLite has no ready-made file, a C++ compiler and Python, `npm ci` should succeed.')
  process.exit(code)
}

/** Builds the web app when any of its sources is newer than the build. */
export function buildWeb() {
  const built = time(join(root, 'apps/web/dist/index.html'))
  const sources = ['packages/reckon/src', 'packages/book/src', 'packages/answers/src', 'apps/web', 'package-lock.json']
  if (built >= Math.max(...sources.map(path => newest(join(root, path))))) return 0
  console.log('Building the app…')
  return run(npm, ['run', '--silent', 'build', '-w', '@lodebook/web'])
}
