import { callOutAt } from '@lodebook/answers'
import type { CallOut } from '@lodebook/answers'
import { fold } from '@lodebook/book'
import type { SqliteStore } from './sqlite-store.ts'

/** Who is written as in, at a moment of the hub's clock. It is read from the store each time, so a hub that was off has missed nothing. */
export const callOuts = async (store: SqliteStore, nowMs: number): Promise<readonly CallOut[]> => callOutAt(fold(await store.ofKind('going-in')).of('going-in'), nowMs)

export interface WatchOptions {
  readonly now: () => number
  /** Told of people who are overdue: at once when they become so, when help is due to be called, and every minute until they are written as out. */
  readonly tell: (overdue: readonly CallOut[]) => void
  /** Told of faults; the watch goes on. */
  readonly report?: (error: unknown) => void
  /** How often it looks, milliseconds. */
  readonly every?: number
}

export interface Watch {
  /** Looks now. */
  look(): Promise<void>
  stop(): void
}

const minute = 60_000

/** Watches the call-out clock for as long as the hub runs. */
export function watchCallOuts(store: SqliteStore, { now, tell, report, every = 10_000 }: WatchOptions): Watch {
  const told = new Map<string, { readonly state: string, readonly at: number }>()
  const look = async () => {
    try {
      const at = now(), overdue = (await callOuts(store, at)).filter(c => c.state === 'overdue' || c.state === 'call for help')
      for (const entry of told.keys()) if (!overdue.some(c => c.entry === entry)) told.delete(entry)
      const due = overdue.filter((c) => { const before = told.get(c.entry); return before?.state !== c.state || at - before.at >= minute })
      for (const c of due) told.set(c.entry, { state: c.state, at })
      if (due.length > 0) tell(due)
    } catch (error) { report?.(error) }
  }
  const timer = setInterval(() => { void look() }, every)
  timer.unref()
  return { look, stop: () => { clearInterval(timer) } }
}

/** What the hub's own screen says, with its bell. */
export function alarmText(overdue: readonly CallOut[]): string {
  return overdue.map(c => `\u0007${c.state === 'call for help' ? 'CALL FOR HELP' : 'OVERDUE'}: ${c.people.join(', ')}, due out ${c.due.slice(0, 16).replace('T', ' ')}, ${Math.floor(c.overdueBy)} min late.`
    + `${c.going === undefined ? '' : ` Gone to ${c.going}.`}${c.call === undefined ? '' : ` Call ${c.call}.`} It rings until they are written as out.\n`).join('')
}
