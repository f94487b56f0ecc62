/** One column of a file: where it stands, and what stands over it. */
export interface Heading {
  /** 0 for the first. */
  readonly column: number
  /** As a spreadsheet names it: A, B … Z, AA. */
  readonly letter: string
  /** Trimmed; empty where nothing is written. */
  readonly text: string
}

/** One row below the headings. Cells are trimmed, as many as there are headings. */
export interface Row {
  /** As a spreadsheet counts: the headings are row 1, and blank rows count. */
  readonly row: number
  readonly cells: readonly string[]
}

export interface Table {
  readonly headings: readonly Heading[]
  /** Rows that hold something. */
  readonly rows: readonly Row[]
  /** What stands between cells. */
  readonly separator: ',' | ';' | '\t' | '|'
}

/** A spreadsheet's name for a column, 0 being A. */
export function columnLetter(column: number): string {
  const rest = Math.floor(column / 26) - 1
  return (rest < 0 ? '' : columnLetter(rest)) + String.fromCharCode(65 + column % 26)
}

/** How messages call a column: its heading, or its letter where there is none. */
export const headingName = (heading: Heading): string => heading.text || `column ${heading.letter}`
