import { breakEvenOunces, personDay, personDaysPerTonne } from '@lodebook/reckon/pay'
import type { PersonDayInput } from '@lodebook/reckon/pay'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

const plan: PersonDayInput = Object.freeze({
  tonnes: 10, ounces: 4, recovery: 0.7, price: 2000, payable: 0.97, breaking: 0.25, moving: 1, treating: 0.5, otherShare: 0.3,
  costs: Object.freeze({ once: 500, perPersonDay: 20, perDay: 10, perWeek: 100, perTonne: 5 }), crew: 2, daysAWeek: 5,
})

describe('person-day', () => {
  it('[W1] worked by hand: 10 t at 4 + 1 + 2 days a tonne and 30 % other work', () => {
    // 70 / 0.7 = 100 person-days, 50 days, 10 weeks. Income 4 × 0.7 × 2000 × 0.97 = 5432. Costs 500 + 2000 + 500 + 1000 + 50 = 4050.
    const day = personDay(plan)
    expect(personDaysPerTonne(plan)).toBeCloseTo(10, 12)
    expect(day.personDays).toBeCloseTo(100, 10)
    expect(day.income).toBeCloseTo(5432, 9)
    expect(day.cost).toBeCloseTo(4050, 9)
    expect(day.perDay).toBeCloseTo(13.82, 9)
  })

  it('[W2] at the break-even grade a day leaves just the wage', () => {
    fc.assert(fc.property(fc.double({ min: -100, max: 500, noNaN: true }), fc.double({ min: 0.5, max: 500, noNaN: true }), (wage, tonnes) => {
      const at = breakEvenOunces({ ...plan, tonnes }, wage) * tonnes
      expect(personDay({ ...plan, tonnes, ounces: at }).perDay).toBeCloseTo(wage, 6)
    }), { seed: 7 })
  })

  it('[W3] own regression case (checks/grade-and-pay.md 7.6): $120/t, 85 %, 98 %, $59 a gram net make 2.44166 g/t', () => {
    // No wage and no days to pay: the cost is 120 a tonne, the price 59 a gram.
    const costs = { once: 0, perPersonDay: 0, perDay: 0, perWeek: 0, perTonne: 120 }
    const ounces = breakEvenOunces({ ...plan, recovery: 0.85, payable: 0.98, price: 59 * 31.1034768, costs }, 0)
    // One unit of the last printed figure: 2.441655 was printed as 2.44166.
    expect(Math.abs(ounces * 31.1034768 - 2.44166)).toBeLessThan(0.00001)
  })

  it('[W4] rates of zero, shares beyond one and no rock are refused by name', () => {
    expect(() => personDay({ ...plan, breaking: 0 })).toThrow(/breaking/)
    expect(() => personDay({ ...plan, recovery: 1.1 })).toThrow(/recovery/)
    expect(() => personDay({ ...plan, otherShare: 1 })).toThrow(/otherShare/)
    expect(() => personDay({ ...plan, tonnes: 0 })).toThrow(/tonnes/)
    expect(() => personDay({ ...plan, tonnes: Number.NaN })).toThrow(/tonnes/)
  })
})
