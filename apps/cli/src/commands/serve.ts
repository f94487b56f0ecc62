import type { AddCommand } from './command.ts'

export const addDemo: AddCommand = (program, io, done) => {
  program.command('demo')
    .description('make a book of an invented mine to try things on')
    .argument('<book>', 'the file to make')
    .option('--seed <number>', 'another seed makes another season', '1')
    .action(async (book: string, options: { seed: string }) => { done(await (await import('../actions/demo.ts')).demoBook(book, options, io)) })
}
