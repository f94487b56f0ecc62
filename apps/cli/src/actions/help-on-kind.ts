import { kindOf, kinds } from '@lodebook/book'
import { exit } from '../exit.ts'
import type { Io } from '../io/io.ts'
import { kindFields } from '../print/kind-fields.ts'
import { wrap } from '../print/wrap.ts'

/** `lodebook add … --help`: the fields of a kind when one is among what was typed, else which kinds there are. */
export function helpOnKind(words: readonly (string | undefined)[], io: Io, outputHelp: () => void): number {
  const kind = words.map(word => word === undefined ? undefined : kindOf(word)).find(found => found !== undefined)
  if (kind) io.out(kindFields(kind, io.columns))
  else {
    outputHelp()
    io.out(`\nKinds\n${wrap(Object.keys(kinds).join(', '), io.columns - 2).map(line => `  ${line}\n`).join('')}`)
  }
  return exit.ok
}
