// `npm test`: every suite. On Debian as root it installs what the suites need; elsewhere it runs what it can and names what it could not
// run and why. With CI=true a part that is missing is a failure.
import { spawnSync } from 'node:child_process'
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { buildWeb, checkNode, install, root, run } from './prepare.mjs'

checkNode()
const strict = process.env.CI === 'true'
const has = program => spawnSync('sh', ['-c', `command -v ${program}`]).status === 0
const chromium = () => [process.env.CHROMIUM, '/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'].find(path => path && existsSync(path))

if (existsSync('/etc/debian_version') && process.getuid?.() === 0) {
  const packages = [!chromium() && 'chromium', !(has('g++') && has('make')) && 'build-essential', !has('python3') && 'python3'].filter(Boolean)
  if (packages.length > 0 && (run('apt-get', ['update', '-qq']) !== 0 || run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...packages], { DEBIAN_FRONTEND: 'noninteractive' }) !== 0)) {
    console.error(`Could not install ${packages.join(', ')}.`)
  }
}
install()

const results = join(root, 'node_modules/.cache/lodebook/results')
rmSync(results, { recursive: true, force: true })
mkdirSync(results, { recursive: true })
const count = { passed: 0, failed: 0 }
const notRun = []
const npx = (...args) => run(process.execPath, [join(root, 'node_modules', args[0]), ...args.slice(1)])

/** A step that either holds or does not. */
function step(name, works) {
  console.log(`\n== ${name}`)
  if (works()) count.passed++
  else { count.failed++; console.error(`${name} failed`) }
}

/** A vitest project; its tests are counted one by one. */
function suite(name, ...options) {
  console.log(`\n== ${name}`)
  const file = join(results, `${name}.json`)
  const code = npx('vitest/vitest.mjs', 'run', '--project', name, '--reporter=default', '--reporter=json', `--outputFile.json=${file}`, ...options)
  const report = existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : { numPassedTests: 0, numFailedTests: 1, numPendingTests: 0 }
  count.passed += report.numPassedTests
  count.failed += Math.max(report.numFailedTests, code === 0 ? 0 : 1)
  if (report.numPendingTests > 0) notRun.push(`${report.numPendingTests} tests in ${name} (each says why)`)
}

step('types', () => ['core', 'node', 'web'].every(program => npx('typescript/bin/tsc', '-p', `tsconfig.${program}.json`) === 0))
step('lint', () => npx('eslint/bin/eslint.js', '--cache', '--cache-location', 'node_modules/.cache/eslint/', '.') === 0)
step('arrows', () => run(process.execPath, ['scripts/check-arrows.mjs']) === 0)
step('build', () => buildWeb() === 0)
suite('unit', '--coverage')
suite('evidence')
if (chromium()) {
  process.env.CHROMIUM = chromium()
  suite('browser')
} else notRun.push('browser: no Chromium was found (set CHROMIUM to its path)')

for (const name of notRun) console.error(`not run: ${name}`)
if (strict) count.failed += notRun.length
console.log(`\n${count.passed} passed, ${count.failed} failed`)
process.exit(count.failed === 0 ? 0 : 1)
