import type { AddCommand } from './command.ts'

interface Options { readonly list?: true, readonly example?: true, readonly fields?: true, readonly json?: true }

export const addReckon: AddCommand = (program, io, done) => {
  program.command('reckon')
    .description('one calculation by itself: JSON in on standard input, JSON out')
    .argument('[name]', 'which calculation; --list names them')
    .option('--list', 'the names, one a line; with --json what each does too')
    .option('--example', 'an input that runs, and its output')
    .option('--fields', 'what the input holds, one field a line')
    .option('--json', 'with --list: names and what each does, as JSON')
    .addHelpText('after', `
Bad input ends with code 2, nothing on standard output, and one JSON object on
standard error: {"error", "field", "value", "expected"}.

Example:
  lodebook reckon convert --example
  echo '{"value": 3, "from": "ft", "to": "m"}' | lodebook reckon convert`)
    .action(async (name: string | undefined, options: Options) => {
      const { reckonCommand } = await import('../reckon/reckon-command.ts')
      done(await reckonCommand(name, options, io))
    })
}
