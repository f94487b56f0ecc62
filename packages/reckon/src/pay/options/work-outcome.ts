import { InputError, positive } from '../../core/index.ts'

/** Steps of work on rock, in the order in which they follow each other. */
export const workSteps = ['drive', 'timber', 'break', 'muck', 'tram', 'crush', 'wash', 'clean up'] as const
export type WorkStep = typeof workSteps[number]

/** What goes through how many hands: fixed for an option, whatever the ground turns out to hold. */
export interface WorkPlan {
  readonly steps: readonly WorkStep[]
  /** Heading to be driven first, m, and the waste that it brings down, t: mucked, trammed and timbered, not crushed. */
  readonly metres: number
  readonly waste: number
  readonly crew: number
  /** Length of a shift as a share of the day in which the rates are stated; a person-day is one person's shift. */
  readonly shift: number
  readonly shiftsAWeek: number
  readonly costs: WorkCosts
}

/** Money out, by what it goes with. */
export interface WorkCosts {
  readonly once: number
  readonly perPersonDay: number
  /** A day that the crew works, whatever its number. */
  readonly perDay: number
  readonly perWeek: number
  /** A tonne crushed and washed. */
  readonly perTonne: number
}

/** The rock of one outcome: t to be treated and fine troy ounces in it. */
export interface Rock { readonly tonnes: number, readonly ounces: number }

/** What one outcome draws beside the ground. */
export interface WorkInputs {
  /** What one person does in a stated day, t; for `drive` m. */
  readonly rates: Readonly<Record<WorkStep, number>>
  /** Share of the days that goes into anything else, [0, 1). */
  readonly otherShare: number
  /** Share of the gold that ends in the pan. */
  readonly recovery: number
  /** Money for a fine troy ounce, and the share of it that the refiner pays. */
  readonly price: number
  readonly payable: number
}

/** What selling costs beside the share that the refiner keeps. */
export interface SaleTerms {
  /** Parts of gold in one part of what is sent, above 0 and up to 1. */
  readonly fineness: number
  /** Money an ounce sent (gross), the least that a lot is charged, and the number of lots. */
  readonly treatment: number
  readonly minimum: number
  readonly lots: number
  /** Share of what the refiner pays that goes to the owner of the ground. */
  readonly royalty: number
}

export interface WorkOutcome {
  readonly personDays: number
  readonly ouncesWon: number
  /** What comes in after refiner and royalty, and what goes out; wages are in neither. */
  readonly income: number
  readonly cost: number
}

/** Person-days that a plan takes on so much rock, all steps and the other work in. */
export function workDays(plan: WorkPlan, tonnes: number, { rates, otherShare }: Pick<WorkInputs, 'rates' | 'otherShare'>): number {
  let days = 0
  for (const step of plan.steps) {
    const amount = step === 'drive' ? plan.metres : step === 'muck' || step === 'tram' || step === 'timber' ? tonnes + plan.waste : tonnes
    days += amount / rates[step]
  }
  return days / (1 - otherShare) / plan.shift
}

/**
 * What a plan takes and brings when the ground and everything else turn out one way.
 *
 * income = (won × price × payable) × (1 − royalty) − max(treatment × won / fineness, minimum × lots), nothing when no gold is won.
 * @throws nothing: a caller checks plan and inputs once with {@link checkPlan}, since this runs tens of thousands of times
 * Source: plain accounting. That minimum charges rule small lots: published refiner terms, checks/grade-and-pay.md 7.7 (V).
 */
export function workOutcome(plan: WorkPlan, rock: Rock, inputs: WorkInputs, terms: SaleTerms): WorkOutcome {
  const personDays = workDays(plan, rock.tonnes, inputs)
  const days = personDays / plan.crew
  const { costs } = plan
  const ouncesWon = rock.ounces * inputs.recovery
  const charge = ouncesWon > 0 ? Math.max(terms.treatment * ouncesWon / terms.fineness, terms.minimum * terms.lots) : 0
  return {
    personDays, ouncesWon,
    income: ouncesWon * inputs.price * inputs.payable * (1 - terms.royalty) - charge,
    cost: costs.once + costs.perPersonDay * personDays + costs.perDay * days + costs.perWeek * days / plan.shiftsAWeek + costs.perTonne * rock.tonnes,
  }
}

/** On which terms gold is sold, and what a day is to leave. */
export interface Earning { readonly terms: SaleTerms, readonly wage: number }

/**
 * Ounces in the rock at which a person-day leaves just `wage`; infinite when no amount does (a price of nought, or treatment that eats it all).
 *
 * Income is the lesser of two straight lines of the ounces (charged by the ounce, or the least charge), so the answer is the larger of their two roots.
 */
export function ouncesToEarn(plan: WorkPlan, tonnes: number, inputs: WorkInputs, { terms, wage }: Earning): number {
  const { personDays, cost } = workOutcome(plan, { tonnes, ounces: 0 }, inputs, terms)
  const need = cost + wage * personDays
  const worth = inputs.recovery * inputs.price * inputs.payable * (1 - terms.royalty)
  const each = inputs.recovery * terms.treatment / terms.fineness
  if (need <= 0) return 0
  return worth - each > 0 ? Math.max(need / (worth - each), (need + terms.minimum * terms.lots) / worth) : Infinity
}

/** @throws InputError for a crew, shift or rate that is not above zero, a share outside its bounds, or less than nothing to drive */
export function checkPlan(plan: WorkPlan, inputs: WorkInputs, terms: SaleTerms): void {
  for (const field of ['crew', 'shift', 'shiftsAWeek'] as const) positive(plan[field], field)
  for (const step of plan.steps) positive(inputs.rates[step], `rates.${step}`, step === 'drive' ? 'metres a person-day above zero' : 'tonnes a person-day above zero')
  if (!(inputs.otherShare >= 0 && inputs.otherShare < 1)) throw new InputError('otherShare', inputs.otherShare, 'a share from 0 up to, not with, 1')
  for (const [field, share] of [['recovery', inputs.recovery], ['payable', inputs.payable], ['royalty', terms.royalty]] as const) {
    if (!(share >= 0 && share <= 1)) throw new InputError(field, share, 'a share from 0 to 1')
  }
  if (!(terms.fineness > 0 && terms.fineness <= 1)) throw new InputError('fineness', terms.fineness, 'a share above 0 and up to 1')
  if (!(plan.metres >= 0 && plan.waste >= 0)) throw new InputError('metres', plan.metres, 'zero or more')
}
