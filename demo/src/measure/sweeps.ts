import type { Place } from '@lodebook/book'
import type { Making } from '../making.ts'
import { momentText, timeOn } from '../write/clock.ts'
import { ives, wren } from '../write/crew.ts'

/** Stations to one sweep: about what is done between two changes of the battery lamp. */
const atOnce = 4
const days = ['2026-06-08', '2026-06-10', '2026-06-12', '2026-06-15', '2026-06-17', '2026-06-19']
/** What was gone over: the rest of the workings has not been swept. */
const swept: readonly { readonly working: string, readonly sides: string, readonly coil: string }[] = [
  { working: 'Adit', sides: 'sill', coil: 'round' }, { working: 'Adit', sides: 'left rib, right rib', coil: 'round' },
  { working: 'Left drift', sides: 'left rib, right rib, back', coil: 'small elliptical' }, { working: 'Right drift', sides: 'left rib, right rib, back', coil: 'small elliptical' },
  { working: 'Left crosscut', sides: 'sill', coil: 'round' }, { working: 'Sublevel', sides: 'back', coil: 'small elliptical' },
]

/** Where the coil went, stretch by stretch: silent unless one of the targets written lies on it. */
export function sweeps({ ore, diary }: Making): void {
  const targets = diary.notes.flatMap(({ draft: { kind, set } }) => {
    const place = set.place as Place | null | undefined
    return kind === 'target' && place?.by === 'station' && typeof set.mark === 'string' ? [{ mark: set.mark, place }] : []
  })
  const first = targets.filter((t, i) => targets.findIndex(other => other.mark === t.mark) === i)
  let n = 0
  for (const { working, sides, coil } of swept) {
    const { stations } = ore.workings.find(w => w.name === working)!
    for (let i = 0; i + 1 < stations.length; i += atOnce) {
      const stretch = stations.slice(i, i + atOnce + 1), from = stretch[0]!, to = stretch.at(-1)!, named = sides.split(', ')
      const marks = first.filter(({ place }) => stretch.includes(place.station) && (place.toward === undefined || stretch.includes(place.toward))
        && (place.side === undefined || named.includes(place.side))).map(t => t.mark)
      // What rang was marked on the day of the sweep.
      const day = marks.length === 0 ? n % days.length : Math.min(days.length - 1, Math.floor((Number(marks[0]!.slice(1)) - 1) / 25))
      const at = timeOn(days[day]!, 7, 2 * n % 55), person = n % 2 === 0 ? ives : wren
      diary.write(person, at + 3 * 60_000, 'sweep', {
        from, to, sides, coil, result: marks.length === 0 ? 'silent' : 'marks found', marks: marks.join(', '), instrument: 'VLF detector', setting: 'all metal', by: person.name, swept: momentText(at),
      })
      n++
    }
  }
}
