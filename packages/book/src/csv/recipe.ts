import type { InputOptions } from '../input/index.ts'
import type { Book } from '../posting/entry.ts'
import type { Heading } from './table.ts'

/** What a crew says about a file of columns before it looks at the preview. Every part but the kinds may be left out. */
export interface CsvOptions {
  /** What each row makes, in order: `['shot']`, or `['sample', 'assay']` for a row that holds both. */
  readonly kinds: readonly string[]
  /** Columns that the crew points at itself; they go before what the headings say. */
  readonly map?: readonly ColumnMap[]
  /** Units by heading or by field, for columns that do not say: `{ width: 'in' }`. */
  readonly units?: Readonly<Record<string, string>>
  /** What a field is in every row that does not say: `{ method: 'channel' }`. */
  readonly fill?: Readonly<Record<string, string>>
  /** How words of the file are to be read where a field takes one of a few choices: a cell that holds `text` means `choice`. */
  readonly read?: readonly { readonly text: string, readonly choice: string }[]
  /** Words that mean that nothing was written: `['n/a']`. An empty cell always does. */
  readonly blank?: readonly string[]
  /** Columns that feed no field go into the note, each with its heading. */
  readonly restToNote?: boolean
  /** How to read 5/3/2026. Without it such a date is asked about. */
  readonly dates?: 'day first' | 'month first'
  /** What is taken for granted in the cells. */
  readonly input?: Omit<InputOptions, 'fieldUnits' | 'stations'>
}

/** One or several columns to a field. Several columns of a quantity add up (ounces, pennyweights, grains); several of words are put one after another. */
export interface ColumnMap {
  /** Headings, or column letters where a heading is not enough. */
  readonly headings: readonly string[]
  /** `gold`; `assay.gold` where more than one kind has it; `place.along` for a part of a place. */
  readonly field: string
}

/** The book that a file is to go into, and the time, for dates in the future. */
export interface CsvTarget {
  readonly book: Book
  /** Milliseconds since 1970. */
  readonly now: number
}

/** Parts of a place that may stand in columns of their own. */
export const placeParts = ['toward', 'along', 'side', 'height', 'east', 'north', 'up', 'latitude', 'longitude', 'elevation', 'accuracy'] as const
export type PlacePart = typeof placeParts[number]

/** A field, or a part of a place, and the columns that feed it. */
export interface Feed {
  readonly kind: string
  readonly field: string
  readonly part?: PlacePart
  readonly columns: readonly FedColumn[]
}

export interface FedColumn {
  readonly heading: Heading
  /** Of a bare number in this column. */
  readonly unit?: string
}

/** How a file is read: settled from what the crew says, what the headings say, and a row of units. */
export interface Recipe {
  readonly kinds: readonly string[]
  readonly feeds: readonly Feed[]
  /** Columns that hold something and feed nothing. */
  readonly unused: readonly Heading[]
}
