import { callOutAt } from '@lodebook/answers'
import type { CallOut } from '@lodebook/answers'
import type { Entry } from '@lodebook/book'
import { computed, effect, signal } from '@preact/signals'
import { book, desk } from '../link/desk.ts'
import { now } from '../link/now.ts'

/** What the hub last said: its clock beside this device's, and who it holds as in. */
interface HubSaid { readonly skew: number, readonly open: readonly CallOut[] }

const goings = signal<readonly Entry[]>([])
/** Undefined until the hub has answered; it stays when the hub goes out of reach, with the skew that was. */
export const hubSaid = signal<HubSaid | undefined>(undefined)
/** Whether the hub answered when last asked. */
export const hubWatches = signal(false)

/** The time by the hub's clock as far as it is known, by this device's otherwise. */
export const trueNow = (): number => Date.now() + (hubSaid.value?.skew ?? 0)

effect(() => { if (book.value) void desk.entriesOf('going-in').then((lines) => { goings.value = lines.map(l => l.entry).filter(e => !e.struck) }) })

/** People who are written as in: by this device's book and by the hub's, so that either alone is enough to ring. */
export const callOuts = computed((): readonly CallOut[] => {
  const at = now.value + (hubSaid.value?.skew ?? 0), here = callOutAt(goings.value, at), known = new Set(goings.value.map(e => e.id))
  const theirs = (hubSaid.value?.open ?? []).filter(c => !known.has(c.entry)).map(c => again(c, at))
  return [...here, ...theirs].sort((a, b) => b.overdueBy - a.overdueBy)
})

/** What the hub said some seconds ago, at this moment. */
function again(call: CallOut, at: number): CallOut {
  const overdueBy = (at - Date.parse(call.due)) / 60_000
  return { ...call, overdueBy, state: at >= call.callAt ? 'call for help' : overdueBy >= 0 ? 'overdue' : call.state }
}

const everySeconds = 10
async function askHub(): Promise<void> {
  try {
    const sent = Date.now(), answer = await fetch(new URL('api/call-out', document.baseURI), { cache: 'no-store' })
    if (!answer.ok || !answer.headers.get('content-type')?.includes('json')) { hubWatches.value = false; return }
    const { now: hubNow, open } = await answer.json() as { now: number, open: readonly CallOut[] }
    // The answer was made somewhere between the asking and now; half of that is the best guess.
    hubSaid.value = { skew: hubNow - (sent + Date.now()) / 2, open }
    await desk.hubClock(hubSaid.value.skew)
    hubWatches.value = true
    now.value = Date.now()
  } catch { hubWatches.value = false }
}
void askHub()
setInterval(() => { void askHub() }, everySeconds * 1000)
addEventListener('online', () => { void askHub() })
