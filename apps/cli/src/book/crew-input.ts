import { colourClasses } from '@lodebook/book/input'
import type { CrewUnits } from '@lodebook/answers'
import type { Book, InputOptions } from '@lodebook/book'

/** What is taken for granted in what is typed: the crew's usual units and money, the book's stations, and the time zone of this machine. */
export function crewInput(book: Book, now: number): InputOptions {
  const mine = book.of('mine').at(-1)?.fields ?? {}
  const stations = new Set(book.of('shot').flatMap(({ fields }) => [fields['from'], fields['to']]).filter(name => typeof name === 'string'))
  return {
    stations, colourMg: colourClasses(book), offset: offsetOf(-new Date(now).getTimezoneOffset()),
    ...(mine['units'] === 'metres and g/t' ? { units: { length: 'm', grade: 'g/t' } } : {}),
    ...(mine['units'] === 'feet and oz/ton' ? { units: { length: 'ft', grade: 'oz/ton' } } : {}),
    ...(typeof mine['currency'] === 'string' ? { currency: mine['currency'] } : {}),
  }
}

/** How the crew wants answers put; metres and g/t unless the mine says otherwise. */
export const crewUnits = (book: Book): CrewUnits => book.of('mine').at(-1)?.fields['units'] === 'feet and oz/ton'
  ? { length: 'ft', grade: 'ozt/short ton', rock: 'short ton' }
  : { length: 'm', grade: 'g/t', rock: 't' }

function offsetOf(minutes: number): string {
  const size = Math.abs(minutes)
  const two = (number: number) => String(number).padStart(2, '0')
  return `${minutes < 0 ? '-' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`
}
