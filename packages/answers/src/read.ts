import type { Colour, Entry, Money, Place } from '@lodebook/book'
import type { Quantity } from '@lodebook/reckon/units'

/** Reading an entry's fields. The door has checked them; a field that is not there is undefined. */
export const quantityOf = (entry: Entry, field: string): Quantity | undefined => entry.fields[field] as Quantity | undefined
/** The exact value in its base unit; undefined when absent or seen but not measured. */
export const valueOf = (entry: Entry, field: string): number | undefined => quantityOf(entry, field)?.value ?? undefined
export const textOf = (entry: Entry, field: string): string | undefined => entry.fields[field] as string | undefined
export const numberOf = (entry: Entry, field: string): number | undefined => entry.fields[field] as number | undefined
export const placeOf = (entry: Entry, field = 'place'): Place | undefined => entry.fields[field] as Place | undefined
export const placesOf = (entry: Entry, field: string): readonly Place[] => (entry.fields[field] as readonly Place[] | undefined) ?? []
export const wordsOf = (entry: Entry, field: string): readonly string[] => (entry.fields[field] as readonly string[] | undefined) ?? []
export const coloursOf = (entry: Entry): readonly Colour[] => (entry.fields.colours as readonly Colour[] | undefined) ?? []
export const moneyOf = (entry: Entry, field: string): Money | undefined => entry.fields[field] as Money | undefined
