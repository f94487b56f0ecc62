import type { Entry } from '@lodebook/book'
import { textOf, wordsOf } from '../read.ts'

/** Words that speak of one thing: whatever the crew called it, it is counted under one name. */
const spoken: readonly (readonly [mark: string, says: RegExp])[] = [
  ['iron stain', /\biron|rust|limonit|ochre/i], ['clay', /\bclay|gouge/i], ['crystals', /\bcrystal|vug|drus/i], ['sulphides', /sul(ph|f)ide|pyrite|galena/i], ['manganese', /mangan|black stain/i],
]

/** What is said to be in a bag: its materials, what was ticked, and what its note speaks of. */
export function marksOf(sample: Entry): ReadonlySet<string> {
  const words = [...wordsOf(sample, 'materials'), ...wordsOf(sample, 'seen')].map(word => word.trim().toLowerCase())
  const note = textOf(sample, 'note') ?? ''
  const named = words.map(word => spoken.find(([, says]) => says.test(word))?.[0] ?? word)
  return new Set([...named, ...spoken.filter(([, says]) => says.test(note)).map(([mark]) => mark)])
}
