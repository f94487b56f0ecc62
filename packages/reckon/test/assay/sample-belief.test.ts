import { describe, expect, it } from 'vitest'
import { sampleBelief } from '../../src/assay/index.ts'
import type { GoldLook } from '../../src/assay/index.ts'
import { drawsFrom } from '../../src/core/index.ts'

const wide = { logMean: 1, logSd: 50 } // next to no prior at all
const assay = (grade: number, change: Partial<GoldLook> = {}): GoldLook =>
  ({ mass: 30, grain: 1e-4, recovery: 1, relativeSd: 0.1, found: { grade }, ...change })
const poisson = (draws: ReturnType<typeof drawsFrom>, mean: number): number => {
  let [k, product] = [0, draws.uniform()]
  for (const floor = Math.exp(-mean); product > floor; k++) product *= draws.uniform()
  return k
}

describe('sample belief', () => {
  it('fine gold: assays are averaged, and their errors shrink by the root of their number', () => {
    const one = sampleBelief([assay(10)], wide)
    expect(one.median).toBeCloseTo(10, 0)
    expect(one.logSd).toBeCloseTo(0.1, 2)
    const four = sampleBelief([assay(9), assay(10), assay(11), assay(10)], wide)
    expect(four.logSd).toBeCloseTo(0.05, 2)
    expect(four.mean).toBeGreaterThan(9.9)
    expect(four.mean).toBeLessThan(10.1)
  })
  it('keeps its accuracy for errors much finer than the first grid', () => {
    const sharp = sampleBelief([assay(10, { relativeSd: 0.001, grain: 1e-9 })], wide)
    expect(sharp.median).toBeCloseTo(10, 4)
    // 10 g/t in 30 g is 3e8 grains of 1e-9 mg: their own share is not nothing
    expect(sharp.logSd).toBeCloseTo(Math.sqrt(1e-6 + 1 / 3e8), 7)
  })
  it('a surer look weighs more', () => {
    const { median } = sampleBelief([assay(8, { relativeSd: 0.05 }), assay(16, { relativeSd: 0.4 })], wide)
    expect(median).toBeGreaterThan(8)
    expect(median).toBeLessThan(8.6)
  })
  it('coarse gold: grains are counted over the mass of both portions, so a big pan outweighs a small assay', () => {
    // 1 mg grains, 4 kg at 5 g/t: 20 grains; 30 g: 0.15 of a grain. An assay of 33 g/t is one grain.
    const pan: GoldLook = { mass: 4000, grain: 1, recovery: 1, relativeSd: 0, found: { grade: 5 } }
    const lucky: GoldLook = { mass: 30, grain: 1, recovery: 1, relativeSd: 0, found: { grade: 100 / 3 } }
    const both = sampleBelief([pan, lucky], wide)
    // exactly: 21 grains in 4.03 kg, Gamma(21) without a prior
    expect(both.mean).toBeCloseTo(21 / 4.03, 2)
    expect(both.logSd).toBeCloseTo(Math.sqrt(0.04881), 2) // trigamma(21)
  })
  it('a look that reads low by chance is not surer than one that reads high: over many samples the mean is right', () => {
    const draws = drawsFrom(44)
    const truth = 6 // g/t; 1 mg grains in 1 kg: six grains a look
    let sum = 0
    const repeats = 1500
    for (let k = 0; k < repeats; k++) {
      const looks = [0, 1, 2].map((): GoldLook => ({
        mass: 1000, grain: 1, recovery: 1, relativeSd: 0.3,
        found: { grade: poisson(draws, truth) * Math.max(0.05, 1 + 0.3 * draws.normal()) } }))
      sum += sampleBelief(looks, { logMean: Math.log(truth), logSd: 2 }).mean
    }
    expect(Math.abs(sum / repeats / truth - 1)).toBeLessThan(0.06)
  })
  it('its 80 % range holds the truth 80 times in 100 when grades come from the prior', () => {
    const draws = drawsFrom(91)
    const prior = { logMean: Math.log(5), logSd: 1 }
    let held = 0
    const repeats = 1200
    for (let k = 0; k < repeats; k++) {
      const grade = Math.exp(prior.logMean + prior.logSd * draws.normal())
      const kinds = [{ mass: 2000, grain: 0.8, recovery: 0.9, relativeSd: 0.1 }, { mass: 30, grain: 0.8, recovery: 1, relativeSd: 0.05 }]
      const looks = kinds.map((look): GoldLook => {
        const count = poisson(draws, grade * look.mass * look.recovery / (1000 * look.grain))
        const read = count * look.grain * 1000 / look.mass * (1 + look.relativeSd * draws.normal())
        return { ...look, found: count === 0 ? { below: 0.05 } : { grade: Math.max(0, read) } }
      })
      const { low, high } = sampleBelief(looks, prior)
      if (low <= grade && grade <= high) held++
    }
    // three standard deviations of such a count: 0.035
    expect(Math.abs(held / repeats - 0.8)).toBeLessThan(0.035)
  })
  it('nothing found is evidence of little, by how much was looked at; never half a limit', () => {
    const nothing = (mass: number): GoldLook => ({ mass, grain: 0.5, recovery: 1, relativeSd: 0.1, found: { grade: 0 } })
    const [small, large] = [sampleBelief([nothing(30)], { logMean: 1, logSd: 1 }), sampleBelief([nothing(5000)], { logMean: 1, logSd: 1 })]
    expect(small.median).toBeGreaterThan(1.8) // the prior's 2.7, hardly moved: 30 g would hold none anyhow
    expect(large.high).toBeLessThan(0.7)
  })
  it('a limit pulls down as far as it should and no further', () => {
    const below = sampleBelief([assay(0, { found: { below: 1 } })], { logMean: Math.log(5), logSd: 1 })
    const above = sampleBelief([assay(0, { found: { above: 100 } })], { logMean: Math.log(5), logSd: 1 })
    expect(below.high).toBeLessThan(1.05)
    expect(above.low).toBeGreaterThan(90)
  })
  it('a limit of many grains, by the normal tail, joins one of few, by the sum', () => {
    const at = (below: number) =>
      sampleBelief([{ mass: 1000, grain: 1, recovery: 1, relativeSd: 0.1, found: { below } }], { logMean: Math.log(150), logSd: 1 }).median
    expect(Math.abs(Math.log(at(150.5) / at(149.5)))).toBeLessThan(0.02)
  })
  it('huge portions and grades overflow nothing', () => {
    const belief = sampleBelief([{ mass: 2e6, grain: 0.1, recovery: 1, relativeSd: 0.05, found: { below: 0.005 } }], { logMean: 0, logSd: 3 })
    expect(belief.high).toBeGreaterThan(0)
    expect(belief.high).toBeLessThan(0.01)
    expect(Number.isFinite(sampleBelief([assay(5e4, { mass: 1e5 })], wide).mean)).toBe(true)
  })
  it('takes its prior out again: the evidence does not depend on it', () => {
    const looks = [assay(12, { relativeSd: 0.2 })]
    const [a, b] = [sampleBelief(looks, { logMean: 0, logSd: 2 }).evidence, sampleBelief(looks, { logMean: 4, logSd: 3 }).evidence]
    expect(a.logValue).toBeCloseTo(b.logValue, 2)
    expect(Math.abs(a.variance / b.variance - 1)).toBeLessThan(0.05)
  })
  it.each([
    [{ mass: 0 }, 'looks[0].mass'], [{ grain: -1 }, 'looks[0].grain'], [{ recovery: 1.1 }, 'looks[0].recovery'], [{ relativeSd: NaN }, 'looks[0].relativeSd'],
    [{ found: { grade: -1 } }, 'looks[0].found'],
  ])('refuses %j naming %s', (change, field) => { expect(() => sampleBelief([assay(1, change)], wide)).toThrow(field) })
  it('refuses no looks and no doubt in the prior', () => {
    expect(() => sampleBelief([], wide)).toThrow('no looks')
    expect(() => sampleBelief([assay(1)], { logMean: 0, logSd: 0 })).toThrow('prior.logSd')
  })
})
