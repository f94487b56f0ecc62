import { DegenerateError, InputError, positive } from '../core/index.ts'
import { bagPrecision, variancePerGram } from './bag-precision.ts'
import type { BagPrecision, RockOfGrains } from './bag-precision.ts'

/** What taking, crushing and splitting cost, in minutes of one pair of hands. */
export interface HandWork {
  /** To break out and carry one kilogram. */
  readonly takeKg: number
  /** To crush one kilogram from `crushFromCm` to `crushToCm`; other sizes by Bond's law, in proportion to 1/√to - 1/√from. */
  readonly crushKg: number
  readonly crushFromCm: number
  readonly crushToCm: number
  /** To cone and quarter, or riffle, once. */
  readonly split: number
}

export interface PlanAsked extends RockOfGrains {
  /** Size of the largest pieces as they come off the wall, cm. */
  readonly fragmentCm: number
  /** One standard deviation over the grade that is wanted of the whole, bag and splits together. */
  readonly relativeSd: number
  /** The most that can be panned or assayed in the end, g. */
  readonly finalMassG: number
  /** How fine that must be, cm. */
  readonly finalSizeCm: number
  /** Sizes that the crew can crush to, cm. */
  readonly crushSizesCm: readonly number[]
  /** A channel is cut evenly across: its bag has the error of single grains, not of thrown pieces. */
  readonly cut: boolean
  readonly work: HandWork
  /** The most that can be carried out, g. */
  readonly mostG: number
}

/** One stage: crush to a size, then halve a few times. */
export interface PlanStage {
  readonly sizeCm: number
  readonly fromG: number
  readonly halvings: number
  readonly toG: number
  /** One standard deviation that the halvings of this stage add, over the grade. */
  readonly relativeSd: number
}

export interface SamplePlan {
  readonly bagG: number
  readonly stages: readonly PlanStage[]
  /** Of all together. */
  readonly relativeSd: number
  readonly bagSd: number
  readonly minutes: number
  readonly bag: BagPrecision
  /** False when no plan within the limits reaches what was wanted: then this is the one that comes nearest. */
  readonly reached: boolean
}

/** A way through the crushing so far. */
interface Path { readonly variance: number, readonly minutes: number, readonly steps: readonly (readonly [size: number, halvings: number])[] }

const bagStep = 1.1
const leastBagG = 200
const mostHalvings = 20

/**
 * The bag, and the crushing and halving of it, that gives a wanted precision with the least work by hand.
 *
 * Every bag mass on a ladder is tried with every way to crush coarser to finer and halve in between; of ways to the same state those are dropped
 * that are worse both in error and in work, which loses none that could win.
 * @throws InputError; DegenerateError("no size fine enough") when no crushing size reaches the final one
 * Source: variances of successive splits add, C d³ (1/kept - 1/split from) each (Gy); crushing work by Bond's law, Trans. AIME 193, 1952, 484 (from memory).
 */
export function samplePlan(asked: PlanAsked): SamplePlan {
  const { fragmentCm, finalSizeCm, finalMassG, work } = asked
  positive(asked.relativeSd, 'relative_sd')
  const amounts = { final_mass_g: finalMassG, most_g: asked.mostG, fragment_cm: fragmentCm, final_size_cm: finalSizeCm }
  for (const [field, value] of Object.entries(amounts)) positive(value, field)
  for (const [field, value] of Object.entries(work)) if (!(value >= 0 && Number.isFinite(value))) throw new InputError(`work.${field}`, value, 'zero or more')
  const sizes = [...new Set([fragmentCm, ...asked.crushSizesCm.filter(size => positive(size, 'crush_sizes_cm') < fragmentCm)])].sort((a, b) => b - a)
  if (!(sizes.at(-1)! <= finalSizeCm)) throw new DegenerateError('no size fine enough', 'crush_sizes_cm', asked.crushSizesCm, `a size of ${finalSizeCm} cm or finer`)
  const perGram = sizes.map(size => variancePerGram(asked, size)), single = variancePerGram(asked, asked.liberationSizeCm)
  let best: SamplePlan | undefined
  for (let bagG = Math.max(leastBagG, Math.min(finalMassG, asked.mostG)); bagG <= asked.mostG * (1 + 1e-9); bagG *= bagStep) {
    const bagVariance = (asked.cut ? single : perGram[0]!) / bagG
    for (const path of pathsFor(bagG, sizes, perGram, asked)) {
      const plan = planOf(path, bagG, bagVariance, sizes, perGram, asked)
      if (!best || isBetter(plan, best)) best = plan
    }
  }
  if (!best) throw new InputError('most_g', asked.mostG, `at least ${leastBagG} g`)
  return best
}

/** A plan that reaches beats one that does not; of those that reach the one with less work, else the one with less error. */
const isBetter = (a: SamplePlan, b: SamplePlan): boolean =>
  a.reached !== b.reached ? a.reached : a.reached ? a.minutes < b.minutes : a.relativeSd < b.relativeSd

/** All ways from the bag to the pan that no other way beats in both error and work. */
function pathsFor(bagG: number, sizes: readonly number[], perGram: readonly number[], { finalMassG, finalSizeCm, work }: PlanAsked): readonly Path[] {
  const need = Math.max(0, Math.ceil(Math.log2(bagG / finalMassG) - 1e-9))
  if (need > mostHalvings) return []
  const bond = 1 / Math.sqrt(work.crushToCm) - 1 / Math.sqrt(work.crushFromCm)
  const bondOf = (from: number, to: number) => (1 / Math.sqrt(sizes[to]!) - 1 / Math.sqrt(sizes[from]!)) / bond
  // at[k]: ways that have halved k times by now, with pieces of the size in hand.
  let at: Path[][] = Array.from({ length: need + 1 }, (_, k) => k === 0 ? [{ variance: 0, minutes: 0, steps: [] }] : [])
  const ended: Path[] = []
  for (let size = 0; size < sizes.length; size++) {
    for (let k = 1; k <= need; k++) {
      const grams = bagG / 2 ** k
      const more = at[k - 1]!.map((p): Path => {
        const last = p.steps.at(-1)
        const steps = last?.[0] === size ? [...p.steps.slice(0, -1), [size, last[1] + 1] as const] : [...p.steps, [size, 1] as const]
        return { variance: p.variance + perGram[size]! * (1 / grams - 1 / (2 * grams)), minutes: p.minutes + work.split, steps }
      })
      at[k] = unbeaten([...at[k]!, ...more])
    }
    if (sizes[size]! <= finalSizeCm) ended.push(...at[need]!.map(p => p.steps.at(-1)?.[0] === size ? p : { ...p, steps: [...p.steps, [size, 0] as const] }))
    const onward = size + 1 < sizes.length ? work.crushKg * bagG / 1000 * bondOf(size, size + 1) : 0
    at = at.map((paths, k) => paths.map(p => ({ ...p, minutes: p.minutes + onward / 2 ** k })))
  }
  return unbeaten(ended)
}

function unbeaten(paths: readonly Path[]): Path[] {
  const sorted = [...paths].sort((a, b) => a.minutes - b.minutes || a.variance - b.variance)
  let least = Infinity
  return sorted.filter(({ variance }) => { if (variance >= least) return false; least = variance; return true })
}

function planOf(
  path: Path, bagG: number, bagVariance: number, sizes: readonly number[], perGram: readonly number[], asked: PlanAsked,
): SamplePlan {
  let grams = bagG
  const stages = path.steps.map(([size, halvings]): PlanStage => {
    const fromG = grams
    grams = fromG / 2 ** halvings
    return { sizeCm: sizes[size]!, fromG, halvings, toG: grams, relativeSd: Math.sqrt(perGram[size]! * (1 / grams - 1 / fromG)) }
  })
  const relativeSd = Math.sqrt(bagVariance + path.variance)
  return {
    bagG, stages, relativeSd, bagSd: Math.sqrt(bagVariance), minutes: path.minutes + asked.work.takeKg * bagG / 1000,
    bag: bagPrecision(asked, bagG, asked.fragmentCm), reached: relativeSd <= asked.relativeSd,
  }
}
