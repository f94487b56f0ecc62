import { DegenerateError, InputError } from '@lodebook/reckon'
import { bagPrecision, nuggetCount, samplePlan, samplingError, variancePerGram } from '@lodebook/reckon/sampling'
import type { PlanAsked } from '@lodebook/reckon/sampling'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

const asked: PlanAsked = {
  gradeGPerT: 12, liberationSizeCm: 0.05, fragmentCm: 5, relativeSd: 0.35, finalMassG: 500, finalSizeCm: 0.1,
  crushSizesCm: [2, 1, 0.5, 0.2, 0.1], cut: true, mostG: 50_000,
  work: { takeKg: 3, crushKg: 10, crushFromCm: 5, crushToCm: 0.1, split: 5 },
}

/** Every way to crush coarser to finer and halve in between, one by one. */
function bruteForce(a: PlanAsked, bagG: number): { minutes: number, variance: number }[] {
  const sizes = [a.fragmentCm, ...a.crushSizesCm].sort((x, y) => y - x), need = Math.max(0, Math.ceil(Math.log2(bagG / a.finalMassG) - 1e-9))
  const bond = (d: number) => 1 / Math.sqrt(d), whole = bond(a.work.crushToCm) - bond(a.work.crushFromCm)
  const out: { minutes: number, variance: number }[] = []
  const go = (size: number, k: number, minutes: number, variance: number): void => {
    const grams = bagG / 2 ** k
    if (k === need && sizes[size]! <= a.finalSizeCm) out.push({ minutes, variance })
    if (k < need) go(size, k + 1, minutes + a.work.split, variance + variancePerGram(a, sizes[size]!) * (2 / grams - 1 / grams))
    if (size + 1 < sizes.length) go(size + 1, k, minutes + a.work.crushKg * grams / 1000 * (bond(sizes[size + 1]!) - bond(sizes[size]!)) / whole, variance)
  }
  go(0, 0, a.work.takeKg * bagG / 1000, (a.cut ? variancePerGram(a, a.liberationSizeCm) : variancePerGram(a, a.fragmentCm)) / bagG)
  return out
}

describe('what a bag can tell at best', () => {
  it('[SP1] is Gy\'s error above the size of the gold, and stays as it is at that size below it', () => {
    const { relativeSd } = samplingError({ nominalSizeCm: 1, massG: 3000, gradeGPerT: 12, liberationSizeCm: 0.05 })
    expect(Math.sqrt(variancePerGram(asked, 1) / 3000)).toBeCloseTo(relativeSd, 12)
    expect(variancePerGram(asked, 0.01)).toBe(variancePerGram(asked, 0.05))
  })

  it('[SP2] is Poisson\'s error of the grains it counts, and the chance of none with it', () => {
    const { grains, atBest, chanceOfNone } = bagPrecision(asked, 3000, 5)
    // Clifton et al. 1969 and Poisson's law (M): n grains leave 1/sqrt(n), and exp(-n) of holding none.
    const grainMg = 3000 * 12 / 1000 / grains
    const counted = nuggetCount({ massG: 3000, gradeGPerT: 12, grainMg })
    expect(counted.expected).toBeCloseTo(grains, 9)
    expect(counted.relativeSd).toBeCloseTo(atBest, 9)
    expect(chanceOfNone).toBeCloseTo(Math.exp(-grains), 12)
  })
})

describe('a plan of crushing and halving', () => {
  it('[SP3] keeps within what was wanted, ends small and fine enough, and its errors add up by squares', () => {
    const plan = samplePlan(asked)
    expect(plan.reached).toBe(true)
    expect(plan.relativeSd).toBeLessThanOrEqual(asked.relativeSd)
    expect(plan.stages.at(-1)!.toG).toBeLessThanOrEqual(asked.finalMassG)
    expect(plan.stages.at(-1)!.sizeCm).toBeLessThanOrEqual(asked.finalSizeCm)
    expect(Math.hypot(plan.bagSd, ...plan.stages.map(s => s.relativeSd))).toBeCloseTo(plan.relativeSd, 12)
    plan.stages.forEach((s, i) => { if (i > 0) expect(s.fromG).toBeCloseTo(plan.stages[i - 1]!.toG, 9) })
  })

  it('[SP4] no way that crushes and halves the same bag does better (every way tried, one by one)', () => {
    const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })
    fc.assert(fc.property(between(0.15, 1), between(3, 40), fc.boolean(), between(0.02, 0.2),
      (relativeSd, gradeGPerT, cut, liberationSizeCm) => {
        const mine = { ...asked, relativeSd, gradeGPerT, cut, liberationSizeCm, mostG: 12_000 }, plan = samplePlan(mine)
        let least = Infinity
        for (let bagG = 500; bagG <= 12_000 * (1 + 1e-9); bagG *= 1.1) {
          for (const way of bruteForce(mine, bagG)) if (Math.sqrt(way.variance) <= relativeSd) least = Math.min(least, way.minutes)
        }
        if (plan.reached) expect(plan.minutes).toBeCloseTo(least, 6)
        else expect(least).toBe(Infinity)
      }), { numRuns: 30, seed: 4 })
  })

  it('[SP5] says so when nothing that can be carried out reaches it, and gives the nearest', () => {
    const plan = samplePlan({ ...asked, relativeSd: 0.01 })
    expect(plan.reached).toBe(false)
    expect(plan.relativeSd).toBeGreaterThan(0.01)
  })

  it('[SP6] refuses what it cannot use, and does not change its argument', () => {
    expect(() => samplePlan({ ...asked, crushSizesCm: [2, 1] })).toThrow(DegenerateError)
    for (const wrong of [{ gradeGPerT: 0 }, { relativeSd: Number.NaN }, { fragmentCm: -1 }, { finalMassG: Infinity }, { mostG: 10 }]) {
      expect(() => samplePlan({ ...asked, ...wrong })).toThrow(InputError)
    }
    const frozen: PlanAsked = Object.freeze({ ...asked, crushSizesCm: Object.freeze([0.1, 2]) })
    expect(samplePlan(frozen).reached).toBe(true)
  })
})
