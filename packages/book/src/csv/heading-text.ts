import type { Dimension } from '@lodebook/reckon/units'
import { findUnit, unclearUnit } from '@lodebook/reckon/units'

/** Text without case, accents, spaces and punctuation: two headings that a person would call the same are the same here. */
export const loosely = (text: string): string => text.normalize('NFKD').toLowerCase().replace(/[^\p{L}\p{N}]/gu, '')

/** Whether a spelling is a unit of the dimension, or one of those that people read in two ways and that have to be asked about. */
export const isUnit = (spelling: string, dimension: Dimension): boolean =>
  findUnit(spelling, dimension) !== undefined || unclearUnit(spelling, dimension) !== undefined

/** One way of reading a heading: a name, and what is left over, which may be a unit. Both as written, the rest possibly empty. */
export interface HeadingReading { readonly name: string, readonly rest: string }

/**
 * The ways in which a heading can be read as a name followed by a unit, the longest name first:
 * `Width (in)`, `width_in`, `Width, in`, `Au oz/short ton`, `au_oz_per_short_ton`, `Gold [g/t]`, `Width in inches`.
 */
export function headingReadings(heading: string): readonly HeadingReading[] {
  const bracket = /^(.*?)\s*[([{]\s*([^()[\]{}]+?)\s*[)\]}]\s*$/.exec(heading)
  if (bracket?.[1]) return [{ name: heading, rest: '' }, { name: bracket[1], rest: bracket[2]! }]
  const words = heading.split(/[\s_,:]+|(?<=[a-z])(?=[A-Z])/).filter(word => word !== '')
  return Array.from({ length: words.length }, (_, left) => {
    const name = words.slice(0, words.length - left).join(' ')
    return { name, rest: words.slice(words.length - left).join(' ').replace(/^(?:in|as) (?=\S)/i, '') }
  })
}
