import { describe, expect, it } from 'vitest'
import { panGrade, weightedCountRange } from '../../src/assay/index.ts'
import { drawsFrom } from '../../src/core/index.ts'
import { poissonRange, wilsonRange } from '../../src/statistics/index.ts'

const poisson = (draws: ReturnType<typeof drawsFrom>, mean: number): number => {
  let [k, product] = [0, draws.uniform()]
  for (const floor = Math.exp(-mean); product > floor; k++) product *= draws.uniform()
  return k
}

describe('range of a weighted count', () => {
  it.each([1, 4, 19])('one class of grains is Garwood\'s range (%i grains)', (count) => {
    const [range, garwood] = [weightedCountRange([{ count, mgEach: 0.4 }], 0.9), poissonRange(count, 0.9)]
    expect(range.low).toBeCloseTo(0.4 * garwood.low, 9)
    expect(range.high).toBeCloseTo(0.4 * garwood.high, 9)
  })
  it('splitting one class in two of the same mass changes nothing', () => {
    const [one, two] = [[{ count: 7, mgEach: 0.4 }], [{ count: 3, mgEach: 0.4 }, { count: 4, mgEach: 0.4 }]].map(c => weightedCountRange(c, 0.8))
    expect(two!.high).toBeCloseTo(one!.high, 12)
  })
  it('holds the true mean at least as often as stated, for mixed classes', () => {
    const draws = drawsFrom(8)
    let held = 0
    for (let k = 0; k < 3000; k++) {
      const classes = [{ count: poisson(draws, 1.5), mgEach: 3 }, { count: poisson(draws, 6), mgEach: 0.5 }]
      const { low, high } = weightedCountRange(classes, 0.8)
      if (low <= 7.5 && 7.5 <= high) held++
    }
    expect(held / 3000).toBeGreaterThan(0.79)
    expect(held / 3000).toBeLessThan(0.95)
  })
})

describe('pan grade', () => {
  it('8 mg in 4 kg is 2 g/t; a recovery of 18 in 20 makes it 2.22', () => {
    expect(panGrade({ dryMassG: 4000, goldMg: 8 }).gradeGPerT).toBeCloseTo(2, 14)
    expect(panGrade({ dryMassG: 4000, goldMg: 8, recovery: { found: 18, seeded: 20 } }).gradeGPerT).toBeCloseTo(2 / 0.9, 13)
  })
  it('colours alone, full recovery: Garwood\'s range', () => {
    const pan = panGrade({ dryMassG: 1000, colours: [{ count: 5, mgEach: 0.3 }], confidence: 0.9 })
    const garwood = poissonRange(5, 0.9)
    expect(pan.gradeGPerT).toBeCloseTo(1.5, 14)
    expect(pan.low).toBeCloseTo(0.3 * garwood.low, 9)
    expect(pan.high).toBeCloseTo(0.3 * garwood.high, 9)
    expect(pan.assumed).toEqual({ recovery: 1 })
  })
  it('many grains: what is left is Wilson\'s doubt of the recovery', () => {
    const pan = panGrade({ dryMassG: 1000, colours: [{ count: 1e9, mgEach: 1e-8 }], recovery: { found: 15, seeded: 20 } })
    const { low, high } = wilsonRange(15, 20, 0.8)
    expect(pan.high / pan.gradeGPerT).toBeCloseTo(0.75 / low, 3)
    expect(pan.low / pan.gradeGPerT).toBeCloseTo(0.75 / high, 3)
  })
  it('weighed and counted: the weight gives the grade, the count its doubt', () => {
    const both = panGrade({ dryMassG: 1000, goldMg: 3, colours: [{ count: 5, mgEach: 0.3 }], scaleSdMg: 0, confidence: 0.9 })
    expect(both.gradeGPerT).toBeCloseTo(3, 14)
    expect(both.high).toBeCloseTo(0.6 * poissonRange(5, 0.9).high, 9)
    const rough = panGrade({ dryMassG: 1000, goldMg: 3, colours: [{ count: 5, mgEach: 0.3 }], scaleSdMg: 2, confidence: 0.9 })
    expect(rough.high).toBeGreaterThan(both.high)
    expect(rough.low).toBe(0)
  })
  it('nothing seen: an upper limit, not a zero', () => {
    const pan = panGrade({ dryMassG: 2000, colours: [{ count: 0, mgEach: 0.5 }], confidence: 0.95 })
    expect(pan.nothingSeen).toBe(true)
    expect([pan.gradeGPerT, pan.low]).toEqual([0, 0])
    expect(pan.high).toBeCloseTo(-Math.log(0.05) * 0.5 / 2, 10)
    const half = panGrade({ dryMassG: 2000, colours: [{ count: 0, mgEach: 0.5 }], recovery: { found: 10, seeded: 20 }, confidence: 0.95 })
    expect(half.high).toBeGreaterThan(2 * pan.high)
  })
  it('weighed but not counted: a grain mass is assumed, and said', () => {
    expect(panGrade({ dryMassG: 1000, goldMg: 4 }).assumed).toEqual({ grain_mg: 0.5, scale_sd_mg: 1, recovery: 1 })
    expect(panGrade({ dryMassG: 1000, goldMg: 0.2 }).assumed.grain_mg).toBe(0.2)
    expect(panGrade({ dryMassG: 1000, goldMg: 4, grainMg: 2 }).high).toBeGreaterThan(panGrade({ dryMassG: 1000, goldMg: 4, grainMg: 0.1 }).high)
  })
  it('holds the true grade about as often as stated: grains by chance, a recovery that is itself tested', () => {
    const draws = drawsFrom(12)
    let held = 0
    const repeats = 4000
    for (let k = 0; k < repeats; k++) {
      const recovery = 0.8
      const classes = [{ mg: 2, expected: 2.5 }, { mg: 0.3, expected: 12 }].map(c => ({ count: poisson(draws, c.expected * recovery), mgEach: c.mg }))
      const found = Array.from({ length: 30 }, () => draws.uniform() < recovery ? 1 : 0).reduce<number>((a, b) => a + b, 0)
      const { low, high } = panGrade({ dryMassG: 3000, colours: classes, recovery: { found, seeded: 30 } })
      const truth = (2 * 2.5 + 0.3 * 12) / 3
      if (low <= truth && truth <= high) held++
    }
    expect(held / repeats).toBeGreaterThan(0.78)
    expect(held / repeats).toBeLessThan(0.93)
  })
  it.each([
    [{ dryMassG: 0, goldMg: 1 }, 'dry_mass_g'],
    [{ dryMassG: 1000 }, 'gold_mg'],
    [{ dryMassG: 1000, goldMg: -1 }, 'gold_mg'],
    [{ dryMassG: 1000, goldMg: 0, colours: [{ count: 2, mgEach: 1 }] }, 'gold_mg'],
    [{ dryMassG: 1000, colours: [{ count: 1.5, mgEach: 1 }] }, 'colours[0].count'],
    [{ dryMassG: 1000, colours: [{ count: 1, mgEach: 0 }] }, 'colours[0].mg_each'],
    [{ dryMassG: 1000, goldMg: 1, recovery: { found: 0, seeded: 20 } }, 'recovery.found'],
    [{ dryMassG: 1000, goldMg: 1, recovery: { found: 21, seeded: 20 } }, 'recovery.found'],
    [{ dryMassG: 1000, goldMg: 1, confidence: 1 }, 'confidence'],
  ])('refuses %j naming %s', (pan, field) => { expect(() => panGrade(pan)).toThrow(field) })
})
