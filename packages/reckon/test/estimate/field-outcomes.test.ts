import { drawsFrom, InputError } from '@lodebook/reckon'
import { FieldGround, fieldOutcomes, fieldOutcomesPlain, logFieldPosterior } from '@lodebook/reckon/estimate'
import type { FieldNode, FieldPosterior } from '@lodebook/reckon/estimate'
import { describe, expect, it } from 'vitest'
import { madeUpGround, prior } from './made-up-ground.ts'

const mean = (values: ArrayLike<number>) => Array.from(values).reduce((sum, v) => sum + v, 0) / values.length
const sd = (values: ArrayLike<number>) => { const m = mean(values); return Math.sqrt(mean(Array.from(values, v => (v - m) ** 2))) }
const one = (node: Omit<FieldNode, 'weight'>, data: FieldPosterior['samples']): FieldPosterior => ({ samples: data, nodes: [{ ...node, weight: 1 }] })
const node = { variance: 1.1, nuggetShare: 0.3, range: 7 }
const count = 3000

/** Fast outcomes and those by the whole covariance, of one description of the ground. */
function both(panels: number, samples: number) {
  const { blocks, data, sites } = madeUpGround(panels, samples, 3), posterior = one(node, data)
  const fast = fieldOutcomes(new FieldGround(sites, blocks), posterior, data.map((_, i) => i), { count, seed: 5 }).blocks
  const plain = fieldOutcomesPlain(posterior, blocks, count, drawsFrom(6)).values
  const logs = { fast: fast.map(b => b.map(Math.log)), plain: blocks.map((_, b) => Float64Array.from(plain, row => Math.log(row[b]!))) }
  const totals = { fast: Array.from({ length: count }, (_, k) => fast.reduce((sum, b) => sum + b[k]!, 0)),
    plain: plain.map(row => row.reduce((sum, v) => sum + v, 0)) }
  return { logs, totals }
}

describe('outcomes drawn from neighbours against outcomes from the whole covariance', () => {
  // A mean of 3,000 has a standard error of 1.8 % of a standard deviation; the difference of two, over many blocks, has 2.6 %.
  it.each([[60, 30], [90, 140]])('[FO1] %i blocks and %i samples: the same means, spreads and totals', (panels, samples) => {
    const { logs, totals } = both(panels, samples)
    const z = logs.plain.map((plain, b) => (mean(logs.fast[b]!) - mean(plain)) / sd(plain))
    const ratio = logs.plain.map((plain, b) => sd(logs.fast[b]!) / sd(plain))
    expect(Math.max(...z.map(Math.abs))).toBeLessThan(samples > 100 ? 0.2 : 0.11)
    expect(Math.abs(mean(z))).toBeLessThan(0.05)
    expect(mean(ratio)).toBeGreaterThan(0.97)
    expect(mean(ratio)).toBeLessThan(1.03)
    expect(mean(totals.fast) / mean(totals.plain)).toBeCloseTo(1, 1)
    expect(sd(totals.fast) / sd(totals.plain)).toBeGreaterThan(0.9)
    expect(sd(totals.fast) / sd(totals.plain)).toBeLessThan(1.1)
  })

  it('[FO2] no error shared by all outcomes: z-scores of block means have standard deviation about 1', () => {
    // Against the kriged mean itself, got from outcomes without any scatter: 20 seeds of 60 outcomes each.
    const { blocks, data, sites } = madeUpGround(60, 30, 3), posterior = one(node, data), ground = new FieldGround(sites, blocks)
    const best = fieldOutcomes(ground, posterior, data.map((_, i) => i),
      { count: 20_000, seed: 1 }).blocks.map(b => ({ mean: mean(b.map(Math.log)), sd: sd(b.map(Math.log)) }))
    const z = Array.from({ length: 20 }, (_, s) => fieldOutcomes(ground, posterior, data.map((_, i) => i), { count: 60, seed: 100 + 7 * s }).blocks
      .map((b, i) => (mean(b.map(Math.log)) - best[i]!.mean) / (best[i]!.sd / Math.sqrt(60)))).flat()
    expect(sd(z)).toBeGreaterThan(0.85)
    expect(sd(z)).toBeLessThan(1.15)
  })

  it('[FO3] a place keeps its numbers when another sample comes: the total moves by what the sample says, not by chance', () => {
    const { blocks, data, sites } = madeUpGround(60, 40, 8)
    const total = (n: number) => {
      const out = fieldOutcomes(new FieldGround(sites.slice(0, n), blocks), one(node, data.slice(0, n)),
        data.slice(0, n).map((_, i) => i), { count: 300, seed: 2 }).blocks
      return Array.from({ length: 300 }, (_, k) => out.reduce((sum, b) => sum + b[k]!, 0))
    }
    const [before, after] = [total(39), total(40)]
    const change = before.map((v, k) => Math.log(after[k]! / v))
    expect(sd(change)).toBeLessThan(0.35 * sd(before.map(Math.log)))
  })

  it('[FO4] the same book gives the same numbers; a companion moves with it as much as said', () => {
    const { blocks, data, sites } = madeUpGround(30, 20), ground = new FieldGround(sites, blocks), at = data.map((_, i) => i)
    const draw = (seed: number, companion?: { seed: number, correlation: number }) =>
      fieldOutcomes(ground, one({ ...node, range: 2 }, data), at, { count: 2000, seed, ...companion ? { companion } : {} }).blocks.map(b => b.map(Math.log))
    expect(draw(4)[7]).toEqual(draw(4)[7])
    const [a, b, c] = [draw(4), draw(9, { seed: 4, correlation: 0.9 }), draw(9)]
    const together = (x: Float64Array, y: Float64Array) => {
      const [mx, my] = [mean(x), mean(y)]
      return mean(x.map((v, k) => (v - mx) * (y[k]! - my))) / sd(x) / sd(y)
    }
    expect(mean(a.map((x, i) => together(x, b[i]!)))).toBeGreaterThan(0.4) // the nuggets and errors of the two are their own
    expect(Math.abs(mean(a.map((x, i) => together(x, c[i]!))))).toBeLessThan(0.05)
  })

  it('[FO5] survives all samples at one spot, all equal, one giant value, exact repeats, and no block', () => {
    const { blocks } = madeUpGround(12, 5)
    const at = { along: 3, down: 3 }
    const run = (data: FieldPosterior['samples'], into = blocks) =>
      fieldOutcomes(new FieldGround(data.map((d, i) => ({ key: `${i}`, points: [d.at] })), into), logFieldPosterior(data, prior), data.map((_, i) => i), { count: 50, seed: 1 }).blocks
    const finite = (out: readonly Float64Array[]) => out.every(b => b.every(v => Number.isFinite(v) && v > 0))
    expect(finite(run([1, 2, 3].map(logValue => ({ at, logValue, errorVariance: 0 }))))).toBe(true)
    expect(finite(run([1, 1, 1].map((logValue, i) => ({ at: { along: i, down: 0 }, logValue, errorVariance: 0 }))))).toBe(true)
    expect(finite(run([0, 0.1, 40].map((logValue, i) => ({ at: { along: i, down: 0 }, logValue, errorVariance: 0.1 }))))).toBe(true)
    expect(finite(run(Array.from({ length: 120 }, (_, i) => ({ at: { along: i % 3, down: 0 }, logValue: i % 5, errorVariance: 0 }))))).toBe(true)
    expect(run([1, 2].map(logValue => ({ at, logValue, errorVariance: 1 })), [])).toEqual([])
  })

  it('[FO6] refuses a sample without a site', () => {
    const { blocks, data, sites } = madeUpGround(4, 3), ground = new FieldGround(sites, blocks)
    expect(() => fieldOutcomes(ground, one(node, data), [0, 1], { count: 5, seed: 1 })).toThrow(InputError)
    expect(() => fieldOutcomes(ground, one(node, data), [0, 1, 3], { count: 5, seed: 1 })).toThrow(/siteOf\[2\]/)
  })
})

describe('the likelihood piece by piece', () => {
  it('[PP1] its posterior of the three parameters is that of the whole likelihood', () => {
    const { data } = madeUpGround(60, 90, 5)
    const about = (posterior: FieldPosterior, key: 'variance' | 'range' | 'nuggetShare') => posterior.nodes.reduce((sum, n) => sum + n.weight * Math.log(n[key]), 0)
    const pieces = logFieldPosterior(data, prior) // 90 samples: in pieces
    const whole = logFieldPosterior(data, prior, { whole: true })
    expect(about(pieces, 'variance')).toBeCloseTo(about(whole, 'variance'), 1)
    expect(Math.abs(about(pieces, 'range') - about(whole, 'range'))).toBeLessThan(0.15)
    expect(Math.abs(about(pieces, 'nuggetShare') - about(whole, 'nuggetShare'))).toBeLessThan(0.15)
  })
})
