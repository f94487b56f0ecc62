import { kinds } from '@lodebook/book'
import type { Entry } from '@lodebook/book'

/** How a person names an entry: 'Bag B-017', 'Survey shot A6 to A7'. */
export function entryTitle(entry: Entry): string {
  const kind = kinds[entry.kind]
  if (!kind) return entry.kind
  const parts = kind.title.map(field => say(entry.fields[field])).filter(Boolean)
  const joint = kind.id === 'shot' ? ' to ' : ', '
  return parts.length > 0 ? `${kind.label} ${parts.join(joint)}` : kind.label
}

function say(value: unknown): string {
  if (value === undefined || value === null) return ''
  if (Array.isArray(value)) return value.filter(v => typeof v === 'string').join(', ')
  if (typeof value === 'object') {
    const record = value as Record<string, unknown>
    if (typeof record.text === 'string') return record.text
    if (typeof record.station === 'string') return record.station
    if (typeof record.words === 'string') return record.words
    return ''
  }
  return typeof value === 'string' ? value : typeof value === 'number' || typeof value === 'boolean' ? String(value) : ''
}
