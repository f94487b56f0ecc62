import { Command } from 'commander'
import { commands } from './commands/index.ts'
import { exit, exitWords } from './exit.ts'
import { sayFailure } from './failure.ts'
import type { Io } from './io/io.ts'

/**
 * Runs one command line.
 * @param words  what was typed after `lodebook`
 * @returns the exit code
 */
export async function lodebook(words: readonly string[], io: Io): Promise<number> {
  let code: number = exit.ok
  const program = new Command('lodebook')
    .description('A mine crew\'s field book that does the reckoning.')
    .configureOutput({ writeOut: text => io.out(text), writeErr: text => io.err(text), getOutHelpWidth: () => io.columns, getErrHelpWidth: () => io.columns })
    .exitOverride()
    .helpCommand(false)
    .configureHelp({ subcommandTerm: command => command.name() })
    .addHelpText('afterAll', `\n${exitWords}`)
  for (const add of commands) add(program, io, (ended) => { code = ended })
  try {
    await program.parseAsync(words, { from: 'user' })
    return code
  } catch (failure) {
    return sayFailure(failure, io, { json: words[0] === 'reckon' || words.includes('--json') })
  }
}
