import type { Quantity } from '@lodebook/reckon/units'
import { coloursText, placeText } from '../input/index.ts'
import type { Field } from '../kinds/index.ts'
import type { Place } from '../place.ts'
import type { Blob, Colour, FieldValue, GroundLine, Money } from '../values.ts'

/** A value as the crew would write it: text that `readField` reads back as the same value. A picture is named by its SHA-256, which nothing reads. */
export function valueText(field: Field, value: FieldValue): string {
  switch (field.is.type) {
    case 'yes-no': return value === true ? 'yes' : 'no'
    case 'choices': case 'words': return (value as readonly string[]).join('; ')
    case 'stations': return stationsText(value as readonly string[])
    case 'quantity': return quantityText(value as Quantity)
    case 'money': return `${(value as Money).amount} ${(value as Money).currency}`
    case 'place': return placeText(value as Place)
    case 'places': return (value as readonly Place[]).map(placeText).join('; ')
    case 'colours': return coloursText(value as readonly Colour[])
    case 'ground-line': return (value as GroundLine).text
    case 'blob': return (value as Blob).sha256
    default: return typeof value === 'object' ? '' : String(value)
  }
}

/** As written, with the unit that was taken for it when it had none. */
export const quantityText = ({ text, from }: Quantity): string => from === undefined ? text : `${text} ${from}`

/** A list of one name with a space in it would read as two names. */
const stationsText = (names: readonly string[]): string => names.length === 1 && /\s/.test(names[0]!) ? `${names[0]!};` : names.join('; ')
