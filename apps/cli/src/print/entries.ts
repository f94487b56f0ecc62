import type { Entry, Kind } from '@lodebook/book'
import { table } from './table.ts'
import type { Side } from './table.ts'
import { shortValue } from './value.ts'
import { cut, widthOf } from './wrap.ts'

interface Column { readonly label: string, readonly cells: readonly string[], readonly side: Side, readonly wide: number }

const figures = ['quantity', 'number', 'count', 'year']
/** How wide a column of words may be: the first that lets all columns stand. Figures are never cut. */
const widest = [28, 20, 14]
const gap = 2

/** Entries of one kind as a table that fits the terminal: as many columns as there is room for, those that name an entry first. */
export function entriesTable(kind: Kind, entries: readonly Entry[], width: number): string {
  const used = Object.keys(kind.fields).filter(name => entries.some(entry => entry.fields[name] !== undefined))
  const order = [...kind.title.filter(name => used.includes(name)), ...used.filter(name => !kind.title.includes(name))]
  const ways = widest.map(most => order.map(name => columnOf(kind, name, entries, most)))
  const columns = ways.find(way => spare(way, width) >= 0) ?? ways.at(-1)!
  const fits = columns.findIndex((_, i) => spare(columns.slice(0, i + 1), width) < 0)
  const shown = fits < 0 ? columns : columns.slice(0, fits)
  const left = columns.slice(shown.length).map(column => column.label)
  const rows = entries.map((_, i) => shown.map(column => column.cells[i] ?? ''))
  return table(rows, { width: Infinity, head: shown.map(column => column.label), sides: shown.map(column => column.side) })
    + (left.length === 0 ? '' : `\n${left.length} more ${left.length === 1 ? 'column does' : 'columns do'} not fit: ${left.join(', ')}.\n`)
}

const spare = (columns: readonly Column[], width: number): number => width + gap - columns.reduce((sum, column) => sum + column.wide + gap, 0)

function columnOf(kind: Kind, name: string, entries: readonly Entry[], most: number): Column {
  const field = kind.fields[name]!
  const figure = figures.includes(field.is.type)
  const cells = entries.map((entry) => {
    const value = entry.fields[name]
    return value === undefined ? '' : figure ? shortValue(field, value) : cut(shortValue(field, value), most)
  })
  return { label: field.label, cells, side: figure ? 'right' : 'left', wide: Math.max(widthOf(field.label), ...cells.map(widthOf)) }
}
