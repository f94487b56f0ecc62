import type { Entry } from '@lodebook/book'
import type { NotEnough } from '../answer.ts'
import { buildAnswer } from '../build-answer.ts'
import type { PlaceContext } from '../places/place-in-space.ts'
import { textOf } from '../read.ts'
import type { PlacedEntry } from '../shapes.ts'
import type { CrewUnits } from '../words.ts'
import { figure, length, plural } from '../words.ts'
import { findAt } from './find-at.ts'
import type { Finds, SweptAt, TargetStory } from './shapes.ts'
import { covered } from './pieces.ts'
import { sweptAt } from './sweeps.ts'
import { targetStory } from './target-story.ts'
import type { ChainLinks } from './target-story.ts'
import { legsOf, portalOf, shortestWays } from './ways.ts'

export interface FindsInput extends ChainLinks {
  readonly targets: readonly Entry[]
  readonly relics: readonly Entry[]
  readonly photos: readonly Entry[]
  readonly shots: readonly Entry[]
  readonly ties: readonly Entry[]
  readonly headings: readonly Entry[]
  readonly context: PlaceContext
  readonly placed: readonly PlacedEntry[]
}

const method = (name: string) => ({ name, page: 'finds' })

/** What was seen, heard and taken, exactly where, and what swept ground was silent. */
export function findsOf(input: FindsInput): Finds | NotEnough {
  const { targets, samples, sweeps, relics, units, context: { stations } } = input
  if (targets.length + samples.length + sweeps.length + relics.length === 0) {
    return {
      notEnough: true, sentence: 'Nothing has been found or gone over yet.', cautions: [],
      wanted: [{ kind: 'sweep', why: 'a stretch gone over with the detector, silent or not' }, { kind: 'target', why: 'a signal, with its place' }, { kind: 'sample', why: 'a bag taken from the wall' }],
    }
  }
  const legs = legsOf(input.shots, stations), portal = portalOf(input.headings, input.ties, stations)
  const ways = portal === undefined ? new Map<string, never>() : shortestWays(legs, new Map([[portal, 0]]))
  const stories = targets.map(target => targetStory(target, input)), byEntry = new Map(stories.map(story => [story.entry, story]))
  const swept = sweptAt(sweeps, legs, input.context, units)
  const finds = [...targets, ...samples.filter(s => !['blank', 'standard'].includes(textOf(s, 'role') ?? '')), ...relics, ...input.photos]
    .map(entry => findAt(entry, { stations, placed: input.placed, ways, photos: input.photos, stories: byEntry, units }))
  const wayOf = new Map(finds.map(find => [find.entry, find.way ?? Infinity]))
  const open = stories.filter(s => s.open).sort((a, b) => wayOf.get(a.entry)! - wayOf.get(b.entry)!)
  return {
    sentence: sentenceOf(stories, swept, units), figures: figuresOf(stories, swept, units), sweeps: swept, targets: stories, open: open.map(s => s.entry), finds, portal: portal ?? '',
    cautions: cautionsOf(input, stories),
  }
}

function sentenceOf(stories: readonly TargetStory[], swept: readonly SweptAt[], units: CrewUnits): string {
  const gold = stories.filter(s => s.state === 'gold'), wall = stories.filter(s => s.state === 'still in the wall'), other = stories.filter(s => s.open && s.state !== 'still in the wall')
  const grams = gold.reduce((sum, s) => sum + (s.gold?.value ?? 0), 0) / 1000
  const heard = stories.length === 0 ? 'No signal is written yet'
    : `Of ${plural(stories.length, 'signal')}, ${gold.length} turned out to be gold${grams > 0 ? ` (${figure(grams, 3)} g as weighed)` : ''}; ${wall.length} still ${wall.length === 1 ? 'rings' : 'ring'} in the wall and ${other.length} ${other.length === 1 ? 'is' : 'are'} not followed up or not finished`
  const placed = swept.filter(s => s.length !== undefined), { all, silent } = groundOf(swept)
  const ground = placed.length === 0 ? 'No stretch is written as swept, so silence elsewhere tells nothing'
    : `of ${length(all, units, 2)} of opening gone over with the detector, ${length(silent, units, 2)} was silent`
  return placed.length === 0 ? `${heard}. ${ground}.` : `${heard}; ${ground}.`
}

/** Metres of opening gone over at all, and those of them where no sweep heard anything. */
function groundOf(swept: readonly SweptAt[]): { readonly all: number, readonly silent: number } {
  const all = covered(swept.flatMap(s => s.pieces))
  return { all, silent: all - covered(swept.filter(s => s.result !== 'silent').flatMap(s => s.pieces)) }
}

function figuresOf(stories: readonly TargetStory[], swept: readonly SweptAt[], units: CrewUnits): Finds['figures'] {
  const placed = swept.filter(s => s.length !== undefined), silent = placed.filter(s => s.result === 'silent'), ground = groundOf(swept)
  const gold = stories.filter(s => s.gold && s.gold.value > 0), open = stories.filter(s => s.open)
  return [
    buildAnswer({
      id: 'finds.open', value: open.length, sentence: `${plural(open.length, 'target')} still to be followed up.`, method: method('targets that no check or outcome has ended'), from: open.map(s => s.entry),
    }),
    buildAnswer({
      id: 'finds.gold', value: gold.reduce((total, s) => total + s.gold!.value, 0) / 1000, unit: 'g', sentence: `${plural(gold.length, 'target')} gave gold that was weighed or counted.`,
      method: method('sum over the chains, as won'), from: gold.map(s => s.entry), parts: gold.flatMap(s => s.gold ?? []),
      cautions: gold.length > 0 ? ['the crew opened the signals that rang best: this says nothing of what the rest hold'] : [],
    }),
    buildAnswer({
      id: 'finds.swept', value: ground.all, unit: 'm', sentence: `${length(ground.all, units)} of opening gone over with the detector, in ${plural(placed.length, 'sweep')}.`,
      method: method('length along the shots between the two ends of each sweep, what was swept twice counted once'), from: placed.map(s => s.entry),
    }),
    buildAnswer({
      id: 'finds.silent', value: ground.silent, unit: 'm', sentence: `${length(ground.silent, units)} of it was silent.`,
      method: method('length swept where no sweep heard anything'), from: silent.map(s => s.entry),
      cautions: ['silent means: no piece large enough for that coil and setting within its reach. Fine gold rings nowhere, and a coil hears some centimetres into rock'],
    }),
  ]
}

/** What can hurt somebody at this work, told when the book gives cause. */
function cautionsOf(input: FindsInput, stories: readonly TargetStory[]): readonly string[] {
  const inGob = input.samples.some(s => ['gob', 'dump'].includes(textOf(s, 'method') ?? ''))
  return [
    ...inGob || stories.some(s => s.open) ? ['Stacked waste and old holes can hold old explosives and caps, which ring like any metal. Do not dig for a signal in gob or in a drilled hole that nobody has cleared: leave it, mark it off, report it.'] : [],
    ...inGob ? ['Old heaps near a mill or a retort can hold mercury and lead: gloves, no heating, wash before eating.'] : [],
    'Breaking and crushing quartz makes silica dust that scars lungs for good: keep it wet, and wear a respirator made for it.',
    ...stories.some(s => s.open) ? ['Scale before breaking anything from back or rib, and look up what the piece was holding.'] : [],
  ]
}
