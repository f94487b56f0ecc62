import type { AddCommand } from './command.ts'

export const addCheck: AddCommand = (program, io, done) => {
  program.command('check')
    .description('whether the record is whole, and what in it will not do or is doubtful')
    .argument('<book>', 'the book')
    .option('--json', 'as JSON')
    .action(async (book: string, options: { json?: true }) => { done(await (await import('../actions/check.ts')).checkBook(book, options, io)) })
}

export const addAnswer: AddCommand = (program, io, done) => {
  program.command('answer')
    .description('what the book comes to, and what stands behind each figure')
    .argument('<book>', 'the book')
    .argument('[part]', 'today, breathing, ground, access, workings, readings, openings, vein, vein-sheet, lost-part, finds, bags, sample-plan, associations, lab, grade, '
      + 'grade-study, heaps, pay, next or second-looks; all of them in short when left out')
    .option('--open <name>', 'open one figure: its method, sources, assumptions and entries')
    .option('--json', 'as JSON, with everything that stands behind it')
    .action(async (book: string, part: string | undefined, options: { json?: true, open?: string }) => {
      done(await (await import('../actions/answer.ts')).answerBook(book, part, options, io))
    })
}
