import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { InputError } from '../../src/core/index.ts'
import { breakEvenGrade, informationWorth, type Decision } from '../../src/pay/index.ts'

// Likelihoods V (decision-tree manual, dry/wet/soaking against no/open/closed structure); prior and payoffs M: Raiffa, Decision Analysis, 1968; thousands
const wildcatter: Decision = {
  prior: [0.5, 0.3, 0.2], payoffs: [[-70, 50, 200], [0, 0, 0]], likelihoods: [[0.6, 0.3, 0.1], [0.3, 0.4, 0.4], [0.1, 0.3, 0.5]], cost: 10,
}

describe('information worth against Raiffa\'s oil wildcatter', () => {
  const found = informationWorth(wildcatter)
  it('signals come with chances .41 .35 .24', () => expect(found.signalChances.map(chance => chance.toFixed(12))).toEqual(['0.410000000000', '0.350000000000', '0.240000000000']))
  it('drilling now is worth 20, with the test 32.5 before its cost and 22.5 after', () => {
    expect(found.without).toBeCloseTo(20, 12)
    expect(found.with).toBeCloseTo(32.5, 12)
    expect(found.without + found.net).toBeCloseTo(22.5, 12)
  })
  it('the test is worth 12.5, certainty 35', () => {
    expect(found.worth).toBeCloseTo(12.5, 12)
    expect(found.perfect).toBeCloseTo(35, 12)
  })
  it('drill unless there is no structure', () => expect([found.bestWithout, ...found.bestAfter]).toEqual([0, 1, 0, 0]))
})

describe('information worth against Ragsdale, Spreadsheet Modeling, ch. 15 (V)', () => {
  const found = informationWorth({ prior: [0.25, 0.75], payoffs: [[1, 0]], likelihoods: [[0.6, 0.2], [0.4, 0.8]] })
  it('P(oil | favourable) = .50 and P(oil | unfavourable) = .14285', () => {
    expect(found.signalChances[0]).toBeCloseTo(0.3, 12)
    expect(found.posteriors[0]?.[0]).toBeCloseTo(0.5, 12)
    expect(found.posteriors[1]?.[0]).toBeCloseTo(1 / 7, 12)
  })
  it('with one action nothing is worth knowing', () => expect([found.worth, found.perfect]).toEqual([0, 0]))
})

describe('information worth', () => {
  const exactly = (n: number) => ({ minLength: n, maxLength: n })
  const chances = (n: number) => fc.array(fc.integer({ min: 0, max: 50 }), exactly(n)).filter(w => w.some(x => x > 0))
    .map(w => w.map(x => x / w.reduce((a, b) => a + b, 0)))
  const shapes = fc.record({ states: fc.integer({ min: 1, max: 5 }), signals: fc.integer({ min: 1, max: 5 }), actions: fc.integer({ min: 1, max: 4 }) })
  const decisions = shapes.chain(({ states, signals, actions }) => fc.record({
    prior: chances(states),
    payoffs: fc.array(fc.array(fc.integer({ min: -100, max: 100 }), exactly(states)), exactly(actions)),
    columns: fc.array(chances(signals), exactly(states)),
  })).map(({ prior, payoffs, columns }): Decision =>
    ({ prior, payoffs, likelihoods: (columns[0] ?? []).map((_, signal) => columns.map(column => column[signal] ?? 0)) }))

  it('lies between nothing and certainty, and the posteriors average to the prior', () => {
    fc.assert(fc.property(decisions, (decision) => {
      const { worth, perfect, posteriors, signalChances } = informationWorth(decision)
      expect(worth).toBeGreaterThanOrEqual(0)
      expect(worth).toBeLessThanOrEqual(perfect + 1e-9)
      for (const [state, chance] of decision.prior.entries()) {
        const back = posteriors.reduce((sum, row, signal) => sum + (row?.[state] ?? 0) * (signalChances[signal] ?? 0), 0)
        expect(back).toBeCloseTo(chance, 9)
      }
    }), { seed: 71, numRuns: 400 })
  })

  it('a signal that names the state is worth as much as certainty; one that ignores it is worth nothing', () => {
    expect(informationWorth({ ...wildcatter, likelihoods: [[1, 0, 0], [0, 1, 0], [0, 0, 1]] }).worth).toBeCloseTo(35, 12)
    expect(informationWorth({ ...wildcatter, likelihoods: [[0.3, 0.3, 0.3], [0.7, 0.7, 0.7]] }).worth).toBeCloseTo(0, 12)
  })

  it('a signal that can\'t come has no posterior', () => {
    const found = informationWorth({ ...wildcatter, likelihoods: [[1, 1, 1], [0, 0, 0]] })
    expect(found).toMatchObject({ posteriors: [wildcatter.prior, null], bestAfter: [0, null] })
  })

  it.each<[string, Partial<Decision>, RegExp]>([
    ['chances that do not sum to 1', { prior: [0.5, 0.3, 0.1] }, /prior/], ['a negative chance', { prior: [1.2, -0.2, 0] }, /prior\[0\]/],
    ['no states', { prior: [] }, /prior/], ['no actions', { payoffs: [] }, /payoffs/],
    ['a short row', { payoffs: [[1, 2]] }, /payoffs\[0\]/], ['NaN', { payoffs: [[1, 2, NaN]] }, /payoffs\[0\]\[2\]/],
    ['a column that misses 1', { likelihoods: [[0.6, 0.3, 0.1], [0.3, 0.4, 0.4]] }, /state 0/],
    ['a negative cost', { cost: -1 }, /cost/],
  ])('refuses %s', (_, part, field) => {
    expect(() => informationWorth({ ...wildcatter, ...part })).toThrow(InputError)
    expect(() => informationWorth({ ...wildcatter, ...part })).toThrow(field)
  })
})

describe('break-even grade', () => {
  it('$120/t at 85 %, 98 % payable, $60/g less $1/g is 2.44165 g/t', () => {
    // own case, no published answer: checks/grade-and-pay.md section 7.6 (120 / 49.147 = 2.441655, there rounded up to 2.44166)
    expect(breakEvenGrade({ costPerTonne: 120, recovery: 0.85, payable: 0.98, price: 60, selling: 1 })).toBeCloseTo(2.44165, 5)
  })
  it('a tonne of that grade earns its cost', () => {
    const line = { costPerTonne: 75, recovery: 0.6, payable: 0.95, price: 80, selling: 2 }
    expect(breakEvenGrade(line) * line.recovery * line.payable * (line.price - line.selling)).toBeCloseTo(75, 10)
  })
  it('refuses a price below the cost of selling and shares above one', () => {
    expect(() => breakEvenGrade({ costPerTonne: 1, recovery: 0.5, payable: 1, price: 1, selling: 1 })).toThrow(/price/)
    expect(() => breakEvenGrade({ costPerTonne: 1, recovery: 85, payable: 1, price: 9, selling: 1 })).toThrow(/recovery/)
  })
})
