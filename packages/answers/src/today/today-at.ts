import { plural } from '../words.ts'
import { cautionsOf } from './cautions.ts'
import type { Caution, CheckAnswered, CheckItem, Today } from './shapes.ts'

/** An item of the check with its answer of this round, if it has one. */
export interface CheckNow extends CheckItem { readonly now: CheckAnswered | undefined, readonly before: CheckAnswered | undefined }

/** Today at one moment of one clock: what has been answered in this round, and what has not. */
export interface TodayNow {
  readonly sentence: string
  readonly items: readonly CheckNow[]
  readonly answered: number
  readonly notLookedAt: readonly CheckNow[]
  readonly found: readonly CheckNow[]
  /** Hours since air was last read anywhere; undefined when never. */
  readonly airAge: number | undefined
  readonly cautions: readonly Caution[]
}

/** A round lasts so many hours: what was answered before that is asked again. One shift; common practice, no source. */
const round = 12

/**
 * Today as it stands at a moment. What was answered or read within the last twelve hours counts for this round; older answers are shown as
 * what was so last time.
 */
export function todayAt(today: Today, nowMs: number): TodayNow {
  const fresh = (taken: string): boolean => nowMs - Date.parse(taken) < round * 3_600_000 && Date.parse(taken) <= nowMs + 600_000
  const items = today.items.map((item): CheckNow => ({ ...item, now: item.answers.find(a => fresh(a.taken)), before: item.answers.find(a => !fresh(a.taken)) }))
  const open = items.filter(i => i.now === undefined || i.now.answer === 'not looked at')
  const found = items.filter(i => i.now?.answer === 'something found')
  const latestAir = today.air.places.flatMap(p => p.latest.taken).map(t => Date.parse(t)).filter(t => t <= nowMs + 600_000)
  const airAge = latestAir.length === 0 ? undefined : (nowMs - Math.max(...latestAir)) / 3_600_000
  const outside = today.air.places.filter(p => fresh(p.latest.taken) && p.latest.findings.length > 0)
  const topics = [...new Set(found.flatMap(i => i.topic ?? []))]
  return {
    items, answered: items.length - open.length, notLookedAt: open, found, airAge,
    cautions: [...topics.flatMap(t => cautionsOf[t]), ...today.cautions.filter(c => !topics.includes(c.topic))],
    sentence: [
      outside.length > 0 ? `Air is outside a published limit at ${outside.map(p => p.name).join(', ')}.` : '',
      found.length > 0 ? `${plural(found.length, 'thing')} found today: ${found.slice(0, 3).map(i => i.item.toLowerCase()).join(', ')}${found.length > 3 ? ' and more' : ''}.` : '',
      open.length === items.length ? 'Nothing of today’s check has been looked at yet.' : open.length > 0 ? `${items.length - open.length} of ${items.length} looked at; not yet: ${open.slice(0, 4).map(i => i.item).join(', ')}${open.length > 4 ? ` and ${open.length - 4} more` : ''}.` : `All ${items.length} items of the check have been looked at.`,
      today.hazards.length > 0 ? `${plural(today.hazards.length, 'hazard')} not dealt with on the way in.` : '',
    ].filter(Boolean).join(' '),
  }
}
