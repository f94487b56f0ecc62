import { describe, expect, it } from 'vitest'
import { drawsFrom, InputError } from '../../src/core/index.ts'
import { coneHeap, groundMaterials, gullyFill, heapRoom, loadCycle, loadRate, pushLimit, rampFill, timberCount, timeForLoads } from '../../src/earthwork/index.ts'

describe('swell by material', () => {
  // V: compiled list naming Alaska DOT 1983 and FHWA 2007, checks/physical.md section 5.2; breccia V: Compressed Air magazine, 154 to 90 lb/cu ft
  it.each([['granite', 72], ['limestone', 63], ['sandstone', 61], ['sandy gravel', 5], ['dry gravel', 15], ['damp clay', 40], ['breccia or old fill in rock', 71]])('%s swells by %f %%', (name, swell) => {
    expect(groundMaterials.find(m => m.name === name)).toMatchObject({ swellPct: swell, status: 'V' })
  })
  it('basalt and andesite loose +64 to +67, compacted +36 to +43 (FHWA 2007, V)', () => {
    const { swellPct, packed } = groundMaterials.find(m => m.name.startsWith('basalt'))!
    expect(swellPct).toBeGreaterThanOrEqual(64)
    expect(swellPct).toBeLessThanOrEqual(67)
    expect(packed).toBeGreaterThanOrEqual(1.36)
    expect(packed).toBeLessThanOrEqual(1.43)
  })
  // M: US Army FM 5-434, table 1-1: sand 1.11 / 0.95, loam 1.25 / 0.90, clay 1.43 / 0.90, blasted rock 1.50 / 1.30
  it.each([['sand', 11, 0.95], ['loam', 25, 0.9], ['dry clay', 43, 0.9], ['blasted rock', 50, 1.3]])('%s by the field manual (M)', (name, swellPct, packed) => {
    expect(groundMaterials.find(m => m.name === name)).toMatchObject({ swellPct, packed })
  })
  it('every row has a range about its figure, a slope and a source with its status', () => {
    for (const m of groundMaterials) {
      expect([m.name, m.swellLowPct <= m.swellPct, m.swellPct <= m.swellHighPct, m.repose > 30 && m.repose < 46, m.source !== '']).toEqual([m.name, true, true, true, true])
      expect(m.status === 'none').toBe(/common practice, no source/.test(m.source))
    }
    expect(new Set(groundMaterials.map(m => m.name)).size).toBe(groundMaterials.length)
  })
})

describe('heaps', () => {
  it('a round heap: V = pi r² h / 3 with h = r tan', () => {
    const { across, height } = coneHeap(10, 37)
    expect(Math.PI * (across / 2) ** 2 * height / 3).toBeCloseTo(10, 12)
    expect(height / (across / 2)).toBeCloseTo(Math.tan(37 * Math.PI / 180), 12)
    expect(coneHeap(0, 37)).toEqual({ across: 0, height: 0 })
  })
  it('an oblong one is what its slices add up to (brute force), with a ridge and stopped at a height', () => {
    for (const [length, width, most] of [[6, 4, Infinity], [6, 4, 0.8], [4, 4, Infinity], [3, 9, 1.2]] as const) {
      const { holds, height } = heapRoom(length, width, 36, most), out = 1 / Math.tan(36 * Math.PI / 180), n = 20_000
      let sum = 0
      for (let i = 0; i < n; i++) { const up = (i + 0.5) * height / n; sum += (length - 2 * up * out) * (width - 2 * up * out) * height / n }
      expect(holds).toBeCloseTo(sum, 6)
      expect(height).toBeLessThanOrEqual(most)
    }
  })
  it('a square heap run up to its point is a pyramid', () => { expect(heapRoom(4, 4, 45).holds).toBeCloseTo(4 * 4 * 2 / 3, 12) })
  it('refuses a slope of nothing or a wall', () => {
    for (const repose of [0, 90, NaN]) expect(() => heapRoom(2, 2, repose)).toThrow(InputError)
    expect(() => coneHeap(-1, 35)).toThrow(InputError)
  })
})

describe('ramps', () => {
  it('on level ground with upright sides is a wedge: w h² / (2 grade)', () => { expect(rampFill(1.5, 2, 0.125, { sidesDeg: 90 }).fill).toBeCloseTo(2 * 1.5 ** 2 / (2 * 0.125), 12) })
  it('is what its slices add up to (brute force), against a slope and crowned', () => {
    const given = { ground: 0.04, sidesDeg: 35, crown: 0.06 }, { length, fill, crown, reach } = rampFill(1.4, 1.2, 0.12, given), n = 20_000
    let sum = 0
    for (let i = 0; i < n; i++) {
      const d = (i + 0.5) * length / n * 0.08
      sum += (1.2 * d + d * d / Math.tan(35 * Math.PI / 180) + 1.2 * 0.06 / 2) * length / n
    }
    expect(fill).toBeCloseTo(sum, 6)
    expect(length).toBeCloseTo(1.4 / 0.12, 12)
    expect(crown).toBeCloseTo(length * 1.2 * 0.03, 12)
    expect(reach).toBeCloseTo(length * 0.08 / Math.tan(35 * Math.PI / 180), 12)
  })
  it('a wash-out by its shape', () => { expect([gullyFill(6, 1.5, 0.8, 'V'), gullyFill(6, 1.5, 0.8, 'flat')]).toEqual([expect.closeTo(3.6, 12), expect.closeTo(7.2, 12)]) })
  it('refuses a ground as steep as the way', () => { expect(() => rampFill(1, 1, 0.1, { ground: 0.1, sidesDeg: 35 })).toThrow(/ground/) })
})

describe('pushing and the time a load takes', () => {
  it('the push is what weight and drag ask of it (statics)', () => {
    const load = pushLimit(220, 6, 0.07, 22)
    expect((load + 22) * 9.80665 * (Math.sin(6 * Math.PI / 180) + 0.07 * Math.cos(6 * Math.PI / 180))).toBeCloseTo(220, 9)
    expect(pushLimit(220, 12, 0.07, 22)).toBeLessThan(load)
    expect(pushLimit(10, 30, 0.07, 22)).toBe(0)
    expect(pushLimit(220, 0, 0, 22)).toBe(Infinity)
    expect(pushLimit(220, -10, 0.07, 22)).toBeGreaterThan(pushLimit(220, 10, 0.07, 22)) // drag helps hold it back
  })
  const given = { bank: 0.04, loosenPerHour: 0.5, shovelPerHour: 1.2, load: 0.06, distance: 30, speed: 0.8, grade: 0.1, slowing: 5,
    tipMinutes: 0.5, restShare: 0.2, people: 2 }
  it('adds up as Taylor added it', () => {
    const cycle = loadCycle(given)
    expect(cycle).toMatchObject({ loosen: 4.8, fill: 3, tip: 0.5 })
    expect(cycle.walk).toBeCloseTo(30 / 0.8 / 60 * 2.5, 12)
    expect(cycle.personMinutes).toBeCloseTo((4.8 + 3 + 0.5 + cycle.walk) / 0.8, 12)
    expect(cycle.minutes).toBeCloseTo(cycle.personMinutes / 2, 12)
  })
  // V: 1.5 to 2 cubic yards of loosened earth an hour thrown into a wagon by one man (Textbook on Roads & Pavements, 1908): 30 to 40 minutes a yard
  it.each([[1.5, 40], [2, 30]])('shovelling alone at %f cu yd an hour: %f minutes a yard', (rate, minutes) => {
    const alone = { ...given, bank: 1, loosenPerHour: Infinity, shovelPerHour: rate, load: 1, distance: 0, tipMinutes: 0, restShare: 0 }
    expect(loadCycle(alone).personMinutes).toBeCloseTo(minutes, 9)
  })
  it('refuses a crew of nobody and a day of rest', () => {
    expect(() => loadCycle({ ...given, people: 0 })).toThrow(/people/)
    expect(() => loadCycle({ ...given, restShare: 1 })).toThrow(/restShare/)
  })
})

describe('pace learnt from a tally', () => {
  const prior = { minutes: 10, factor: 2 }
  const times = (gaps: readonly number[]) => gaps.reduce<number[]>((all, gap) => [...all, all.at(-1)! + gap], [0])
  it('with no tally is what was reckoned', () => {
    const rate = loadRate([], prior)
    expect(rate.minutes).toBeCloseTo(10, 6)
    expect(rate.high / rate.low).toBeGreaterThan(3)
    expect(rate.gaps).toBe(0)
    expect(loadRate([[5]], prior).minutes).toBeCloseTo(10, 6)
  })
  it('moves to the gaps and narrows as loads come in', () => {
    const few = loadRate([times([6, 7, 5])], prior), many = loadRate([times(Array.from({ length: 60 }, (_, i) => 5 + i % 3))], prior)
    expect(few.minutes).toBeGreaterThan(many.minutes)
    expect(many.minutes).toBeCloseTo(6, 0)
    expect(many.high - many.low).toBeLessThan((few.high - few.low) / 2)
  })
  it('leaves out a break for lunch, and nothing between two days', () => {
    const rate = loadRate([times([6, 6, 6, 55, 6, 6]), [1e6, 1e6 + 6]], prior)
    expect(rate).toMatchObject({ gaps: 6, breaks: 1, worked: 36 })
  })
  it('its time for more loads is what drawing paces and loads gives (Monte Carlo)', () => {
    const rate = loadRate([times([6, 7, 5, 8, 6])], prior), draws = drawsFrom(5), sums: number[] = []
    // Gamma draws by Marsaglia and Tsang (ACM Trans. Math. Softw. 26, 2000, 363; from memory).
    const gamma = (shape: number): number => {
      const d = shape - 1 / 3, c = 1 / Math.sqrt(9 * d)
      for (;;) {
        const x = draws.normal(), v = (1 + c * x) ** 3
        if (v > 0 && Math.log(1 - draws.uniform()) < x * x / 2 + d - d * v + d * Math.log(v)) return d * v
      }
    }
    for (let i = 0; i < 40_000; i++) { const theta = gamma(rate.a) / rate.b; sums.push(gamma(rate.evenness * 20) / theta) }
    sums.sort((p, q) => p - q)
    const { minutes, low, high } = timeForLoads(rate, 20)
    for (const [p, said] of [[0.1, low], [0.5, minutes], [0.9, high]] as const) expect(sums[Math.floor(p * sums.length)]! / said).toBeCloseTo(1, 1)
  })
  it('holds what comes in about eight of ten times (simulated crews)', () => {
    const draws = drawsFrom(77)
    let held = 0
    const crews = 400
    for (let c = 0; c < crews; c++) {
      const mean = 10 * Math.exp(draws.normal() * Math.log(2) / 1.2816), gap = () => mean * Math.exp(0.35 * draws.normal() - 0.06)
      const rate = loadRate([times(Array.from({ length: 8 }, gap))], prior), { low, high } = timeForLoads(rate, 15)
      const took = Array.from({ length: 15 }, gap).reduce((p, q) => p + q, 0)
      if (took >= low && took <= high) held++
    }
    expect(held / crews).toBeGreaterThan(0.74) // 0.80 less three binomial deviations of 0.02
    expect(held / crews).toBeLessThan(0.95)
  })
  it('refuses a clock that runs back', () => { expect(() => loadRate([[0, 5, 4]], prior)).toThrow(/sessions\[0\]\[2\]/) })
})

describe('timber', () => {
  it('counts three sets over two bays by hand', () => {
    expect(timberCount(2.4, 1.2, { width: 1.2, height: 1.8 }, 0.2)).toEqual({
      sets: 3, caps: 3, posts: 6, collars: 4, footBlocks: 6, wedges: 12, lagging: 48,
      roundLength: expect.closeTo(3 * 4.8 + 4 * 1.2, 12) as number, boardLength: expect.closeTo(48 * 1.2, 12) as number,
    })
  })
  it('keeps sets no further apart than said, and the back alone when the ribs stand', () => {
    expect(timberCount(2.5, 1.2, { width: 1.2, height: 1.8 }, 0.2)).toMatchObject({ sets: 4 })
    expect(timberCount(2.4, 1.2, { width: 1.2, height: 1.8 }, 0.2, false)).toMatchObject({ lagging: 12 })
    expect(timberCount(0, 1.2, { width: 1.2, height: 1.8 }, 0.2)).toMatchObject({ sets: 1, lagging: 0 })
  })
})
