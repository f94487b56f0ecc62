import type { Random } from '../random.ts'
import type { Section } from '../truth/section.ts'
import { feet, feetInches, metres } from '../write/as-written.ts'
import type { Person } from '../write/crew.ts'
import { tools } from './tools.ts'

/** `A6 + 7 ft 3 in toward A7, left rib, 3.9 ft up`: a place taped from a station, with the tape's error. */
export function placeWords(rng: Random, person: Person, section: Section, side: string, height?: number): string {
  const along = Math.max(0, section.along + rng.normal(0, tools.placing))
  const up = height === undefined ? undefined : Math.max(0, height + rng.normal(0, tools.placing))
  const taped = person.lengths === 'metres' ? metres(along, 1 + rng.whole(0, 1)) : feetInches(along, 1)
  const high = up === undefined ? '' : `, ${person.lengths === 'metres' ? metres(up, 1) : feet(up)} up`
  return `${section.from} + ${taped} toward ${section.to}, ${side}${high}`
}
