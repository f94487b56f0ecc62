import type { Kind } from '../kinds/index.ts'
import type { Place } from '../place.ts'
import type { Fields } from '../values.ts'
import type { Finding } from './rule.ts'

/** Whether a place is the 0, 0 that a receiver without a fix shows, rather than anywhere. */
export const isAtNought = (place: Place): boolean => place.by === 'gps' && place.latitude === 0 && place.longitude === 0

/** GPS places at 0, 0: they are refused before writing, whichever field they stand in. */
export function placesAtNought(kind: Kind, fields: Fields): readonly Finding[] {
  return Object.entries(kind.fields).flatMap(([name, { is }]) => {
    const value = fields[name]
    const places = is.type === 'place' ? [[name, value]] as const : is.type === 'places' && Array.isArray(value) ? value.map((one, i) => [`${name}[${i}]`, one] as const) : []
    return places.flatMap(([field, place]) => place !== undefined && isAtNought(place as Place)
      ? [{ field, expected: 'the fix itself', sentence: '0, 0 is what a receiver without a fix shows; wait for the fix, or leave the place in words' }] : [])
  })
}
