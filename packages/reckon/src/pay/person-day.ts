import { InputError, positive } from '../core/index.ts'

/** What a plan of work takes and yields, every figure as it might turn out in one outcome. */
export interface PersonDayInput {
  /** Rock to be broken, mucked, trammed, crushed and washed, t. */
  readonly tonnes: number
  /** Gold in that rock, fine troy ounces. */
  readonly ounces: number
  /** Share of the gold that ends in the pan, 0 to 1. */
  readonly recovery: number
  /** Money for a fine troy ounce, and the share of it that the refiner pays. */
  readonly price: number
  readonly payable: number
  /** Tonnes one person does in a day, each step on its own. */
  readonly breaking: number
  readonly moving: number
  readonly treating: number
  /** Share of the days that goes into anything else, [0, 1). */
  readonly otherShare: number
  readonly costs: Costs
  /** People, and days a week that they work. */
  readonly crew: number
  readonly daysAWeek: number
}

/** Money out, by what it goes with. */
export interface Costs {
  readonly once: number
  readonly perPersonDay: number
  /** A day that the crew works, whatever its number. */
  readonly perDay: number
  readonly perWeek: number
  readonly perTonne: number
}

export interface PersonDay {
  readonly personDays: number
  readonly ouncesWon: number
  readonly income: number
  readonly cost: number
  /** What each of them is left with for a day's work; negative when it costs them. */
  readonly perDay: number
}

/** Person-days that a tonne takes through all steps, the other work with it. */
export function personDaysPerTonne(input: Pick<PersonDayInput, 'breaking' | 'moving' | 'treating' | 'otherShare'>): number {
  positive(input.breaking, 'breaking', 'tonnes a person-day above zero')
  positive(input.moving, 'moving', 'tonnes a person-day above zero')
  positive(input.treating, 'treating', 'tonnes a person-day above zero')
  if (!(input.otherShare >= 0 && input.otherShare < 1)) throw new InputError('otherShare', input.otherShare, 'a share from 0 up to, not with, 1')
  return (1 / input.breaking + 1 / input.moving + 1 / input.treating) / (1 - input.otherShare)
}

/**
 * What a plan leaves each person for a day's work: (ounces × recovery × price × payable − costs) / person-days.
 * @throws InputError for a rate, tonnage or crew that is not above zero, or a share outside its bounds
 * Source: plain accounting; no published formula is needed. Weeks are person-days / (crew × days a week).
 */
export function personDay(input: PersonDayInput): PersonDay {
  positive(input.tonnes, 'tonnes')
  positive(input.crew, 'crew')
  positive(input.daysAWeek, 'daysAWeek')
  for (const share of ['recovery', 'payable'] as const) {
    if (!(input[share] >= 0 && input[share] <= 1)) throw new InputError(share, input[share], 'a share from 0 to 1')
  }
  const personDays = input.tonnes * personDaysPerTonne(input)
  const days = personDays / input.crew
  const { costs } = input
  const ouncesWon = input.ounces * input.recovery
  const income = ouncesWon * input.price * input.payable
  const cost = costs.once + costs.perPersonDay * personDays + costs.perDay * days + costs.perWeek * days / input.daysAWeek + costs.perTonne * input.tonnes
  return { personDays, ouncesWon, income, cost, perDay: (income - cost) / personDays }
}

/** The grade of the rock as worked, in ounces a tonne, at which a person-day leaves just `wage`. Costs paid once are spread over the tonnes given. */
export function breakEvenOunces(input: Omit<PersonDayInput, 'ounces'>, wage: number): number {
  const none = personDay({ ...input, ounces: 0 })
  const worth = input.recovery * input.price * input.payable
  return (none.cost + wage * none.personDays) / worth / input.tonnes
}
