import { describe, expect, it } from 'vitest'
import { cashLine, cashWeeks, changingConditions, decile, deepestHole, levelReached, netPresentValue, updatedRate, weeklyFlows } from '../../../src/pay/index.ts'

describe('a rate learnt from the log', () => {
  const prior = { median: 0.25, low: 0.12, high: 0.5 }
  it('is the prior until there is a log', () => expect(updatedRate(prior, [])).toMatchObject({ ...prior, fromLogs: 0 }))
  it('goes over to the log as shifts come in, and narrows to the doubt about conditions', () => {
    const shifts = (n: number) => Array.from({ length: n }, (_, i) => ({ amount: 0.5 * (i % 2 === 0 ? 1.1 : 0.9), days: 1 }))
    const [few, many] = [updatedRate(prior, shifts(2)), updatedRate(prior, shifts(400))]
    expect(few.median).toBeGreaterThan(prior.median)
    expect(few.median).toBeLessThan(0.5)
    expect(many.median).toBeCloseTo(0.5, 2)
    expect(many.fromLogs).toBeGreaterThan(0.99)
    expect(Math.log(many.high / many.low) / (2 * decile)).toBeCloseTo(changingConditions, 2)
  })
  // R: conjugate normal by hand, as checks/grade-and-pay.md 8.7: four shifts all alike, s2 = 4 x 0.35^2 / 7.
  it('weighs prior and log by precision', () => {
    const sd = Math.log(0.5 / 0.12) / (2 * decile), s2 = 4 * 0.35 ** 2 / 7
    const weight = (4 / s2) / (4 / s2 + 1 / sd ** 2)
    const found = updatedRate(prior, Array.from({ length: 4 }, () => ({ amount: 1, days: 2 })))
    expect(found.fromLogs).toBeCloseTo(weight, 12)
    expect(Math.log(found.median)).toBeCloseTo(weight * Math.log(0.5) + (1 - weight) * Math.log(0.25), 12)
  })
  it('a figure that the crew holds for certain is not moved', () => expect(updatedRate({ median: 1, low: 1, high: 1 }, [{ amount: 9, days: 1 }]).median).toBe(1))
  it('refuses a shift with nothing done', () => expect(() => updatedRate(prior, [{ amount: 0, days: 1 }])).toThrow(/amount/))
})

describe('money in hand', () => {
  const one = { weeks: 4, once: 100, running: 200, income: 1000, lots: 2, delay: 1 }
  // R: by hand
  it('pays once at the start, runs evenly, is paid lot by lot', () => {
    expect([...cashLine(one, 6)]).toEqual([-100, -150, -200, 250, 200, 700, 700])
    expect(cashWeeks(one)).toBe(5)
    expect(deepestHole(cashLine(one, 6))).toBe(200)
  })
  it('ends at income less all costs, whatever the order', () => {
    for (const lots of [1, 2, 3, 7]) expect(cashLine({ ...one, lots }, 20).at(-1)).toBeCloseTo(700, 9)
  })
  it('its flows at no interest are worth its end', () => expect(netPresentValue(0, weeklyFlows(cashLine(one, 9)))).toBeCloseTo(700, 9))
  it('work of no length costs at once', () => expect([...cashLine({ ...one, weeks: 0 }, 1)]).toEqual([-300, 700]))
})

describe('where a level is reached', () => {
  it('rising and falling', () => {
    expect(levelReached(x => x * x, 9, 0, 100)).toBeCloseTo(3, 6)
    expect(levelReached(x => 10 / x, 2, 0.1, 100)).toBeCloseTo(5, 6)
  })
  it('is not known where it is not reached', () => {
    expect(levelReached(x => x, 200, 0, 100)).toBeUndefined()
    expect(levelReached(() => NaN, 0, 0, 1)).toBeUndefined()
  })
})
