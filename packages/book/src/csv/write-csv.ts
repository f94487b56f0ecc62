import Papa from 'papaparse'
import type { Quantity } from '@lodebook/reckon/units'
import { baseUnit } from '@lodebook/reckon/units'
import type { Field, Kind } from '../kinds/index.ts'
import type { Entry } from '../posting/entry.ts'
import { valueText } from './value-text.ts'

interface Column { readonly heading: string, readonly cell: (entry: Entry) => string }

/**
 * Entries of one kind as a file of columns: RFC 4180, commas, UTF-8, every field that some entry has, in the order of the kind.
 *
 * A quantity takes two columns: its value in the base unit that the heading names, and as it was written. The last columns say who wrote it
 * and when. Importing the file gives the same values; the marks `<`, trace and nil are kept in both columns.
 */
export function writeCsv(kind: Kind, entries: readonly Entry[]): string {
  const fields = Object.entries(kind.fields).filter(([name]) => entries.some(entry => entry.fields[name] !== undefined))
  const columns: readonly Column[] = [
    ...fields.flatMap(([name, field]) => columnsOf(name, field)),
    { heading: 'Entry', cell: entry => entry.id },
    { heading: 'Written by', cell: entry => entry.createdBy },
    { heading: 'Written at', cell: entry => entry.createdAt },
    { heading: 'Struck', cell: entry => entry.struck ? entry.struckWhy ?? 'struck' : '' },
  ]
  const rows = entries.map(entry => columns.map(column => column.cell(entry)))
  return `${Papa.unparse([columns.map(column => column.heading), ...rows], { newline: '\r\n' })}\r\n`
}

function columnsOf(name: string, field: Field): readonly Column[] {
  const asWritten = (entry: Entry): string => { const value = entry.fields[name]; return value === undefined ? '' : valueText(field, value) }
  if (field.is.type !== 'quantity') return [{ heading: field.label, cell: asWritten }]
  const unit = baseUnit[field.is.dimension]
  return [
    { heading: `${field.label} (${unit})`, cell: (entry) => { const value = entry.fields[name]; return value === undefined ? '' : inBase(value as Quantity) } },
    { heading: `${field.label} as written`, cell: asWritten },
  ]
}

function inBase({ value, mark }: Quantity): string {
  if (value === null || mark === 'trace' || mark === 'nil') return mark ?? ''
  return `${mark === 'below' ? '<' : mark === 'above' ? '>' : mark === 'about' ? '~' : ''}${value}`
}
