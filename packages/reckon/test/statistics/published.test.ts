import { describe, expect, it } from 'vitest'
import {
  chebyshevUpper, coxLimit, kruskalWallis, landH, landLimit, lognormalMean, mannWhitney, mean, poissonRange, shapiroWilk, sichelEstimate, sichelFactor,
  skewedUpper, skewness, standardDeviation, studentUpper,
} from '../../src/statistics/index.ts'
import { usepa } from './usepa.ts'

// Status of each value: V read in the source, M from memory, R recomputed from data that were read.

describe('chromium, n = 15: USEPA 1992, OSWER 9285.7-081, Highlights 7-8, with exact values from R\'s EnvStats', () => {
  const values = usepa('USEPA1992d_chromium')
  const result = lognormalMean(values, 0.95)
  it('V: mean 175.4667, standard deviation 318.5440', () => {
    expect(result.mean).toBeCloseTo(175.4667, 4)
    expect(result.sd).toBeCloseTo(318.5440, 4)
  })
  it('R: mean log 4.3786357, deviation of logs 1.2467789', () => {
    expect(result.logMean).toBeCloseTo(4.3786357, 7)
    expect(result.logSd).toBeCloseTo(1.2467789, 7)
  })
  it('V: unbiased estimate of least variance (Finney, Sichel) 159.855185', () => { expect(result.sichelT).toBeCloseTo(159.855185, 6) })
  it('V: Land\'s exact 95 % upper limit 496.6282 (printed 502, by rounded logs); R: 496.62817, H 3.157046', () => {
    expect(result.land.highOneSided).toBeCloseTo(496.62817, 5)
    expect(landH(result, result.land.highOneSided)).toBeCloseTo(3.157046, 6)
  })
  it('R: with the tabled H 3.163 the limit would be 497.61; with the guidance\'s rounding 501.7, which it prints as 502', () => {
    const limit = (logMean: number, logSd: number, H: number) => Math.exp(logMean + logSd ** 2 / 2 + H * logSd / Math.sqrt(14))
    expect(limit(result.logMean, result.logSd, 3.163)).toBeCloseTo(497.61, 1)
    expect(limit(4.38, 1.25, 3.163)).toBeCloseTo(501.7, 1)
  })
  it('V: Student\'s 95 % upper limit 320.3304', () => { expect(result.studentUpper).toBeCloseTo(320.3304, 4) })
  it('R: Cox\'s one-sided limit 365.53, 347.95 or 373.70 by its three forms', () => {
    expect(result.cox.highOneSided).toBeCloseTo(365.53, 2)
    expect(coxLimit(result, 'upper', 0.95, { quantile: 'z', divisor: 'n+1' })).toBeCloseTo(347.95, 2)
    expect(coxLimit(result, 'upper', 0.95, { quantile: 't', divisor: 'n-1' })).toBeCloseTo(373.70, 2)
  })
  it('V: Shapiro-Wilk of the logs 0.9607179, chance 0.7048747', () => {
    const { W, p } = shapiroWilk(values.map(Math.log))
    expect(W).toBeCloseTo(0.9607179, 7)
    expect(p).toBeCloseTo(0.7048747, 7)
  })
})

describe('USEPA 2002, OSWER 9285.6-10: data V, answers R, the guidance\'s own printed answers M', () => {
  const summary = (name: string) => ({ mean: mean(usepa(name)), sd: standardDeviation(usepa(name)), count: usepa(name).length })
  it('exhibit 2: mean 451.36, deviation 197.477, Student 518.93', () => {
    const set = summary('USEPA2002d_Exhibit_2')
    expect(set.count).toBe(25)
    expect(set.mean).toBeCloseTo(451.36, 2)
    expect(set.sd).toBeCloseTo(197.477, 3)
    expect(studentUpper(set, 0.95)).toBeCloseTo(518.93, 2)
  })
  it('exhibit 4: mean log 1.8797, deviation 0.8995, Land 14.344 (H 2.3088; M printed about 14.4)', () => {
    const result = lognormalMean(usepa('USEPA2002d_Exhibit_4'), 0.95)
    expect(result.count).toBe(31)
    expect(result.logMean).toBeCloseTo(1.8797, 4)
    expect(result.logSd).toBeCloseTo(0.8995, 4)
    expect(result.land.highOneSided).toBeCloseTo(14.344, 3)
    expect(landH(result, result.land.highOneSided)).toBeCloseTo(2.3088, 4)
  })
  it('exhibit 6: estimate 667.95, error 297.58, Chebyshev 1965.08 (M printed 1,965); Land 2643.3; mean 556.97; Student 908.56', () => {
    const result = lognormalMean(usepa('USEPA2002d_Exhibit_6'), 0.95)
    expect(result.count).toBe(29)
    expect(result.logMean).toBeCloseTo(4.969, 3)
    expect(result.logSd).toBeCloseTo(1.8273, 4)
    expect(result.sichelT).toBeCloseTo(667.95, 2)
    expect(result.sichelError).toBeCloseTo(297.58, 2)
    // The recomputed answers take the guidance's rounded factor 4.359 for sqrt(19) = 4.35890.
    expect(result.sichelT + 4.359 * result.sichelError).toBeCloseTo(1965.08, 2)
    expect(Math.abs(result.chebyshevUpper - 1965.08)).toBeLessThan(0.0002 * result.sichelError)
    expect(result.land.highOneSided).toBeCloseTo(2643.3, 1)
    expect(result.mean).toBeCloseTo(556.97, 2)
    expect(result.studentUpper).toBeCloseTo(908.56, 2)
  })
  it('exhibit 9: mean 34.5667, deviation 27.3306, skewness 2.3658; limits 41.522 (skew-corrected), 49.947 (Chebyshev), 37.59 (Land); lognormal rejected', () => {
    const values = usepa('USEPA2002d_Exhibit_9')
    const set = summary('USEPA2002d_Exhibit_9')
    expect(set.count).toBe(60)
    expect(set.mean).toBeCloseTo(34.5667, 4)
    expect(set.sd).toBeCloseTo(27.3306, 4)
    expect(skewness(values)).toBeCloseTo(2.3658, 4)
    expect(skewedUpper(set, skewness(values), 0.95)).toBeCloseTo(41.522, 3)
    expect(set.mean + 4.359 * set.sd / Math.sqrt(60)).toBeCloseTo(49.947, 3)
    expect(chebyshevUpper(set.mean, set.sd / Math.sqrt(60), 0.95)).toBeCloseTo(49.946, 3)
    expect(lognormalMean(values, 0.95).land.highOneSided).toBeCloseTo(37.59, 2)
    expect(shapiroWilk(values.map(Math.log)).p).toBeLessThan(0.001)
  })
})

describe('Sichel\'s factor', () => {
  it.each([0.1, 1, 4])('identity: n = 2 is cosh(sqrt V) (V = %d; 1.5430806 at 1)', (V) => { expect(sichelFactor(V, 2)).toBeCloseTo(Math.cosh(Math.sqrt(V)), 13) })
  it('R: n = 3, V = 1 is I0(sqrt 2) = 1.5660829', () => { expect(sichelFactor(1, 3)).toBeCloseTo(1.5660829, 7) })
  it('tends to exp(V/2) for many values', () => { expect(sichelFactor(1.5, 1e7)).toBeCloseTo(Math.exp(0.75), 6) })
  // R; M that Sichel 1966 and David 1977 print the same to three decimals
  it.each([
    [0.1, [1.050, 1.051, 1.051, 1.051, 1.051, 1.051]],
    [0.5, [1.261, 1.266, 1.272, 1.277, 1.280, 1.282]],
    [1.0, [1.543, 1.566, 1.591, 1.615, 1.630, 1.641]],
    [1.5, [1.849, 1.903, 1.963, 2.025, 2.065, 2.095]],
    [2.0, [2.178, 2.280, 2.395, 2.519, 2.604, 2.668]],
  ])('R: table for V = %d, n = 2, 3, 5, 10, 20, 50', (V, row) => {
    const factors = [2, 3, 5, 10, 20, 50].map(n => sichelFactor(V, n))
    factors.forEach((factor, i) => { expect(Math.abs(factor - row[i]!)).toBeLessThanOrEqual(0.0005) })
  })
  it('the trap: V has n below, not n - 1; the estimate from the summary takes care of it', () => {
    const logs = usepa('USEPA1992d_chromium').map(Math.log)
    const V = logs.reduce((sum, y) => sum + (y - mean(logs)) ** 2, 0) / 15
    const summary = { logMean: mean(logs), logSd: standardDeviation(logs), count: 15 }
    expect(sichelEstimate(summary).mean).toBeCloseTo(Math.exp(mean(logs)) * sichelFactor(V, 15), 10)
  })
})

describe('groups', () => {
  it('V data, R: Hollander and Wolfe 1973 p. 116, H = 0.7714286, df 2, p = 0.6799648 (M published 0.77)', () => {
    const result = kruskalWallis([[2.9, 3.0, 2.5, 2.6, 3.2], [3.8, 2.7, 4.0, 2.4], [2.8, 3.4, 3.7, 2.2, 2.0]])
    expect(result.H).toBeCloseTo(0.7714286, 7)
    expect(result.df).toBe(2)
    expect(result.p).toBeCloseTo(0.6799648, 7)
  })
  it('M data: Hollander and Wolfe 1973 p. 69, W = 35, exact one-sided p = 0.12720613', () => {
    const x = [0.80, 0.83, 1.89, 1.04, 1.45, 1.38, 1.91, 1.64, 0.73, 1.46]
    const y = [1.15, 0.88, 0.90, 0.74, 1.21]
    const result = mannWhitney(x, y)
    expect(result.W).toBe(35)
    expect(result.pGreater).toBeCloseTo(0.12720613, 8)
    expect(result.exact).toBe(true)
  })
})

describe('counts', () => {
  // M: Garwood 1936
  it.each([[0, 0, 3.689], [1, 0.0253, 5.572], [5, 1.623, 11.668], [10, 4.795, 18.390]])('M: the 95 percent range of a Poisson mean from a count of %d is %d to %d', (count, low, high) => {
    const range = poissonRange(count, 0.95)
    expect(Math.abs(range.low - low)).toBeLessThanOrEqual(0.0005)
    expect(Math.abs(range.high - high)).toBeLessThanOrEqual(0.0005)
  })
})

describe('Land\'s limit', () => {
  it('agrees with a limit by brute force over the conditional density in its other form', () => {
    const summary = { logMean: 0.7, logSd: 0.9, count: 6 }
    const theta = Math.log(landLimit(summary, 'upper', 0.9))
    const radius = Math.sqrt(5 * 0.81 + 6 * (0.7 - theta) ** 2)
    const seen = Math.sqrt(6) * (0.7 - theta) / radius
    let [below, all] = [0, 0]
    const steps = 400_000
    for (let i = 0; i < steps; i++) {
      const c = -1 + 2 * (i + 0.5) / steps
      const density = (1 - c * c) ** 1.5 * Math.exp(-Math.sqrt(6) * radius / 2 * c)
      all += density
      if (c < seen) below += density
    }
    expect(below / all).toBeCloseTo(0.1, 5)
  })
})
