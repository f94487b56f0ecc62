import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

/** A new folder of its own, and a way to clear it away. */
export function temporary(): { readonly folder: string, readonly file: (name: string) => string, readonly drop: () => void } {
  const folder = mkdtempSync(join(tmpdir(), 'lodebook-'))
  return { folder, file: name => join(folder, name), drop: () => { rmSync(folder, { recursive: true, force: true }) } }
}
