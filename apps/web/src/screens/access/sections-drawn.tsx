import type { SectionDrawn } from '@lodebook/answers'
import { openEntry } from '../../drawer/drawer-state.ts'
import { book } from '../../link/desk.ts'
import { crewText } from '../../words/crew-value.ts'

const wide = 150, high = 84

/** The taped sections of a job side by side, all at one scale: the ground as found over the ground as wanted, what is dug hatched between. */
export function SectionsDrawn({ sections, name }: { readonly sections: readonly SectionDrawn[], readonly name: string }) {
  const drawn = sections.filter(s => s.found.length > 1), units = book.value!.units
  if (drawn.length === 0) return null
  const all = drawn.flatMap(s => [...s.found, ...s.wanted]), xs = all.map(p => p[0]), zs = all.map(p => p[1])
  const [x0, z0] = [Math.min(...xs), Math.min(...zs)], k = Math.min((wide - 12) / (Math.max(...xs) - x0), (high - 12) / Math.max(0.1, Math.max(...zs) - z0))
  const path = (line: SectionDrawn['found'], from: 'M' | 'L' = 'M') => line.map(([x, z], i) => `${i === 0 ? from : 'L'}${6 + (x - x0) * k} ${high - 6 - (z - z0) * k}`).join('')
  return (
    <ul class="sections-row" aria-label={`Cross sections of ${name}, all at one scale`}>
      {drawn.map((s) => {
        const says = `${crewText(s.at, 'm', units)} along: cut ${crewText(s.cut, 'm2', units)}${s.fill > 0.005 ? `, fill ${crewText(s.fill, 'm2', units)}` : ''}`
        return (
          <li key={s.entry}>
            <button type="button" class="section-drawn" onClick={() => openEntry(s.entry)}>
              <svg width={wide} height={high} aria-hidden="true">
                <path class="dug" d={`${path(s.found)}${path([...s.wanted].reverse(), 'L')}Z`} />
                <path class="ground-wanted" d={path(s.wanted)} />
                <path class="ground-found" d={path(s.found)} />
              </svg>
              <span class="small">{says}</span>
            </button>
          </li>
        )
      })}
    </ul>
  )
}
