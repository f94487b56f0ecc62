import type { Kind } from '@lodebook/book'
import type { InputOptions } from '@lodebook/book/input'
import type { BookState, FormHelp } from '../bookkeeper/desk.ts'
import { localMoment } from '../words/moment.ts'
import { measuredIn, unitTaken } from './crew-units.ts'

/** What is taken for granted when this crew types into a form of that kind on this device. */
export function optionsFor(kind: Kind, book: BookState, help: FormHelp, chosen: Readonly<Record<string, string>>): InputOptions {
  const fieldUnits = Object.fromEntries(Object.entries(kind.fields).flatMap(([name, { is }]) => {
    const dimension = measuredIn(is)
    const unit = dimension === undefined ? '' : chosen[name] ?? unitTaken(kind.id, name, dimension, book.units)
    return unit === '' ? [] : [[name, unit]]
  }))
  return {
    fieldUnits,
    units: { length: book.units === 'feet and oz/ton' ? 'ft' : 'm' },
    ...(book.currency === '' ? {} : { currency: book.currency }),
    colourMg: book.colourMg,
    offset: localMoment(new Date()).slice(16),
    stations: new Set(help.stations),
  }
}
