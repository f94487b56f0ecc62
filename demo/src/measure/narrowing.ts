import type { Place } from '@lodebook/book'
import type { Making } from '../making.ts'
import { bagMass } from '../write/as-written.ts'
import { dayText, momentText, timeOn } from '../write/clock.ts'
import { ives, moss, wren, type Person } from '../write/crew.ts'

interface Heard { readonly mark: string, readonly outcome: string, readonly gold: string | undefined, readonly place: Place }

/** How many chains of each sort are written out step by step; of the other targets only the end is. */
const chains = { gold: 7, waiting: 3, other: 6 }
const minutes = 60_000

/**
 * Narrowing down: rock broken off and checked under the coil until the signal is in one piece, and what became of it. Pieces with gold go into bags
 * with the labels that come after the samples'. A careless crew passes one number over, puts one on two bags, and loses the last bag.
 */
export function narrowing(making: Making): void {
  const { diary } = making, rng = making.numbers('narrowing')
  const heard = diary.notes.flatMap(({ draft: { kind, set } }): Heard[] => kind === 'target' && typeof set.mark === 'string'
    ? [{ mark: set.mark, outcome: typeof set.outcome === 'string' ? set.outcome : 'open', gold: (set.goldMass as { text: string } | undefined)?.text, place: set.place as Place }] : [])
  const onWall = heard.filter(h => h.place.by === 'station' && h.place.side !== 'sill')
  const check = (person: Person, at: number, mark: string, texts: Readonly<Record<string, string | undefined>>) =>
    diary.write(person, at + 6 * minutes, 'target-check', { mark, by: person.name, checked: momentText(at), ...texts })

  onWall.filter(h => h.outcome === 'gold' && h.gold !== undefined).slice(0, chains.gold).forEach((h, i) => {
    const [number, last] = labels(making, i), day = `2026-07-0${i < 4 ? 9 : 8}`, at = timeOn(day, 8 + i, 10 * i % 40), person = i % 2 === 0 ? wren : ives
    const first = rng.uniform(1500, 3500), second = first * rng.uniform(0.2, 0.4), third = second * rng.uniform(0.3, 0.5)
    check(person, at, h.mark, { found: 'still in the wall' })
    check(person, at + 14 * minutes, h.mark, { found: 'in this piece', piece: bagMass(person, first, 1) })
    if (i % 3 !== 2) check(person, at + 22 * minutes, h.mark, { found: 'in this piece', piece: bagMass(person, second, 1) })
    check(person, at + 35 * minutes, h.mark, { found: 'in this piece', became: 'piece for the mortar', piece: bagMass(person, third, 1), bag: number })
    diary.write(person, at + 40 * minutes, 'sample', {
      bag: number, method: 'piece', target: h.mark, place: placed(h.place), mass: bagMass(person, third, 1), seen: rng.pick(['iron stain', 'iron stain, clay', 'crystals']),
      visibleGold: rng.pick(['none', 'one speck', 'a few specks']), collector: person.name, taken: dayText(at),
    })
    if (last) return
    diary.write(moss, timeOn('2026-07-11', 9 + i), 'pan', {
      bag: number, mass: bagMass(moss, third, 1), mesh: '0.5 mm', goldMass: h.gold, tails: 'kept', panner: moss.name, panned: '2026-07-11', note: `The piece from ${h.mark}, crushed wet in the mortar.`,
    })
  })

  onWall.filter(h => h.outcome === 'still in the wall').slice(0, chains.waiting).forEach((h, i) => check(ives, timeOn('2026-07-09', 14, 11 * i), h.mark, { found: 'still in the wall' }))
  heard.filter(h => ['scrap iron', 'hot rock', 'relic'].includes(h.outcome)).slice(0, chains.other).forEach((h, i) => {
    check(wren, timeOn('2026-06-18', 14, 9 * i), h.mark, { found: 'in this piece', became: h.outcome, piece: h.outcome === 'hot rock' ? `${rng.whole(2, 9) * 100} g` : undefined })
  })
}

/**
 * The label of the nth piece, and whether its bag is the one that gets lost. The third label is spoilt; the sixth piece gets the fifth one's number,
 * by two people who could not hear each other.
 */
function labels({ diary, careless, loose }: Making, n: number): readonly [string, boolean] {
  const samples = diary.notes.filter(note => note.draft.kind === 'sample' && note.draft.set.method !== 'piece' && note.draft.why === undefined).length
  const label = (i: number) => `B-${String(samples + i).padStart(3, '0')}`, lost = careless && n === chains.gold - 1
  if (!careless) return [label(n + 1), false]
  if (n === 2) loose.passedOver = label(3)
  if (n === 5) loose.twice = label(6)
  if (lost) loose.lost = label(7)
  return [label([1, 2, 4, 5, 6, 6, 7][n]!), lost]
}

/** A place as it was written on the target, for the tag of the bag. */
function placed(place: Place): string {
  if (place.by !== 'station') return ''
  const along = place.along === undefined ? '' : ` + ${place.along.text}`, toward = place.toward === undefined ? '' : ` toward ${place.toward}`
  return [`${place.station}${along}${toward}`, place.side, place.height && `${place.height.text} up`].filter(Boolean).join(', ')
}
