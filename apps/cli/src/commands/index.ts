import { addAnswer, addCheck } from './answers.ts'
import type { AddCommand } from './command.ts'
import { addAdd, addRestore, addSet, addShow, addStrike } from './entries.ts'
import { addExport, addImport, addLabels, addNew } from './files.ts'
import { addReckon } from './reckon.ts'
import { addDemo, addServe } from './serve.ts'

/** In the order in which help lists them. */
export const commands: readonly AddCommand[] = [
  addNew, addImport, addExport, addLabels, addAnswer, addCheck, addShow, addAdd, addSet, addStrike, addRestore, addServe, addDemo, addReckon,
]
