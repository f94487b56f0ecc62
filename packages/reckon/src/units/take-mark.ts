import type { Dimension, Mark } from './dimension.ts'
import { refuse, type Reading, read } from './reading.ts'

/** What stood before or after the number, and what is left to read. `rest` is empty for trace and nil. */
export interface Marked { readonly mark?: Mark, readonly rest: string }

const seen: readonly Dimension[] = ['mass', 'grade', 'percent', 'concentration', 'radon']
const turned: readonly Dimension[] = ['azimuth', 'inclination', 'angle']

const before: readonly (readonly [RegExp, Mark])[] = [
  [/^(?:<=?|≤|less than|under|below)\s*(?=\S)/i, 'below'],
  [/^(?:>=?|≥|more than|over|above)\s*(?=\S)/i, 'above'],
  [/^(?:~|≈|about|around|approx\.?|circa|abt\.?|ca\.?|c\.)\s*(?=\S)/i, 'about'],
]
const after: readonly (readonly [RegExp, Mark])[] = [[/(?<=\d)\s*\+$/, 'above'], [/\s*\?$|\s+(?:or so|approx\.?)$/i, 'about']]

/** Takes the mark off plain text: `<0.005`, `>100`, `~2`, `tr`, `nil`. */
export function takeMark(text: string, dimension: Dimension): Reading<Marked> {
  if (/^(?:tr|traces?)\.?$/i.test(text)) return seen.includes(dimension) ? read({ mark: 'trace', rest: '' }) : refuse(`a ${dimension} can't be a trace`)
  if (/^(?:nil|none|nothing)\.?$/i.test(text)) return turned.includes(dimension) ? refuse(`${text} is not a direction; for level write 0`) : read({ mark: 'nil', rest: '' })
  if (/^(?:n\.?d\.?|b\.?d\.?l\.?|not detected)$/i.test(text)) return refuse('below what limit? write it as <0.005 with the laboratory\'s limit')
  if (/^(?:-+|\.+|\?+|n\/?a|nr|n\/?r|null|nan)$/i.test(text)) return refuse('it says there is no value; leave it empty, or write nil when it was looked for and not there')
  const hit = before.find(([pattern]) => pattern.test(text))
  const rest = hit ? text.replace(hit[0], '') : text
  const tail = hit ? undefined : after.find(([pattern]) => pattern.test(rest))
  const mark = hit?.[1] ?? tail?.[1]
  if (mark === undefined) return read({ rest })
  if (mark !== 'about' && turned.includes(dimension)) return refuse('a direction has no upper or lower limit; write the angle itself')
  return read({ mark, rest: tail ? rest.replace(tail[0], '') : rest })
}
