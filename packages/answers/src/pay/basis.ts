import type { Entry } from '@lodebook/book'
import { allOptionOutcomes, checkPlan, ouncesToEarn, surplusOf } from '@lodebook/reckon/pay'
import type { OptionOutcomes, WorkPlan } from '@lodebook/reckon/pay'
import type { Answer, NotEnough } from '../answer.ts'
import type { AssumedFigure } from '../assumptions.ts'
import { mean } from '../build-answer.ts'
import { moneyOf, numberOf, valueOf, wordsOf } from '../read.ts'
import { bestPanels } from './best-panels.ts'
import { costSheet } from './costs.ts'
import { groundedOption } from './crew-options.ts'
import type { GroundedOption, NotJudged } from './crew-options.ts'
import { drawnInputs, sharedInputs } from './inputs.ts'
import type { SharedInputs } from './inputs.ts'
import type { PayInput } from './input.ts'
import { goldPrice } from './price.ts'
import { loadTonnes } from './rates.ts'
import { slotOf } from './slot.ts'
import type { Slot } from './slot.ts'

/** Draws of everything together; each ground outcome is met by several of them. */
export const drawsTaken = 10_000
/** As many more would move a decile by less than it is printed to. */
const drawsWithManyOptions = 4_000
const many = 12

/** An option with all that is needed to judge it and to ask what it is worth to know more of its ground. */
export interface OptionBasis extends GroundedOption {
  readonly plan: WorkPlan
  readonly costAnswer: Answer
  readonly season: AssumedFigure
  readonly outcomes: OptionOutcomes
  /** Money above the same days at the wage, on average over all draws. */
  readonly surplus: number
}

export interface PayBasis {
  readonly options: readonly OptionBasis[]
  readonly notJudged: readonly NotJudged[]
  readonly shared: SharedInputs
  readonly slot: Slot
  readonly wage: AssumedFigure
  readonly currency: string
  readonly draws: number
}

export const cautions = [
  'Breaking new ground needs ground support, dust and air knowledge, permits and licensed people; local codes decide.',
  'Wages, taxes, insurance and reclamation are counted only as far as they are written down as costs.',
]

/** Every option with its outcomes, all on the same draws. */
export function payBasis(input: PayInput): PayBasis | NotEnough {
  const { mine, prices, costs, assume, grade } = input
  const wanted = (mine?.fields.currency as string | undefined) ?? moneyOf(prices[0] ?? costs[0] ?? ({ fields: {} } as Entry), 'amount')?.currency
  const price = goldPrice(prices, wanted)
  const lack = (sentence: string, wants: NotEnough['wanted']): NotEnough => ({ notEnough: true, sentence, wanted: wants, cautions })
  if (!price) return lack('Without a price of gold nothing can be said of pay.', [{ kind: 'price', why: 'what a fine ounce sells for, and when' }])
  if (!(price.median > 0)) return lack('The price of gold is written as nothing, so no work can pay.', [{ kind: 'price', why: 'what a fine ounce sells for today' }])
  if (grade.outcomes.panels.length === 0) return lack('No panel of the vein is left to be judged.', [{ kind: 'sample', why: 'from ground that is still there' }])
  const shared = sharedInputs(input, price)
  const slot = slotOf(assume, grade.outcomes.density.length)
  const wage = assume('wage to beat')
  const load = loadTonnes(input.work, assume)
  const planOf = (option: Pick<GroundedOption, 'entry' | 'steps' | 'metres' | 'waste' | 'name'>) => {
    const { entry } = option
    const id = `pay.costs.${slugOf(option.name)}`
    const sheet = costSheet({ entries: costs, currency: price.currency, option: entry, loadTonnes: load, id })
    const plan: WorkPlan = {
      steps: option.steps, metres: option.metres, waste: option.waste, costs: sheet.costs,
      crew: Math.max(1, (entry && numberOf(entry, 'people')) ?? ((mine ? wordsOf(mine, 'people').length : 0) || 2)),
      shift: ((entry && valueOf(entry, 'hours')) ?? assume('hours in a day').value) / assume('hours in a day').value,
      shiftsAWeek: (entry && numberOf(entry, 'shifts')) ?? assume('shifts a week').value,
    }
    checkPlan(plan, shared.middle, shared.terms)
    const weeks = entry && numberOf(entry, 'weeks')
    const season: AssumedFigure = weeks === undefined ? assume('season') : { name: 'season', value: weeks, low: weeks, high: weeks, unit: 'weeks', why: 'as the option says', entry: entry!.id }
    return { plan, costAnswer: sheet.answer, season }
  }
  const judged = input.options.map(entry => groundedOption(entry, input, slot))
  const notJudged = judged.filter((o): o is NotJudged => 'why' in o)
  let grounded = judged.filter((o): o is GroundedOption => !('why' in o))
  if (grounded.length === 0) {
    const { plan } = planOf({ entry: undefined, steps: ['break', 'muck', 'tram', 'crush', 'wash', 'clean up'], metres: 0, waste: 0, name: '' })
    const marginal = { ...plan, costs: { ...plan.costs, once: 0 } }
    grounded = [bestPanels(input, slot, ouncesToEarn(marginal, 1, shared.middle, { terms: { ...shared.terms, minimum: 0 }, wage: wage.value }))]
  }
  const planned = grounded.map(option => ({ ...option, ...planOf(option) }))
  const draws = planned.length > many ? drawsWithManyOptions : drawsTaken
  const outcomes = allOptionOutcomes({ options: planned, inputsAt: drawnInputs(shared, assume, draws), terms: shared.terms, draws })
  const options = planned.map((option, i): OptionBasis => ({ ...option, outcomes: outcomes[i]!, surplus: mean(surplusOf(outcomes[i]!, wage.value)) }))
    .sort((a, b) => b.surplus - a.surplus)
  return { options, notJudged, shared, slot, wage, currency: price.currency, draws }
}

/** A name as it stands in the id of a figure. */
export const slugOf = (name: string): string => name.trim().toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-|-$/g, '')
