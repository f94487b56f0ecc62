import type { Kind } from '@lodebook/book'
import { refuse } from '../refusal.ts'

/** What is typed as `field=value`: texts by field, and fields to be taken away (`field=`). */
export interface Assignments { readonly texts: Readonly<Record<string, string>>, readonly away: readonly string[] }

const plain = (text: string): string => text.toLowerCase().replace(/[\s_-]/g, '')

/** Reads `field=value` words; a field may be called by its id or its label. */
export function assignments(kind: Kind, words: readonly string[]): Assignments {
  const texts: Record<string, string> = {}
  const away: string[] = []
  for (const word of words) {
    const at = word.indexOf('=')
    const said = at < 0 ? word : word.slice(0, at)
    const ids = Object.keys(kind.fields)
    const field = ids.find(id => plain(id) === plain(said)) ?? ids.find(id => plain(kind.fields[id]!.label) === plain(said))
    if (at < 0) throw refuse('field', word, 'field=value, such as width="20 in"')
    if (field === undefined) throw refuse('field', said, `a field of ${kind.label.toLowerCase()}: ${Object.keys(kind.fields).join(', ')}`)
    if (field in texts || away.includes(field)) throw refuse(field, word, 'each field once')
    const text = word.slice(at + 1).trim()
    if (text === '') away.push(field)
    else texts[field] = text
  }
  return { texts, away }
}
