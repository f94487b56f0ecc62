// Fails when an import points the wrong way. A second pass proves that the check itself still bites.
import { spawnSync } from 'node:child_process'
import { mkdirSync, rmSync, writeFileSync } from 'node:fs'

const cruise = (...paths) => spawnSync(process.execPath, ['node_modules/dependency-cruiser/bin/dependency-cruise.mjs', '--config', '.dependency-cruiser.cjs', '--output-type', 'err', ...paths], { encoding: 'utf8' })

const real = cruise('packages', 'apps', 'demo', 'bench')
process.stdout.write(real.stdout)
process.stderr.write(real.stderr)
if (real.status !== 0) process.exit(1)

const probe = 'packages/reckon/src/arrow-probe'
mkdirSync(probe, { recursive: true })
try {
  writeFileSync(`${probe}/up.ts`, 'import type { Book } from \'@lodebook/book\'\nexport type Up = Book\n')
  if (cruise(probe).status === 0) {
    console.error('arrows: a type import from the core up to the book was not noticed')
    process.exit(1)
  }
} finally { rmSync(probe, { recursive: true }) }
