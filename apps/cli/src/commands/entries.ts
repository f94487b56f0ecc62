import type { Command } from 'commander'
import type { WriteOptions } from '../actions/write.ts'
import type { AddCommand } from './command.ts'

const writing = (command: Command): Command => command
  .option('--why <reason>', 'kept beside the writing')
  .option('--by <name>', 'who writes; your user name unless said')
  .option('--json', 'what was written as JSON')

const entryWords = 'its id or the beginning of it, its name such as B-017 or "A6 to A7", or assay:B-017'

export const addShow: AddCommand = (program, io, done) => {
  program.command('show')
    .description('what the book holds, the entries of a kind, or one entry with all that was ever written in it')
    .argument('<book>', 'the book')
    .argument('[what]', `a kind such as sample, or an entry: ${entryWords}`)
    .option('--struck', 'with a kind: struck entries too')
    .option('--json', 'as JSON')
    .action(async (book: string, what: string | undefined, options: { json?: true, struck?: true }) => {
      done(await (await import('../actions/show.ts')).showBook(book, what, options, io))
    })
}

export const addAdd: AddCommand = (program, io, done) => {
  const command = writing(program.command('add').description('write an entry').helpOption(false).usage('[options] <book> <kind> [field=value...]')
    .argument('[book]', 'the book').argument('[kind]', 'shot, sample, assay …').argument('[field=value...]', 'as a crew writes it: width="1 ft 8 in"')
    .option('-h, --help', 'this page; with a kind, the fields it has'))
    .addHelpText('after', `
Examples:
  lodebook add shot --help
  lodebook add creek.book shot from=A6 to=A7 distance="14 ft" azimuth="N 23 E"`)
  command.action(async (book: string | undefined, kind: string | undefined, words: string[], options: WriteOptions & { help?: true }) => {
    if (options.help) {
      const { helpOnKind } = await import('../actions/help-on-kind.ts')
      done(helpOnKind([kind, book], io, () => { command.outputHelp() }))
      return
    }
    if (book === undefined) return command.error('error: missing required argument \'book\'')
    if (kind === undefined) return command.error('error: missing required argument \'kind\'')
    done(await (await import('../actions/write.ts')).addEntry(book, kind, words, options, io))
  })
}

export const addSet: AddCommand = (program, io, done) => {
  writing(program.command('set').description('mend an entry; what it said before is kept').argument('<book>', 'the book').argument('<entry>', entryWords)
    .argument('<field=value...>', 'new values; field= takes a value away'))
    .action(async (book: string, entry: string, words: string[], options: WriteOptions) => {
      done(await (await import('../actions/write.ts')).setFields(book, entry, words, options, io))
    })
}

export const addStrike: AddCommand = (program, io, done) => {
  writing(program.command('strike').description('strike an entry through; it stays in the book').argument('<book>', 'the book').argument('<entry>', entryWords))
    .action(async (book: string, entry: string, options: WriteOptions) => {
      done(await (await import('../actions/write.ts')).strikeEntry(book, entry, true, options, io))
    })
}

export const addRestore: AddCommand = (program, io, done) => {
  writing(program.command('restore').description('bring a struck entry back').argument('<book>', 'the book').argument('<entry>', entryWords))
    .action(async (book: string, entry: string, options: WriteOptions) => {
      done(await (await import('../actions/write.ts')).strikeEntry(book, entry, false, options, io))
    })
}
