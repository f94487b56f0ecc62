import { widthOf, wrap } from './wrap.ts'

/** How a column is set: words to the left, figures to the right. */
export type Side = 'left' | 'right'

export interface TableOptions {
  /** Columns of the terminal; the last column is broken over lines to fit. */
  readonly width: number
  readonly sides?: readonly Side[]
  readonly head?: readonly string[]
  readonly indent?: number
}

const gap = 2
const narrowest = 20

/** Rows of text in aligned columns, each line ended. The last column wraps at words; the others keep their width. */
export function table(rows: readonly (readonly string[])[], options: TableOptions): string {
  const all = options.head ? [options.head, ...rows] : rows
  const columns = Math.max(0, ...all.map(row => row.length))
  if (columns === 0) return ''
  const last = columns - 1
  const indent = ' '.repeat(options.indent ?? 0)
  const widths = Array.from({ length: columns }, (_, column) => Math.max(...all.map(row => widthOf(row[column] ?? ''))))
  const before = indent.length + widths.slice(0, last).reduce((sum, width) => sum + width + gap, 0)
  const room = Math.max(narrowest, options.width - before)
  const side = (column: number): Side => options.sides?.[column] ?? 'left'

  const lines = (row: readonly string[]): readonly string[] => {
    const start = widths.slice(0, last).map((width, column) => pad(row[column] ?? '', width, side(column)) + ' '.repeat(gap)).join('')
    const [first = '', ...rest] = wrap(row[last] ?? '', room)
    const end = side(last) === 'right' ? pad(first, widths[last] ?? 0, 'right') : first
    return [indent + start + end, ...rest.map(line => ' '.repeat(before) + line)]
  }
  const rule = indent + widths.map(width => '─'.repeat(Math.min(width, room))).join(' '.repeat(gap))
  const set = options.head ? [...lines(options.head), rule, ...rows.flatMap(lines)] : rows.flatMap(lines)
  return set.map(line => `${line.trimEnd()}\n`).join('')
}

function pad(text: string, width: number, side: Side): string {
  const fill = ' '.repeat(Math.max(0, width - widthOf(text)))
  return side === 'left' ? text + fill : fill + text
}
