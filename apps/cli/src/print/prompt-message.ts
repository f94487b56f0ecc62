import { kindOf } from '@lodebook/book'
import type { Problem } from '@lodebook/book'

const plain = (text: string): string => text.toLowerCase().replace(/[\s_-]/g, '')

/** A problem's sentence with the name that can be typed at the prompt before the label: `distance (Slope distance): …`. */
export function promptMessage({ kind: id, field, message }: Pick<Problem, 'kind' | 'field' | 'message'>): string {
  const name = /^\w+/.exec(field)?.[0] ?? ''
  const label = id === undefined ? undefined : kindOf(id)?.fields[name]?.label
  if (label === undefined || plain(label) === plain(name)) return message
  const row = /^Row \d+, /.exec(message)?.[0] ?? ''
  return message.startsWith(label, row.length) ? `${row}${name} (${label})${message.slice(row.length + label.length)}` : message
}
