import { bagPrecision, samplePlan } from '@lodebook/reckon/sampling'
import type { SamplePlan } from '@lodebook/reckon/sampling'
import { convert } from '@lodebook/reckon/units'
import type { Assumed } from '../answer.ts'
import { buildAnswer } from '../build-answer.ts'
import type { CrewUnits } from '../words.ts'
import { figure, grade as gradeWords } from '../words.ts'
import type { PlanWish, SamplePlanFound } from './shapes.ts'

/** Sizes that a crew brings rock down to: hammer, small crusher, mortar, metres. Common practice, no source. */
const crushSizes = [0.02, 0.01, 0.005, 0.002, 0.001, 0.0005] as const
/** Minutes of one pair of hands. Common practice, no source. */
const work = { takeKg: 3, crushKg: 10, crushFromCm: 5, crushToCm: 0.1, split: 5 }
/** What one person carries out of a low drift in two trips, g. Common practice, no source. */
const mostG = 60_000
const shownBags = [500, 1000, 2000, 5000, 10_000, 20_000] as const

const method = { name: 'least work for a stated sampling error', page: 'sample-plan' }
const sources = ['Gy\'s fundamental error in the gold form; Poisson counts of grains; Bond\'s law for the work of crushing. See docs/methods/sample-plan.md']

/** A mass in the crew's units: pounds, or kilograms and grams. */
export const massText = (grams: number, units: CrewUnits): string => units.length === 'ft'
  ? grams >= 450 ? `${figure(convert(grams, 'g', 'lb'), 2)} lb` : `${figure(convert(grams, 'g', 'oz'), 2)} oz avoirdupois`
  : grams >= 1000 ? `${figure(grams / 1000, 2)} kg` : `${figure(grams, 2)} g`

/** A small size in the crew's units. */
export const sizeText = (metres: number, units: CrewUnits): string => units.length === 'ft' ? `${figure(convert(metres, 'm', 'in'), 2)} in` : `${figure(metres * 1000, 2)} mm`

export const shareText = (share: number): string => `±${figure(share * 100, 2)} %`

/**
 * How much to take and how to bring it down, for a wish; and what bags of several masses can tell at best.
 * @throws InputError when a figure of the wish is not above zero
 */
export function planFor(wish: PlanWish, units: CrewUnits, assumed: readonly Assumed[] = []): SamplePlanFound {
  const rock = { gradeGPerT: wish.grade, liberationSizeCm: wish.grain * 100 }
  const plan = samplePlan({
    ...rock, fragmentCm: wish.fragment * 100, relativeSd: wish.precision, finalMassG: wish.finalMass, finalSizeCm: wish.finalSize * 100,
    crushSizesCm: [...new Set([...crushSizes, wish.finalSize])].map(size => size * 100), cut: wish.cut, work, mostG,
  })
  return {
    sentence: sentenceOf(plan, wish, units), reached: plan.reached, steps: stepsOf(plan, wish, units), minutes: plan.minutes, assumed,
    bag: buildAnswer({
      id: 'sampling.bag', value: plan.bagG, unit: 'g', sentence: `A bag of ${massText(plan.bagG, units)}.`, method: { ...method, working: workingOf(plan, wish) }, sources, assumed,
    }),
    precision: buildAnswer({
      id: 'sampling.precision', value: plan.relativeSd, unit: 'of the grade', sentence: `Bag and splits together: ${shareText(plan.relativeSd)}, one standard deviation.`,
      method: { ...method, working: workingOf(plan, wish) }, sources, assumed,
      cautions: plan.relativeSd > 0.3 ? ['so wide a doubt is lopsided: most such bags read low, a few very high'] : [],
    }),
    bags: shownBags.map((mass) => {
      const { atBest, asBroken, grains, chanceOfNone } = bagPrecision(rock, mass, wish.fragment * 100)
      return { mass, atBest, asBroken, grains, none: chanceOfNone }
    }),
    cautions: [
      'this is the error of a perfect sampler: an uneven cut, lost fines and gold smeared on the mortar come on top',
      'crush wet and with a respirator made for silica: the dust of quartz scars lungs for good',
    ],
  }
}

function sentenceOf(plan: SamplePlan, wish: PlanWish, units: CrewUnits): string {
  const rock = `gold as coarse as ${sizeText(wish.grain, units)} at ${gradeWords(wish.grade, units)}`
  return plan.reached
    ? `For ${rock}, take ${massText(plan.bagG, units)}${wish.cut ? ', cut evenly across' : ''}: brought down as below it gives ${shareText(plan.relativeSd)}, and holds about ${figure(plan.bag.grains, 2)} of the grains that matter.`
    : `For ${rock}, no bag that can be carried out gives ${shareText(wish.precision)}${wish.cut ? '' : ' from pieces this large'}; the nearest is ${shareText(plan.relativeSd)} from ${massText(plan.bagG, units)}.`
}

function stepsOf(plan: SamplePlan, wish: PlanWish, units: CrewUnits): readonly string[] {
  return plan.stages.map(({ sizeCm, fromG, halvings, toG }) => {
    const crushed = sizeCm >= wish.fragment * 100 ? `As it comes, ${massText(fromG, units)}` : `Crush all ${massText(fromG, units)} to ${sizeText(sizeCm / 100, units)}`
    return halvings === 0 ? `${crushed}, and pan or send all of it.` : `${crushed}, then cone and quarter: halve it ${halvings === 1 ? 'once' : halvings === 2 ? 'twice' : `${halvings} times`} to ${massText(toG, units)}.`
  })
}

const workingOf = (plan: SamplePlan, wish: PlanWish): readonly string[] => [
  `bag: sd ${figure(plan.bagSd, 3)} from ${wish.cut ? 'single grains' : 'pieces as broken'} in ${figure(plan.bagG, 3)} g`,
  ...plan.stages.map(s => `at ${figure(s.sizeCm, 2)} cm, ${figure(s.fromG, 3)} g to ${figure(s.toG, 3)} g: sd ${figure(s.relativeSd, 2)}`),
  `together √(sum of squares) = ${figure(plan.relativeSd, 3)}; about ${figure(plan.minutes, 2)} minutes of one pair of hands`,
]
