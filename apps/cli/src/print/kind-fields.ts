import type { Field, Kind } from '@lodebook/book'
import type { Dimension } from '@lodebook/reckon/units'
import { parseQuantity } from '@lodebook/reckon/units'
import { wrap } from './wrap.ts'

/** What can be written in an entry of a kind: for each field the name that is typed, its label, what it takes, and whether it must be there. */
export function kindFields(kind: Kind, width: number): string {
  const names = Math.max(...Object.keys(kind.fields).map(name => name.length))
  const lines = Object.entries(kind.fields).flatMap(([name, field]) => {
    const head = `${name.padEnd(names)}  `
    const says = `${field.label}${field.required === true ? ' (needed)' : ''}: ${takes(field)}${field.hint === undefined ? '' : `; ${field.hint}`}`
    return wrap(says, width - head.length).map((piece, i) => `${i === 0 ? head : ' '.repeat(head.length)}${piece}`)
  })
  return `${kind.label}: write each as field=value\n\n${lines.join('\n')}\n`
}

/** The examples that a reader of quantities itself gives when there is nothing to read. */
function example(dimension: Dimension): string {
  const nothing = parseQuantity('', dimension)
  return nothing.ok ? dimension : nothing.problem.expected
}

/** What a field takes, in a few words. */
function takes({ is }: Field): string {
  switch (is.type) {
    case 'text': return is.unique === true ? 'text, used once' : 'text'
    case 'note': return 'text of any length'
    case 'yes-no': return 'yes or no'
    case 'count': return 'a whole number'
    case 'number': return `a number${is.min === undefined || is.max === undefined ? '' : ` from ${is.min} to ${is.max}`}`
    case 'choice': return `one of ${is.of.join(', ')}`
    case 'choices': return `one or more of ${is.of.join(', ')}`
    case 'words': return 'words, parted by commas'
    case 'date': return 'a date such as 2026-05-03'
    case 'moment': return 'a date and time such as 2026-05-03 07:30'
    case 'year': return 'a year'
    case 'quantity': return example(is.dimension)
    case 'money': return 'an amount such as 12.50 USD'
    case 'station': return 'a station'
    case 'stations': return 'stations in order, parted by commas'
    case 'ref': return 'the id of an entry'
    case 'place': return 'a place such as "A6 + 2.3 m toward A7, left rib, 1.2 m up"'
    case 'places': return 'places, parted by semicolons'
    case 'colours': return 'colours such as "12 fine at 0.05 mg; 2 coarse at 1.5 mg", or none'
    case 'ground-line': return 'points across as distance/height, such as "0/0; 3/1.5; 6/0.2 m"'
    case 'blob': return 'a picture, which cannot be typed'
  }
}
