import type { Place } from '@lodebook/book'
import type { Located } from '../places/place-in-space.ts'
import type { HeadingShape } from '../shapes.ts'
import { sub } from '../survey/survey.ts'
import type { Survey } from '../survey/survey.ts'
import { textOf } from '../read.ts'
import type { WayIn } from './shapes.ts'

/** The way in as the survey has it, and how far along it a place lies. */
export interface Way extends WayIn {
  readonly distanceOf: (place: Place | undefined, at: Located | undefined) => number | undefined
  readonly headingOf: (station: string) => string | undefined
}

/**
 * Shortest way along the surveyed legs underground from the portal to every station. The portal is the first station of an adit, or else the
 * first tied station. Legs of headings on the surface are left out.
 */
export function wayIn(survey: Survey, headings: readonly HeadingShape[]): Way | undefined {
  const portal = headings.find(h => h.sort === 'adit')?.stations[0] ?? survey.ties.map(tie => textOf(tie, 'station')!).find(s => survey.stations.has(s))
  if (portal === undefined || !survey.stations.has(portal)) return undefined
  const outside = new Set(headings.filter(h => h.sort === 'surface').flatMap(h => h.stations.filter(s => s !== portal)))
  const next = new Map<string, [string, number][]>()
  for (const shot of survey.shots) {
    const from = textOf(shot, 'from')!, to = textOf(shot, 'to')!, a = survey.stations.get(from), b = survey.stations.get(to)
    if (!a || !b || outside.has(from) || outside.has(to)) continue
    const length = Math.hypot(...sub(a.point, b.point))
    next.set(from, [...next.get(from) ?? [], [to, length]])
    next.set(to, [...next.get(to) ?? [], [from, length]])
  }
  const far = new Map<string, number>([[portal, 0]]), waiting = new Set([portal])
  while (waiting.size > 0) {
    const here = [...waiting].reduce((a, b) => far.get(a)! <= far.get(b)! ? a : b)
    waiting.delete(here)
    for (const [to, length] of next.get(here) ?? []) {
      const through = far.get(here)! + length
      if (through < (far.get(to) ?? Infinity)) { far.set(to, through); waiting.add(to) }
    }
  }
  const inHeading = new Map<string, string>()
  for (const h of headings) for (const s of h.stations) if (!inHeading.has(s)) inHeading.set(s, h.name)
  const nearest = (at: Located): number | undefined => {
    const off = (name: string) => Math.hypot(...sub(survey.stations.get(name)!.point, at.point))
    const [best] = [...far].map(([name, distance]) => ({ distance, off: off(name) })).sort((a, b) => a.off - b.off)
    return best && best.off < 15 ? best.distance : undefined
  }
  return {
    portal, headingOf: station => inHeading.get(station),
    stations: [...far].map(([name, distance]) => ({ name, distance, heading: inHeading.get(name) })).sort((a, b) => a.distance - b.distance),
    distanceOf(place, at) {
      if (place?.by === 'station') {
        const here = far.get(place.station), along = place.along?.value ?? 0
        if (here === undefined) return undefined
        const toward = place.toward === undefined ? undefined : far.get(place.toward)
        return toward !== undefined && toward < here ? Math.max(0, here - along) : here + along
      }
      return at && nearest(at)
    },
  }
}
