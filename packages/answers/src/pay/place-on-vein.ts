import type { Entry } from '@lodebook/book'
import type { VeinPoint } from '@lodebook/reckon'
import type { VeinFrame } from '@lodebook/reckon/structure'
import { isLocated, locate } from '../places/place-in-space.ts'
import type { PlaceContext } from '../places/place-in-space.ts'
import { placeOf } from '../read.ts'

/** Where a place written in an entry lies on the vein, square to its plane; or why that can't be said, in words that follow 'since'. */
export const placeOnVein = (context: PlaceContext, frame: VeinFrame) => (entry: Entry, field: string): VeinPoint | string => {
  const found = locate(placeOf(entry, field), context)
  if (!isLocated(found)) return `its place is not known: ${found.why}`
  const { along, down } = frame.toVein(found.point)
  return { along, down }
}
