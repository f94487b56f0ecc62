import type { Entry } from '@lodebook/book'
import type { Enu } from '@lodebook/reckon'
import type { NotEnough } from '../answer.ts'
import type { Assume } from '../assumptions.ts'
import { buildAnswer, quantile, rangeOf } from '../build-answer.ts'
import type { PlaceContext } from '../places/place-in-space.ts'
import { numberOf, textOf } from '../read.ts'
import type { HeadingShape } from '../shapes.ts'
import type { CrewUnits } from '../words.ts'
import { figure, plural, volume } from '../words.ts'
import type { DiggingOutcomes } from './digging.ts'
import { diggingOf } from './digging.ts'
import { openingOf } from './opening.ts'
import type { Access, Digging } from './shapes.ts'
import { timberOf } from './timber.ts'
import { waysOf } from './ways.ts'

export interface AccessInput {
  readonly jobs: readonly Entry[]
  readonly sections: readonly Entry[]
  readonly spots: readonly Entry[]
  readonly loads: readonly Entry[]
  readonly air: readonly Entry[]
  readonly ground: readonly { readonly entry: Entry, readonly point: Enu }[]
  readonly headings: readonly HeadingShape[]
  readonly context: PlaceContext
  readonly assume: Assume
  readonly units: CrewUnits
}

const cautions = [
  'Never dig under a slope, a brow or a loaded bank, and never alone: what looks firm can come all at once. Cut it back from above to where it stands, and keep people and spoil away from its edge.',
  'Spoil lies where it cannot slide, dam water or bury the portal, and never in a stream; many places want a permit to move it.',
  'Lift with two, wheel down what you can, and change over: backs and hands are what a small crew runs out of.',
  'These are figures for planning. Local codes and licensed people decide on slopes, timber and openings; nothing here says that a place may be entered.',
]

/** What it takes to get in and out properly: earth, loads and days, the way in, its timber, and what opening the portal up would do. */
export function accessOf(input: AccessInput): Access | NotEnough {
  const { assume, units, headings } = input
  const [sections, spots, loads] = [byJob(input.sections), byJob(input.spots), byJob(input.loads)]
  const ways = waysOf(headings, assume, units)
  if (input.jobs.length === 0 && ways.length === 0) {
    return {
      notEnough: true, sentence: 'Nothing is written yet of what stands between you and a proper way in.', cautions,
      wanted: [{ kind: 'digging', why: 'what is to be dug, filled or cleared, and what you carry it in' }, { kind: 'shot', why: 'the way in from the portal, with its four offsets' }],
    }
  }
  const unsized: { entry: string, name: string, why: string }[] = [], made: { digging: Digging, outcomes: DiggingOutcomes }[] = []
  for (const job of [...input.jobs].sort((a, b) => (numberOf(a, 'order') ?? Infinity) - (numberOf(b, 'order') ?? Infinity) || 0)) {
    const name = textOf(job, 'name')!, key = name.trim().toLowerCase()
    const one = diggingOf({ ...input, job, sections: sections.get(key) ?? [], spots: spots.get(key) ?? [], loads: loads.get(key) ?? [] })
    if ('why' in one) unsized.push({ entry: job.id, name, why: one.why })
    else made.push(one)
  }
  const jobs = made.map(m => m.digging), todo = made.filter(m => m.digging.state !== 'done')
  const total = (of: keyof DiggingOutcomes): readonly number[] =>
    todo.reduce<number[]>((sums, m) => m.outcomes[of].map((value, k) => value + (sums[k] ?? 0)), [])
  const middle = (values: readonly number[]) => values.length === 0 ? 0 : quantile([...values].sort((a, b) => a - b), 0.5)
  const [earth, left, days] = [total('volume'), total('loads'), total('days')]
  const method = (page: string) => ({ name: 'the jobs still to do, added outcome by outcome', page, working: todo.map(m => m.digging.sentence) })
  const parts = todo.map(m => m.digging.days), because = ['the pace of the crew', 'ground between what was taped']
  const range = (values: readonly number[]) => values.length === 0 ? {} : { range: rangeOf(values, because) }
  const totals = { earth: middle(earth), loads: middle(left), days: middle(days), range: days.length > 0 ? rangeOf(days) : undefined }
  const sentence = sentenceOf(jobs, todo.length, unsized.length, totals, units)
  return {
    sentence, jobs: [...todo.map(m => m.digging), ...jobs.filter(j => j.state === 'done')], unsized, ways, cautions,
    opening: openingOf(ways[0], input.air, assume, units), timber: timberOf(input.ground, ways, headings, assume, units),
    figures: jobs.length === 0 ? [] : [
      { name: 'still to move, in place', answer: buildAnswer({ id: 'access.earth', value: middle(earth), unit: 'm3', ...range(earth), sentence: `${volume(middle(earth), units, 2)} still to move.`, method: method('muck'), parts: todo.map(m => m.digging.volume) }) },
      { name: 'loads', answer: buildAnswer({ id: 'access.loads', value: Math.round(middle(left)), unit: 'loads', ...range(left), sentence: `${plural(Math.round(middle(left)), 'load')} still to go.`, method: method('load-pace'), parts: todo.map(m => m.digging.tally.left) }) },
      { name: 'days of the crew', answer: buildAnswer({ id: 'access.days', value: middle(days), unit: 'days', ...range(days), sentence, method: method('load-pace'), parts, cautions }) },
    ],
  }
}

function byJob(entries: readonly Entry[]): ReadonlyMap<string, readonly Entry[]> {
  const groups = new Map<string, Entry[]>()
  for (const entry of entries) {
    const key = (textOf(entry, 'job') ?? '').trim().toLowerCase(), group = groups.get(key)
    if (group) group.push(entry)
    else groups.set(key, [entry])
  }
  return groups
}

interface Totals {
  readonly earth: number
  readonly loads: number
  readonly days: number
  readonly range: { readonly low: number, readonly high: number } | undefined
}

function sentenceOf(jobs: readonly Digging[], todo: number, unsized: number, { earth, loads, days, range }: Totals, units: CrewUnits): string {
  const more = unsized === 0 ? '' : ` ${plural(unsized, 'job')} more ${unsized === 1 ? 'is' : 'are'} not measured yet.`
  if (jobs.length === 0) return `No digging is measured yet.${more}`.trim()
  if (todo === 0) return `Every digging job that was measured is done: ${jobs.map(j => j.name).join(', ')}.${more}`
  const still = `${plural(todo, 'job')} ${todo === 1 ? 'stands' : 'stand'} between you and a proper way in: about ${volume(earth, units, 2)} still to move, ${plural(Math.round(loads), 'load')}`
  return `${still}, ${figure(days, 2)} days of the crew${range ? ` (80 %: ${figure(range.low, 2)} to ${figure(range.high, 2)})` : ''}.${more}`
}
