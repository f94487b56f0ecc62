import type { Entry } from '@lodebook/book'
import type { Located } from '../places/place-in-space.ts'
import { placeOf, textOf } from '../read.ts'
import type { HeadingShape } from '../shapes.ts'
import type { Survey } from '../survey/survey.ts'
import { plural } from '../words.ts'
import { airSeen } from './air-seen.ts'
import { cautionsOf, topicsOf } from './cautions.ts'
import { checkItems } from './check-items.ts'
import { goingsOf } from './goings.ts'
import { hazardsMet } from './hazards.ts'
import { placeName } from './place-name.ts'
import { rescueFacts } from './rescue.ts'
import type { AirSeen, CheckItem, HazardMet, LeftOpen, Today, Topic } from './shapes.ts'
import { wayIn } from './way-in.ts'
import type { Way } from './way-in.ts'

export interface TodayInput {
  readonly survey: Survey
  readonly headings: readonly HeadingShape[]
  readonly mine: Entry | undefined
  readonly of: (kind: string) => readonly Entry[]
  readonly at: (kind: 'air' | 'hazard' | 'ground') => ReadonlyMap<string, Located>
}

/** What the book says before anybody goes in: what to check, what waits on the way, what was left open. */
export function todayOf({ survey, headings, mine, of, at }: TodayInput): Today {
  const way = wayIn(survey, headings), readings = of('air'), ground = of('ground'), checks = of('check')
  const air = airSeen({ readings, at: at('air'), limits: of('limit'), instruments: of('instrument'), mine, way })
  const hazards = hazardsMet(of('hazard'), at('hazard'), way), goings = goingsOf(of('going-in'))
  const items = checkItems({ checks, readings, ground, hazards, air, way })
  const open = leftOpen({ items, ground, hazards, air, way })
  const stillIn = goings.filter(g => g.out === undefined)
  const moments = [...goings.flatMap(g => [g.in, g.out]), ...readings.map(e => textOf(e, 'taken')), ...checks.map(e => textOf(e, 'taken')), ...ground.map(e => textOf(e, 'taken'))].filter(m => m !== undefined)
  const topics: readonly Topic[] = [...new Set<Topic>(['air', 'ground', 'alone', ...hazards.flatMap(h => topicsOf(h.sort, `${h.action ?? ''} ${h.note ?? ''} ${h.where}`)), ...items.flatMap(i => i.answers[0]?.answer === 'something found' && i.topic ? [i.topic] : []),
    ...air.findings.some(f => f.substance === 'wet bulb') ? ['heat or cold' as const] : []])]
  return {
    way: way && { portal: way.portal, stations: way.stations }, items, hazards, leftOpen: open, air, goings, asOf: moments.sort((a, b) => Date.parse(a) - Date.parse(b)).at(-1) ?? '', lastTime: goings.find(g => g.out !== undefined)?.out,
    rescue: rescueFacts(mine, of('tie'), way?.portal), cautions: topics.flatMap(topic => cautionsOf[topic]),
    sentence: [
      stillIn.length > 0 ? `${plural(stillIn.reduce((n, g) => n + g.people.length, 0), 'person', 'people')} ${stillIn.length === 1 && stillIn[0]!.people.length === 1 ? 'is' : 'are'} written as in.` : '',
      air.places.length === 0 ? 'No air has been read yet.' : air.findings.length > 0 ? `${plural(air.findings.length, 'reading')} of the air ${air.findings.length === 1 ? 'was' : 'were'} outside a published limit when last read; the worst: ${air.findings[0]!.substance} at ${air.findings[0]!.where}.` : 'No reading of the air was outside a limit in force when last read; that is not leave to go in.',
      hazards.length > 0 ? `${plural(hazards.length, 'hazard')} not dealt with on the way in.` : 'No open hazard is written down.',
      open.length > 0 ? `${plural(open.length, 'thing')} left open since last time.` : '',
    ].filter(Boolean).join(' '),
  }
}

interface Seen {
  readonly items: readonly CheckItem[]
  readonly ground: readonly Entry[]
  readonly hazards: readonly HazardMet[]
  readonly air: AirSeen
  readonly way: Way | undefined
}

/** What was found and not put right, as far as the book says. */
function leftOpen({ items, ground, hazards, air, way }: Seen): readonly LeftOpen[] {
  const about = new Set(hazards.map(h => h.entry))
  const found = items.flatMap((item): LeftOpen[] => {
    const [last] = item.answers
    return last?.answer === 'something found' ? [{ entry: last.entry, says: `${item.item}: ${last.note ?? item.bad}`, distance: item.distance, since: last.taken }] : []
  })
  const todo = ground.flatMap((entry): LeftOpen[] => {
    const action = textOf(entry, 'action'), where = placeName(placeOf(entry))
    const later = ground.some(other => placeName(placeOf(other)) === where && (textOf(other, 'taken') ?? '') > (textOf(entry, 'taken') ?? ''))
    return action !== undefined && entry.fields.scaled !== true && !later && !about.has(entry.id) ? [{ entry: entry.id, says: `Ground at ${where}: ${action}`, distance: way?.distanceOf(placeOf(entry), undefined), since: textOf(entry, 'taken') }] : []
  })
  const airOpen = air.places.flatMap((p): LeftOpen[] => p.latest.findings[0] ? [{ entry: p.latest.entry, says: `Air at ${p.name}: ${p.latest.findings[0].substance} outside ${p.latest.findings[0].section}`, distance: p.distance, since: p.latest.taken }] : [])
  return [...found, ...todo, ...airOpen].sort((a, b) => (a.distance ?? -1) - (b.distance ?? -1))
}
