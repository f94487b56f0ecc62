import { newsOf } from '../link/announce.ts'
import { book, desk } from '../link/desk.ts'
import { localMoment } from '../words/moment.ts'
import { trueNow } from './watch.ts'

/** Now by the best clock there is, as it is written down. */
export const momentNow = (): string => localMoment(new Date(trueNow()))
const writer = (): string => book.value?.writer || 'somebody at this device'

async function mend(entry: string, set: Readonly<Record<string, string>>, news: string): Promise<string> {
  // The hub rings devices that have not yet fetched what it rings for.
  if ((await desk.entries([entry])).length === 0) await desk.syncNow()
  const done = await desk.write(writer(), { kind: 'going-in', entry, set })
  const says = done.saved ? news : done.problems.find(p => !p.warning)?.message ?? 'Not saved.'
  newsOf.value = says
  return done.saved ? '' : says
}

export const markHeard = (entry: string): Promise<string> => mend(entry, { heard: momentNow(), heardBy: writer() }, 'Noted that the alarm was heard.')
export const markOut = (entry: string): Promise<string> => mend(entry, { out: momentNow() }, 'Written as out.')
export const markCalled = (entry: string): Promise<string> => mend(entry, { called: momentNow() }, 'Noted that help was called.')
export const dueLater = (entry: string, due: string): Promise<string> => mend(entry, { due }, 'A later time is written.')
