import type { ServeOptions } from '../actions/serve.ts'
import type { AddCommand } from './command.ts'

export const addDemo: AddCommand = (program, io, done) => {
  program.command('demo')
    .description('make a book of an invented mine to try things on')
    .argument('<book>', 'the file to make')
    .option('--seed <number>', 'another seed makes another season', '1')
    .action(async (book: string, options: { seed: string }) => { done(await (await import('../actions/demo.ts')).demoBook(book, options, io)) })
}

export const addServe: AddCommand = (program, io, done) => {
  program.command('serve')
    .description('serve a book to the crew\'s phones and laptops, until told to stop')
    .argument('<book>', 'the book')
    .option('--port <number>', 'where to listen; 0 takes one that is free', '4870')
    .option('--host <address>', 'an address of this machine; others can reach only that', '127.0.0.1')
    .action(async (book: string, options: ServeOptions) => { done(await (await import('../actions/serve.ts')).serveBook(book, options, io)) })
}
