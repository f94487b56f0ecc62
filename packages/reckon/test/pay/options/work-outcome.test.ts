import { describe, expect, it } from 'vitest'
import { InputError } from '../../../src/core/index.ts'
import { breakEvenGrade, checkPlan, ouncesToEarn, workDays, workOutcome } from '../../../src/pay/index.ts'
import type { SaleTerms, WorkInputs, WorkPlan } from '../../../src/pay/index.ts'

const rates = { drive: 0.1, timber: 2, break: 0.25, muck: 2, tram: 2, crush: 1, wash: 1, 'clean up': 4 }
const inputs: WorkInputs = { rates, otherShare: 0.2, recovery: 0.7, price: 2000, payable: 0.97 }
const terms: SaleTerms = { fineness: 0.85, treatment: 0, minimum: 0, lots: 1, royalty: 0 }
const plan: WorkPlan = {
  steps: ['break', 'muck', 'tram', 'crush', 'wash'], metres: 0, waste: 0, crew: 2, shift: 1, shiftsAWeek: 5,
  costs: { once: 300, perPersonDay: 10, perDay: 5, perWeek: 50, perTonne: 2 },
}

describe('what a piece of work takes and brings', () => {
  // R: by hand. 10 t: (40 + 5 + 5 + 10 + 10) / 0.8 = 87.5 person-days, 43.75 days, 8.75 weeks.
  it('adds up by hand', () => {
    const one = workOutcome(plan, { tonnes: 10, ounces: 6 }, inputs, terms)
    expect(one.personDays).toBeCloseTo(87.5, 10)
    expect(one.ouncesWon).toBeCloseTo(4.2, 10)
    expect(one.income).toBeCloseTo(4.2 * 2000 * 0.97, 8)
    expect(one.cost).toBeCloseTo(300 + 875 + 218.75 + 437.5 + 20, 8)
  })
  it('drives metres, and mucks, trams and timbers the waste too, without crushing it', () => {
    const driven = { ...plan, steps: ['drive', 'timber', 'muck', 'tram', 'crush'] as const, metres: 2, waste: 8 }
    expect(workDays(driven, 1, inputs)).toBeCloseTo((20 + 9 / 2 + 9 / 2 + 9 / 2 + 1) / 0.8, 10)
  })
  it('half a day a shift takes twice the person-days', () => expect(workDays({ ...plan, shift: 0.5 }, 10, inputs)).toBeCloseTo(175, 10))
  it('a least charge rules a small lot, the charge by the ounce a large one', () => {
    const charged = { ...terms, treatment: 1.25, minimum: 75, lots: 2 }
    expect(workOutcome(plan, { tonnes: 1, ounces: 1 }, inputs, charged).income).toBeCloseTo(0.7 * 2000 * 0.97 - 150, 8)
    expect(workOutcome(plan, { tonnes: 1, ounces: 1000 }, inputs, charged).income).toBeCloseTo(700 * 2000 * 0.97 - 1.25 * 700 / 0.85, 6)
    expect(workOutcome(plan, { tonnes: 1, ounces: 0 }, inputs, charged).income).toBe(0)
  })
  // V: a refiner's settlement, checks/grade-and-pay.md 7.7: 732.667 oz fine, 99 % payable = 725.340 oz.
  it('pays the payable share of fine ounces as a published settlement does', () => {
    expect(workOutcome(plan, { tonnes: 1, ounces: 732.667 }, { ...inputs, recovery: 1, payable: 0.99, price: 1 }, terms).income).toBeCloseTo(725.34, 3)
  })
})

describe('ounces that earn a wage', () => {
  it.each([0, 150])('put back in leave just %d a day, whichever charge rules', (wage) => {
    for (const charge of [terms, { ...terms, treatment: 5, minimum: 75, lots: 3, royalty: 0.05 }, { ...terms, treatment: 200 }]) {
      const ounces = ouncesToEarn(plan, 10, inputs, { terms: charge, wage })
      const one = workOutcome(plan, { tonnes: 10, ounces }, inputs, charge)
      expect((one.income - one.cost) / one.personDays).toBeCloseTo(wage, 8)
    }
  })
  it('agrees with the break-even grade when there are no charges', () => {
    const none = workOutcome(plan, { tonnes: 10, ounces: 0 }, inputs, terms)
    const grade = breakEvenGrade({ costPerTonne: none.cost / 10, recovery: 0.7, payable: 0.97, price: 2000, selling: 0 })
    expect(ouncesToEarn(plan, 10, inputs, { terms, wage: 0 }) / 10).toBeCloseTo(grade, 12)
  })
  it('are without end when gold sells for nothing or treatment eats it', () => {
    expect(ouncesToEarn(plan, 10, { ...inputs, price: 0 }, { terms, wage: 0 })).toBe(Infinity)
    expect(ouncesToEarn(plan, 10, inputs, { terms: { ...terms, treatment: 9999 }, wage: 0 })).toBe(Infinity)
  })
})

it('refuses rates, crews and shares that can not be', () => {
  expect(() => checkPlan(plan, { ...inputs, rates: { ...rates, crush: 0 } }, terms)).toThrow(/rates\.crush/)
  expect(() => checkPlan({ ...plan, crew: 0 }, inputs, terms)).toThrow(InputError)
  expect(() => checkPlan(plan, { ...inputs, otherShare: 1 }, terms)).toThrow(/otherShare/)
  expect(() => checkPlan(plan, { ...inputs, recovery: NaN }, terms)).toThrow(/recovery/)
  expect(() => checkPlan(plan, inputs, { ...terms, fineness: 0 })).toThrow(/fineness/)
  expect(() => checkPlan(plan, { ...inputs, rates: { ...rates, timber: 0 } }, terms)).not.toThrow()
})
