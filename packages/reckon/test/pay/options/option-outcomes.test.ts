import { describe, expect, it } from 'vitest'
import { drawsFrom } from '../../../src/core/index.ts'
import { allOptionOutcomes, beatOdds, correlatedNormals, optionOutcomes, positiveAt, shareAt, surplusOf, workOutcome } from '../../../src/pay/index.ts'
import type { JudgedOption, SaleTerms, WorkInputs } from '../../../src/pay/index.ts'

const terms: SaleTerms = { fineness: 1, treatment: 0, minimum: 0, lots: 1, royalty: 0 }
const rates = { drive: 1, timber: 1, break: 0.25, muck: 2, tram: 2, crush: 1, wash: 1, 'clean up': 4 }
const costs = { once: 0, perPersonDay: 10, perDay: 0, perWeek: 0, perTonne: 0 }
const option = (ounces: number[]): JudgedOption => ({ plan: { steps: ['break', 'muck'], metres: 0, waste: 0, crew: 2, shift: 1, shiftsAWeek: 5, costs }, tonnes: ounces.map(() => 4), ounces })
const inputsAt = (k: number): WorkInputs => ({ rates, otherShare: 0, recovery: 0.5, price: 1000 + k, payable: 1 })

describe('options on common draws', () => {
  const options = [option([1, 2, 3]), option([1.1, 2.1, 3.1])]
  it('equals one outcome at a time, ground and inputs of the same draw together', () => {
    const [first] = allOptionOutcomes({ options, inputsAt, terms, draws: 7 })
    for (let k = 0; k < 7; k++) {
      const one = workOutcome(options[0]!.plan, { tonnes: 4, ounces: [1, 2, 3][k % 3]! }, inputsAt(k), terms)
      expect(first!.perDay[k]).toBe((one.income - one.cost) / one.personDays)
    }
  })
  it('in chunks it is the same, and can be stopped with what has come so far', () => {
    const whole = allOptionOutcomes({ options, inputsAt, terms, draws: 10 })
    const run = optionOutcomes({ options, inputsAt, terms, draws: 10, chunk: 4 })
    const first = run.next()
    expect(first.done).toBe(false)
    expect((first.value as { done: number }).done).toBe(4)
    const { outcomes } = first.value as { outcomes: typeof whole }
    expect([...outcomes[1]!.perDay.slice(0, 4)]).toEqual([...whole[1]!.perDay.slice(0, 4)])
    expect([...outcomes[1]!.perDay.slice(4)]).toEqual([0, 0, 0, 0, 0, 0])
  })
  it('an option that is always a little better always beats, however wide both are', () => {
    const outcomes = allOptionOutcomes({ options, inputsAt, terms, draws: 30 })
    const odds = beatOdds([...outcomes, undefined], 5)
    expect(odds[1]![0]).toBe(1)
    expect(odds[0]![1]).toBe(0)
    for (let i = 0; i < 3; i++) for (let j = 0; j < 3; j++) expect(odds[i]![j]! + odds[j]![i]!).toBe(1)
  })
  it('walking away leaves nothing above the wage', () => {
    const outcomes = allOptionOutcomes({ options: [option([0])], inputsAt, terms, draws: 3 })
    expect(beatOdds([undefined, ...outcomes], 0)[0]![1]).toBe(1)
    expect([...surplusOf(outcomes[0]!, 100)].every(s => s < 0)).toBe(true)
  })
  it('no ground takes no days and leaves nothing a day', () => {
    const empty: JudgedOption = { ...option([0]), tonnes: [0], ounces: [0] }
    expect([...allOptionOutcomes({ options: [empty], inputsAt, terms, draws: 2 })[0]!.perDay]).toEqual([0, 0])
  })
})

describe('numbers that move together', () => {
  it('have the correlation asked for, mean 0 and variance 1', () => {
    const count = 20_000, [a, b, c] =
      correlatedNormals([[1, 0.6, 0], [0.6, 1, 0.3], [0, 0.3, 1]], count, drawsFrom(3)) as [Float64Array, Float64Array, Float64Array]
    const product = (x: Float64Array, y: Float64Array) => x.reduce((sum, v, i) => sum + v * y[i]!, 0) / count
    // Four standard errors of a correlation of so many.
    const near = 4 / Math.sqrt(count)
    expect(Math.abs(product(a, b) - 0.6)).toBeLessThan(near)
    expect(Math.abs(product(b, c) - 0.3)).toBeLessThan(near)
    expect(Math.abs(product(a, c))).toBeLessThan(near)
    expect(Math.abs(product(a, a) - 1)).toBeLessThan(2 * near)
  })
  it('refuses a table by which no numbers can move', () => expect(() => correlatedNormals([[1, 2], [2, 1]], 1, drawsFrom(1))).toThrow())
})

describe('a figure in doubt', () => {
  const z = 1.2815515655446004
  it('has its deciles where they are stated', () => {
    expect(positiveAt({ median: 2, low: 1, high: 5 }, -z)).toBeCloseTo(1, 12)
    expect(positiveAt({ median: 2, low: 1, high: 5 }, z)).toBeCloseTo(5, 12)
    expect(shareAt({ median: 0.6, low: 0.5, high: 0.8 }, -z)).toBeCloseTo(0.5, 12)
    expect(shareAt({ median: 0.6, low: 0.5, high: 0.8 }, z)).toBeCloseTo(0.8, 12)
    expect(shareAt({ median: 0.9, low: 0.8, high: 1 }, 9)).toBe(1)
  })
  it('held for certain it stays', () => {
    expect(positiveAt({ median: 2, low: 2, high: 2 }, 3)).toBe(2)
    expect(shareAt({ median: 0, low: 0, high: 0 }, 3)).toBe(0)
  })
})
