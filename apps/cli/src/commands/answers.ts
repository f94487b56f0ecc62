import type { AddCommand } from './command.ts'

export const addCheck: AddCommand = (program, io, done) => {
  program.command('check')
    .description('whether the record is whole, and what in it will not do or is doubtful')
    .argument('<book>', 'the book')
    .option('--json', 'as JSON')
    .action(async (book: string, options: { json?: true }) => { done(await (await import('../actions/check.ts')).checkBook(book, options, io)) })
}
