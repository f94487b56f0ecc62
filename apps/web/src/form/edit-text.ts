import type { FieldValue } from '@lodebook/book'
import { coloursText, placeText } from '@lodebook/book/input'

/** A value as text that the form reads back as the same value; a quantity whose unit was taken for granted gets it written out. */
export function editText(value: FieldValue): string {
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  if (typeof value === 'number' || typeof value === 'string') return String(value)
  if (Array.isArray(value)) {
    const list = value as readonly (string | Parameters<typeof placeText>[0] | Parameters<typeof coloursText>[0][number])[]
    if (list.length > 0 && list.every(item => typeof item === 'object' && 'class' in item)) return coloursText(list)
    return list.map(item => typeof item === 'string' ? item : 'by' in item ? placeText(item) : '').join(list.some(item => typeof item === 'object') ? '\n' : ', ')
  }
  if ('text' in value && 'unit' in value) return value.from === undefined ? value.text : `${value.text} ${value.from}`
  if ('amount' in value) return /[A-Za-z€£]/.test(value.text) ? value.text : `${value.text} ${value.currency}`
  if ('by' in value) return placeText(value)
  return JSON.stringify(value)
}
