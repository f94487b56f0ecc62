import type { ExportOptions } from '../actions/export.ts'
import type { ImportOptions } from '../actions/import-options.ts'
import type { LabelsOptions } from '../actions/labels.ts'
import type { NewOptions } from '../actions/new.ts'
import type { AddCommand } from './command.ts'

const more = (word: string, before: readonly string[] = []): readonly string[] => [...before, word]

export const addNew: AddCommand = (program, io, done) => {
  program.command('new')
    .description('begin a book')
    .argument('<book>', 'the file to make')
    .option('--name <name>', 'of the mine')
    .option('--units <units>', 'how answers are put: "metres and g/t" or "feet and oz/ton"')
    .option('--currency <code>', 'three letters, such as USD')
    .option('--by <name>', 'who writes; your user name unless said')
    .action(async (book: string, options: NewOptions) => { done(await (await import('../actions/new.ts')).newBook(book, options, io)) })
}

export const addImport: AddCommand = (program, io, done) => {
  program.command('import')
    .description('bring in a file of columns (CSV) or a whole book (JSON Lines)')
    .argument('<book>', 'the book')
    .argument('<file>', 'the file to bring in')
    .option('--kind <kind>', 'what one row of a CSV is: shot, sample, assay …; or two kinds as sample+assay')
    .option('--map <heading=field>', 'which column feeds which field; oz+dwt+gr=gold adds up, and a letter such as C names a column', more)
    .option('--unit <column=unit>', 'the unit of a column that does not say', more)
    .option('--fill <field=value>', 'what a field is in rows that do not say', more)
    .option('--read <words=choice>', 'how words of the file are to be read where a field takes a choice', more)
    .option('--blank <word>', 'a word that means that nothing was written, such as n/k', more)
    .option('--rest', 'put columns that feed nothing into the note')
    .option('--dates <order>', 'how 5/3/2026 is meant: day-first or month-first')
    .option('--decimal <mark>', 'what stands before tenths: "." or ","')
    .option('--accept', 'write; without it a CSV is only looked at')
    .option('--good-rows', 'with --accept: leave out the rows that are refused')
    .option('--by <name>', 'who writes; your user name unless said')
    .option('--json', 'the preview as JSON')
    .addHelpText('after', `
Nothing of a CSV is written without --accept; a file that is imported again adds
nothing twice.

Examples:
  lodebook import creek.book shots.csv --kind shot --unit distance=ft
  lodebook import creek.book lab.csv --kind assay --map "Au1=gold" --accept
  lodebook import creek.book from-the-hub.jsonl`)
    .action(async (book: string, file: string, options: ImportOptions) => { done(await (await import('../actions/import.ts')).importFile(book, file, options, io)) })
}

export const addExport: AddCommand = (program, io, done) => {
  program.command('export')
    .description('write out the whole book (JSON Lines), the entries of one kind (CSV), or a sheet of the mine true to scale (SVG)')
    .argument('<book>', 'the book')
    .option('--kind <kind>', 'one kind of entry, as CSV')
    .option('--csv', 'with --kind; a file of columns, which it is anyway')
    .option('--struck', 'with --kind: struck entries too')
    .option('--sheet <view>', 'a drawing true to scale, as SVG: plan, long-section, developed or cross-section')
    .option('--scale <number>', 'with --sheet: one to so many; the largest that fits A4 when left out')
    .option('--along <azimuth>', 'with a long section: the azimuth that runs to the right; along the vein when left out')
    .option('--at <name>', 'with a developed section: the heading; with a cross section: the station')
    .option('--ellipses', 'with a plan: the doubt of each station')
    .option('--no-photos', 'leave photos out of the whole book')
    .option('--out <file>', 'write there instead of to standard output')
    .addHelpText('after', `
Examples:
  lodebook export creek.book --out creek.jsonl
  lodebook export creek.book --kind sample --out samples.csv
  lodebook export creek.book --sheet plan --scale 250 --out plan.svg
  lodebook export creek.book --sheet cross-section --at A6 --out a6.svg`)
    .action(async (book: string, options: ExportOptions) => { done(await (await import('../actions/export.ts')).exportBook(book, options, io)) })
}

export const addLabels: AddCommand = (program, io, done) => {
  program.command('labels')
    .description('print the labels of a roll: sheets with numbers and codes, as PDF')
    .argument('<book>', 'the book')
    .option('--roll <roll>', 'which roll: its entry, its prefix or its first label; the latest unless said')
    .requiredOption('--out <file>', 'the PDF to write')
    .option('--paper <paper>', 'A4 or Letter', 'A4')
    .option('--copies <number>', 'of each label: one goes into the bag, a second onto it', '2')
    .action(async (book: string, options: LabelsOptions) => { done(await (await import('../actions/labels.ts')).printLabels(book, options, io)) })
}
