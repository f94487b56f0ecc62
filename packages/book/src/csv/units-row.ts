import { baseUnit } from '@lodebook/reckon/units'
import type { Dimension } from '@lodebook/reckon/units'
import { isUnit } from './heading-text.ts'
import type { Row, Table } from './table.ts'

const dimensions = Object.keys(baseUnit) as Dimension[]

/** A cell of a row of units, without the brackets that some put round it. */
const unitIn = (cell: string): string => cell.replace(/^[([]\s*|\s*[)\]]$/g, '')

/**
 * Takes off the row of units that some tables carry under their headings.
 * A row is one of units when every cell that holds something holds a unit and nothing else.
 * @returns the table without that row, and the units by column
 */
export function takeUnitsRow(table: Table): { readonly table: Table, readonly units: ReadonlyMap<number, string> } {
  const [first, ...rest] = table.rows
  if (!first || !isUnitsRow(first)) return { table, units: new Map() }
  const units = new Map(first.cells.flatMap((cell, column): [number, string][] => cell === '' ? [] : [[column, unitIn(cell)]]))
  return { table: { ...table, rows: rest }, units }
}

const isUnitsRow = (row: Row): boolean =>
  row.cells.every(cell => cell === '' || (!/\d/.test(cell.replace(/[23]/g, '')) && dimensions.some(dimension => isUnit(unitIn(cell), dimension))))
