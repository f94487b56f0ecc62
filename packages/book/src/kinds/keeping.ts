import { choice, count, date, kind, moment, note, text, words, yesNo } from './field.ts'

/** What was done with bags, and in whose hands they were: their way from the wall to the assay. */
export const custody = kind('custody', 'Custody', 'Custody entries', ['act', 'bags'], {
  bags: words('Bags', { required: true, hint: 'numbers, or a run such as B-001 to B-020' }),
  act: choice('What was done', ['taken', 'carried', 'dried', 'crushed', 'split', 'sent', 'received', 'kept'], { required: true }),
  who: text('By whom', { required: true }),
  to: text('To whom or where'),
  when: moment('When', { required: true }),
  seal: text('Seal', { hint: 'number on the seal as it was then' }),
  intact: choice('The seal was', ['whole', 'broken', 'none'], {}),
  counted: yesNo('Bags counted and all there'),
  note: note('Note'),
})

/** A roll of printed labels: the numbers that bags may carry. */
export const labelRoll = kind('label-roll', 'Label roll', 'Label rolls', ['prefix', 'first', 'last'], {
  prefix: text('Prefix', { required: true, hint: 'what stands before the number, such as B-' }),
  first: count('First number', { required: true }),
  last: count('Last number', { required: true }),
  digits: count('Figures', { hint: 'how many figures a number has, 3 for B-001; as many as the last one needs unless said' }),
  printed: date('Printed'),
  by: text('Held by'),
  note: note('Note'),
})
