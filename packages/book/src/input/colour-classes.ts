import type { Quantity } from '@lodebook/reckon/units'
import type { Book } from '../posting/entry.ts'

/** What one grain of each of the crew's own size classes weighs, milligrams, by the class's name in small letters. */
export function colourClasses(book: Book): Readonly<Record<string, number>> {
  return Object.fromEntries(book.of('colour-class').flatMap(({ fields }) => {
    const name = fields['name'], each = (fields['each'] as Quantity | undefined)?.value
    return typeof name === 'string' && each != null && each > 0 ? [[name.trim().toLowerCase(), each * 1000] as const] : []
  }))
}
