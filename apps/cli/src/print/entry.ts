import { entryTitle } from '@lodebook/answers'
import { clockTime, kinds } from '@lodebook/book'
import type { Entry, Field, FieldValue, Saying } from '@lodebook/book'
import { table } from './table.ts'
import { sentences } from './problems.ts'
import { fullValue, shortValue } from './value.ts'
import { when } from './when.ts'
import { cut } from './wrap.ts'

/** One entry: what stands in force, then everything that was ever written in it. */
export function entryPage(entry: Entry, width: number): string {
  const fields = kinds[entry.kind]?.fields ?? {}
  const rows = Object.entries(fields).flatMap(([name, field]) => {
    const value = entry.fields[name]
    return value === undefined ? [] : [[field.label, fullValue(field, value)]]
  })
  const struck = entry.struck ? `Struck${entry.struckWhy === undefined ? '' : `: ${entry.struckWhy}`}\n` : ''
  return [
    `${entryTitle(entry)}\n${struck}`,
    table(rows, { width, indent: 2 }),
    `Written\n${sentences(historyLines(entry), width)}`,
    `Entry ${entry.id}\n`,
  ].join('\n')
}

interface Event { readonly clock: string, readonly by: string, readonly why?: string | undefined, readonly what: string }

/** What each posting said, oldest first: `2026-05-03 07:12 R: Width sampled 20 in`. */
function historyLines(entry: Entry): readonly string[] {
  const fields = kinds[entry.kind]?.fields ?? {}
  const inOrder = Object.keys(fields).filter(name => entry.history[name])
  const events = inOrder.flatMap(name => entry.history[name]!.map((saying, i): Event => ({
    clock: saying.clock, by: saying.by, why: saying.why, what: said(fields[name]!, saying, entry.history[name]![i - 1]),
  })))
  const strikes = (entry.strikes ?? []).map(({ clock, by, why, struck }): Event => ({ clock, by, why, what: struck ? 'struck through' : 'restored' }))
  const byPosting = new Map<string, Event[]>()
  for (const event of [...events, ...strikes]) byPosting.set(`${event.clock} ${event.by}`, [...byPosting.get(`${event.clock} ${event.by}`) ?? [], event])
  return [...byPosting].sort(([a], [b]) => a < b ? -1 : 1).map(([, [first, ...rest]]) => {
    const what = [first!, ...rest].map(event => event.what).join('; ')
    return `${when(clockTime(first!.clock))}  ${first!.by}: ${what}${first!.why === undefined ? '' : ` (${first!.why})`}`
  })
}

function said(field: Field, saying: Saying, before: Saying | undefined): string {
  const words = (value: FieldValue | null) => value === null ? 'nothing' : cut(shortValue(field, value), longest)
  if (saying.value === null) return `${field.label} taken away, was ${words(before?.value ?? null)}`
  return before && before.value !== null ? `${field.label} ${words(saying.value)}, was ${words(before.value)}` : `${field.label} ${words(saying.value)}`
}

/** Of one value in the history; the page above it has all of what stands. */
const longest = 60
