import type { FieldValue } from '../values.ts'
import { clockTime } from './clock.ts'
import type { Entry, Saying, Strike } from './entry.ts'
import type { Posting } from './posting.ts'

/**
 * The entry that its postings add up to.
 * @param log  all postings of one entry in the order of byClock, at least one
 */
export function foldEntry(log: readonly Posting[]): Entry {
  const first = log[0]!
  const own = log.filter(({ kind }) => kind === first.kind)
  const history = historyOf(own)
  const strikes = strikesOf(own)
  const strike = strikes.at(-1)
  const strays = log.filter(({ kind }) => kind !== first.kind).map(({ hash }) => hash)
  return {
    id: first.entry, kind: first.kind, fields: inForce(history),
    struck: strike?.struck === true, ...(strike?.struck === true && strike.why !== undefined ? { struckWhy: strike.why } : {}),
    createdBy: first.by, createdAt: clockTime(first.clock), changedAt: clockTime(own.at(-1)!.clock),
    ...(first.origin === undefined ? {} : { origin: first.origin }),
    history, strikes, ...(strays.length === 0 ? {} : { strays }),
  }
}

/** [F7] Every value each field ever had, in order. */
function historyOf(log: readonly Posting[]): Entry['history'] {
  const sayings = new Map<string, Saying[]>()
  for (const posting of log) {
    for (const [name, value] of Object.entries(posting.set)) {
      const saw = posting.saw !== undefined && Object.hasOwn(posting.saw, name) ? posting.saw[name] : undefined
      const saying: Saying = { value, ...author(posting), ...(saw === undefined ? {} : { saw }) }
      const before = sayings.get(name)
      if (before) before.push(saying)
      else sayings.set(name, [saying])
    }
  }
  return Object.fromEntries(sayings)
}

/** [F4] Every time it was struck through or restored, in order. */
const strikesOf = (log: readonly Posting[]): readonly Strike[] =>
  log.flatMap(posting => posting.struck === undefined ? [] : [{ struck: posting.struck, ...author(posting) }])

const author = ({ clock, device, by, hash, why }: Posting) => ({ clock, device, by, posting: hash, ...(why === undefined ? {} : { why }) })

/** [F3] The last saying of each field, unless it took the value away. */
const inForce = (history: Entry['history']): Entry['fields'] => Object.fromEntries(Object.entries(history).flatMap(([name, sayings]) => {
  const value: FieldValue | null = sayings.at(-1)!.value
  return value === null ? [] : [[name, value]]
}))
