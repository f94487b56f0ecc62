import { kindOf } from '../schema/check-draft.ts'
import type { ColumnUse } from './csv-preview.ts'
import type { Recipe } from './recipe.ts'
import type { Table } from './table.ts'

/** What becomes of each column, in the order of the file. */
export function columnUses(recipe: Recipe, table: Table, restToNote: boolean): readonly ColumnUse[] {
  return table.headings.filter(heading => heading.text !== '').map((heading) => {
    const feeds = recipe.feeds.flatMap(feed => feed.columns.filter(column => column.heading.column === heading.column).map(({ unit }) => ({
      kind: feed.kind, field: feed.part === undefined ? feed.field : `${feed.field}.${feed.part}`,
      label: kindOf(feed.kind)?.fields[feed.field]?.label ?? feed.field, ...(unit === undefined ? {} : { unit }),
    })))
    const example = table.rows.find(row => row.cells[heading.column] !== '')?.cells[heading.column] ?? ''
    return { heading: heading.text, letter: heading.letter, feeds, toNote: restToNote && recipe.unused.includes(heading), example }
  })
}
