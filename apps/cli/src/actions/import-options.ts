import type { ColumnMap, CsvOptions } from '@lodebook/book/csv'
import { refuse } from '../refusal.ts'

/** As typed. */
export interface ImportOptions {
  readonly kind?: string
  readonly map?: readonly string[]
  readonly unit?: readonly string[]
  readonly fill?: readonly string[]
  readonly read?: readonly string[]
  readonly blank?: readonly string[]
  readonly rest?: true
  readonly dates?: string
  readonly decimal?: string
  readonly accept?: true
  readonly goodRows?: true
  readonly by?: string
  readonly json?: true
}

const orders = { 'day-first': 'day first', 'month-first': 'month first' } as const

/** What was typed as the reader of columns wants it. */
export function csvOptions(kinds: readonly string[], typed: ImportOptions): Omit<CsvOptions, 'input'> {
  const { dates } = typed
  if (dates !== undefined && !Object.hasOwn(orders, dates)) throw refuse('--dates', dates, Object.keys(orders).join(' or '))
  return {
    kinds,
    map: (typed.map ?? []).map(word => columnMap(word)),
    units: Object.fromEntries((typed.unit ?? []).map(word => pair('--unit', word, 'a column or a field and its unit, such as width=in'))),
    fill: Object.fromEntries((typed.fill ?? []).map(word => pair('--fill', word, 'a field and its value, such as method=channel'))),
    read: (typed.read ?? []).map(word => pair('--read', word, 'words and the choice that they mean, such as "underground=channel"')).map(([text, choice]) => ({ text, choice })),
    blank: typed.blank ?? [],
    restToNote: typed.rest === true,
    ...(dates === undefined ? {} : { dates: orders[dates as keyof typeof orders] }),
  }
}

/** `Au ppm=gold`, or several columns to one field: `oz+dwt+gr=gold`. */
function columnMap(word: string): ColumnMap {
  const [headings, field] = pair('--map', word, 'a heading and a field, such as "Au ppm=gold", or several as "oz+dwt+gr=gold"')
  return { headings: headings.split('+').map(heading => heading.trim()), field }
}

/** At the last equals sign, so that a heading may hold one. */
function pair(option: string, word: string, expected: string): [string, string] {
  const at = word.lastIndexOf('=')
  const [left, right] = [word.slice(0, Math.max(0, at)).trim(), word.slice(at + 1).trim()]
  if (at < 0 || left === '' || right === '') throw refuse(option, word, expected)
  return [left, right]
}
