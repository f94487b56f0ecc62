import type { Entry } from '@lodebook/book'
import { workSteps } from '@lodebook/reckon/pay'
import type { WorkStep } from '@lodebook/reckon/pay'
import { mean } from '../build-answer.ts'
import type { Answer } from '../answer.ts'
import { chanceMet, lostGround } from './lost-ground.ts'
import { heapOf } from './heap.ts'
import type { Heap } from './heap.ts'
import { textOf, valueOf, wordsOf } from '../read.ts'
import { length, plural, rock } from '../words.ts'
import type { PayInput } from './input.ts'
import { addRock, noRock, worked } from './slot.ts'
import type { Rocks, Slot } from './slot.ts'

/** A piece of work with its ground, outcome by outcome. */
export interface GroundedOption extends Rocks {
  readonly name: string
  readonly entry: Entry | undefined
  readonly ground: string
  /** Panels worked, by their place in the grade's list. */
  readonly panels: readonly number[]
  readonly heap: Heap | undefined
  /** Heading driven, m, and its waste, t. */
  readonly metres: number
  readonly waste: number
  readonly steps: readonly WorkStep[]
  /** What its ground rests on. */
  readonly parts: readonly Answer<unknown>[]
  readonly cautions: readonly string[]
}

export interface NotJudged { readonly name: string, readonly entry: string | undefined, readonly why: string }

const veinSteps: readonly WorkStep[] = ['break', 'muck', 'tram', 'crush', 'wash', 'clean up']
const heapSteps: readonly WorkStep[] = ['muck', 'tram', 'crush', 'wash', 'clean up']
const usualReach = 3 // m round a place, until the option says

/** An option of the crew's with its ground, or why it can't be judged. */
export function groundedOption(entry: Entry, input: PayInput, slot: Slot): GroundedOption | NotJudged {
  const { grade, units, assume } = input
  const name = textOf(entry, 'name') ?? ''
  const refuse = (why: string): NotJudged => ({ name, entry: entry.id, why })
  const count = grade.outcomes.density.length
  const rocks = noRock(count)
  const words: string[] = [], cautions: string[] = [], parts: Answer<unknown>[] = []

  const chosen = panelsOf(entry, input)
  if (typeof chosen === 'string') return refuse(chosen)
  for (const i of chosen.panels) {
    addRock(rocks, worked(grade.outcomes.panels[i]!, grade.outcomes.density, slot))
    parts.push(grade.panels[i]!.answer)
  }
  if (chosen.panels.length > 0) words.push(`${plural(chosen.panels.length, 'panel')} (${listed(chosen.panels.map(i => grade.panels[i]!.name))})`)
  if (chosen.missing.length > 0) cautions.push(`${name}: no panel is called ${chosen.missing.join(', ')} now. Name its ground by a place and a distance, which stays as the panels change.`)

  let heap: Heap | undefined
  const sort = textOf(entry, 'heap')
  if (sort !== undefined) {
    const tonnes = valueOf(entry, 'rock')
    if (tonnes === undefined) return refuse(`it does not say how much rock is in the ${sort}`)
    heap = heapOf(sort, tonnes / 1e6, { samples: input.samples, beliefs: input.beliefs, assume, units, count })
    if (!heap) return refuse(`no sample of the ${sort} has a result`)
    addRock(rocks, heap)
    parts.push(heap.answer)
    words.push(`${rock(tonnes / 1e6, units)} of ${sort}`)
  }

  const metres = valueOf(entry, 'metres') ?? 0
  if (metres > 0) words.push(`${length(metres, units, 2)} of heading`)
  if (textOf(entry, 'towards') === 'the lost part') {
    if (metres === 0) return refuse('it does not say how far to drive for the lost part')
    const chance = chanceMet(input.lostPart, metres)
    if (chance === undefined) return refuse('nothing tells yet where the lost part is')
    const lost = lostGround({ chance, area: valueOf(entry, 'area') ?? 20, grade, slot, units, metres })
    addRock(rocks, lost)
    parts.push(lost.answer)
    words.push(`the lost part met in ${Math.round(100 * chance)} of 100 cases`)
    cautions.push('What lies past the fault is taken to be as this side is, panel for panel; nothing there has been sampled.')
  }
  if (words.length === 0) return refuse('it names no panels, heap or heading')
  const written = wordsOf(entry, 'steps')
  const broken = chosen.panels.length > 0 || textOf(entry, 'towards') === 'the lost part'
  const usual = [...(metres > 0 ? ['drive', 'timber'] as const : []), ...(broken ? veinSteps : sort === undefined ? ['muck', 'tram'] as const : heapSteps)]
  const steps = workSteps.filter(step => written.length > 0 ? written.includes(step) || (step === 'drive' && metres > 0) : usual.includes(step))
  if (mean(rocks.tonnes) > 0 && !steps.some(s => s === 'wash' || s === 'crush')) cautions.push(`${name}: rock is taken out but neither crushed nor washed, so its gold is counted without the work of winning it.`)
  return {
    ...rocks, name, entry, ground: words.join(', '), panels: chosen.panels, heap, metres, steps, parts, cautions,
    waste: metres * assume('heading width').value * assume('heading height').value * slot.wallDensity,
  }
}

const listed = (names: readonly string[]) => names.length <= 6 ? names.join(', ') : `${names.slice(0, 6).join(', ')} and ${names.length - 6} more`

/** The panels that an option names, by name or round a place; or why they can't be found. */
function panelsOf(entry: Entry, { grade, placeOnVein, units }: PayInput): { readonly panels: readonly number[], readonly missing: readonly string[] } | string {
  const named = wordsOf(entry, 'panels').map(w => w.trim().toUpperCase()).filter(w => w !== '')
  const byName = new Map(grade.panels.map((p, i) => [p.name.toUpperCase(), i]))
  const within = valueOf(entry, 'within') ?? usualReach
  const near = new Set<number>()
  if (entry.fields.near !== undefined) {
    const at = placeOnVein(entry, 'near')
    if (typeof at === 'string') return at
    grade.panels.forEach((p, i) => { if (Math.hypot(p.centre.along - at.along, p.centre.down - at.down) <= within) near.add(i) })
    if (near.size === 0 && named.length === 0) return `no ground that is still there and in reach of a sample lies within ${length(within, units, 2)} of its place`
  }
  for (const name of named) { const i = byName.get(name); if (i !== undefined) near.add(i) }
  if (named.length > 0 && near.size === 0) return `no panel is called ${named.join(', ')} now`
  return { panels: [...near].sort((a, b) => a - b), missing: named.filter(n => !byName.has(n)) }
}
