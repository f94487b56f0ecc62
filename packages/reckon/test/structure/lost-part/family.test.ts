import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { DegenerateError, drawsFrom } from '../../../src/core/index.ts'
import type { Enu } from '../../../src/core/index.ts'
import { faultOffset, lostPartFamily, markerBetween, meetHeading, normalCovariance, slipMeasures, slipVector, whatItTells } from '../../../src/structure/index.ts'
import type { LostPartInput, SlipEvidence } from '../../../src/structure/index.ts'
import { quantiles } from '../../../src/statistics/index.ts'
import { add, amount, apartOf, cross, deepFreeze, dot, exactly, fault, faultAxes, scaled, setting, slipAt, turner, vein } from './setting.ts'

const known = (slip: Enu): SlipEvidence => ({ vector: { slip, sigma: 0 }, amount })
const familyOf = (evidence: SlipEvidence, more: Partial<LostPartInput> = {}) => lostPartFamily({ ...setting, evidence, ...more })
const spreadOf = (values: readonly number[]) => Math.max(...values) - Math.min(...values)

describe('a known slip', () => {
  // Halliday, Resnick and Walker, rock-fault problem: strike slip 22.0 m and dip slip 17.0 m make 27.8 m net; on a fault dipping 52 degrees 13.4 m upright (V).
  it('[LF1] carries the vein by the published slip arithmetic', () => {
    const published = { strike: 90, dip: 52 }
    const slip = slipVector(published, { alongStrike: 22, downDip: 17 })
    const { draws } = familyOf(known(slip), { fault: exactly(published), count: 5 })
    for (const draw of draws) {
      const { net, throw: upright } = slipMeasures(published, draw.slip)
      expect(net).toBeCloseTo(27.8, 1)
      expect(upright).toBeCloseTo(13.4, 1)
      expect(draw.point).toEqual(slip) // the vein passed through the origin
    }
  })
  it('[LF2] leaves every draw at the one continuation that the exact formula gives', () => {
    const slip = slipAt(130, 7)
    const exact = faultOffset({ strike: 40, dip: 70, point: [0, 0, 0] }, { strike: 110, dip: 60, point: [0, 0, 0] }, slip)
    const family = familyOf(known(slip), { count: 20 })
    for (const value of apartOf(family)) expect(value).toBeCloseTo(exact.squareToVein, 12)
    const along = meetHeading(family, { from: [0, 0, 0], bearing: 110, inclination: 0 }).separations
    for (const value of along) expect(value).toBeCloseTo(exact.alongFaultStrike!, 10)
  })
  it('[LF3] along the cut-off line displaces the vein by nothing', () => {
    fc.assert(fc.property(fc.double({ min: -6, max: 6, noNaN: true }), fc.constantFrom(-1, 1), (power, sign) => {
      const size = sign * 10 ** power
      const slip = scaled(cross(vein.normal, fault.normal), size)
      for (const value of apartOf(familyOf(known(slip), { count: 3 }))) expect(Math.abs(value)).toBeLessThanOrEqual(1e-14 * Math.abs(size))
    }), { seed: 1, numRuns: 30 })
  })
  it('[LF4] with any multiple of the cut-off line added leaves the continuation where it was', () => {
    fc.assert(fc.property(fc.double({ min: 0, max: 180, noNaN: true }), fc.double({ min: -50, max: 50, noNaN: true }), (rake, times) => {
      const slip = slipAt(rake, 6)
      const more = add(slip, scaled(cross(vein.normal, fault.normal), times))
      const [one, other] = [slip, more].map(s => familyOf(known(s), { count: 1 }).draws[0]!)
      const off = dot(one!.normal, add(other!.point, scaled(one!.point, -1)))
      expect(Math.abs(off)).toBeLessThan(1e-12 * 60)
    }), { seed: 2, numRuns: 30 })
  })
})

describe('markers', () => {
  const slip = slipAt(125, 8)
  const markerAt = (strike: number, dip: number, sigma = 1e-6) => {
    const near = exactly({ strike, dip })
    return markerBetween({ ...near, sigma }, { ...near, point: slip, sigma })
  }
  it('[LF5] one never fixes the slip: its own offset is the same in all draws, the slips are not', () => {
    const marker = markerAt(80, 40)
    const { draws, misfit } = familyOf({ markers: [marker], amount })
    expect(spreadOf(draws.map(d => dot(d.slip, marker.looks[0]!.normal)))).toBeLessThan(1e-4)
    const line = cross(marker.looks[0]!.normal, fault.normal)
    expect(spreadOf(draws.map(d => dot(d.slip, line) / Math.hypot(...line)))).toBeGreaterThan(5)
    expect(whatItTells(apartOf({ draws } as ReturnType<typeof familyOf>)).tells).toBe('nothing')
    expect(misfit).toBeLessThan(1e-6)
  })
  it('[LF6] two that are not parallel do', () => {
    const { draws } = familyOf({ markers: [markerAt(350, 80, 0.02), markerAt(80, 40, 0.02)], amount })
    for (const k of [0, 1, 2]) {
      const values = draws.map(d => d.slip[k]!)
      expect(Math.abs(quantiles(values, [0.5])[0]! - slip[k]!)).toBeLessThan(0.03)
      expect(quantiles(values, [0.9])[0]! - quantiles(values, [0.1])[0]!).toBeLessThan(0.4)
    }
  })
  it('[LF7] one and grooves do too, whatever sense was written', () => {
    const grooves = { line: slipAt(125, 1), sigma: 0.01 }
    const wrong = { toward: slipAt(125, -1), trust: 0.9 }
    const { draws } = familyOf({ markers: [markerAt(350, 80, 0.01)], grooves, senses: [wrong], amount })
    const truth = dot(slip, vein.normal)
    for (const value of apartOf({ draws } as ReturnType<typeof familyOf>)) expect(Math.abs(value - truth)).toBeLessThan(0.1)
  })
  it('[LF8] the vein found again is its own marker: the continuation passes through the place', () => {
    const place: Enu = add(slip, scaled(faultAxes.strike, 3))
    const offset = dot(vein.normal, place)
    const again = { isVein: true, looks: [{ normal: scaled(vein.normal, -1), offset: -offset, sigma: 0.02, arm: place, chance: 1 }] }
    const doubtful = { ...vein, sigma: 0.5, covariance: normalCovariance({ strike: 40, dip: 70 }, { strike: 4, dip: 3 }) }
    const { draws } = familyOf({ markers: [again], amount }, { vein: doubtful })
    for (const draw of draws) expect(Math.abs(dot(draw.normal, add(place, scaled(draw.point, -1))))).toBeLessThan(0.1)
  })
  it('[LF9] that cannot all be so show as a misfit', () => {
    const grooves = { line: slipAt(30, 1), sigma: 3 }
    const both = familyOf({ markers: [markerAt(350, 80, 0.05), markerAt(80, 40, 0.05)], grooves, amount })
    const fine = familyOf({ markers: [markerAt(350, 80, 0.05), markerAt(80, 40, 0.05)], grooves: { ...grooves, line: slipAt(125, 1) }, amount })
    expect(both.misfit).toBeGreaterThan(10)
    expect(fine.misfit).toBeLessThan(0.5)
  })
})

describe('weighing evidence', () => {
  const grooves = { line: slipAt(125, 1), sigma: 6 }
  const senses = [{ toward: slipAt(90, 1), trust: 1 }]

  it('[LF10] without a marker the length is as it was thought before: one in ten below low, one in ten above high', () => {
    const { draws } = familyOf({ grooves, senses, amount })
    const [low, median, high] = quantiles(draws.map(d => Math.hypot(...d.slip)), [0.1, 0.5, 0.9])
    expect(Math.abs(low! / 1 - 1)).toBeLessThan(0.15)
    expect(Math.abs(median! / 5 - 1)).toBeLessThan(0.15)
    expect(Math.abs(high! / 25 - 1)).toBeLessThan(0.15)
    expect(whatItTells(draws.map(d => d.apart)).tells).toBe('which hand')
  })
  it('[LF11] agrees with plain rejection from the prior', () => {
    const marker = markerBetween({ ...exactly({ strike: 350, dip: 80 }), sigma: 0.6 }, { ...exactly({ strike: 350, dip: 80 }, slipAt(120, 6)), sigma: 0.8 })
    const look = marker.looks[0]!
    const family = familyOf({ grooves, senses: [{ toward: slipAt(90, 1), trust: 0.8 }], markers: [marker], amount }, { count: 4000 })
    const draws = drawsFrom(5)
    const plain: number[] = []
    const sigma = Math.log(5) / 1.2815515655446004
    while (plain.length < 4000) {
      const angle = 125 + 6 * draws.normal() + (draws.uniform() < 0.5 ? 0 : 180)
      const slip = slipAt(angle, 5 * Math.exp(sigma * draws.normal()))
      const cosine = Math.cos((angle - 90) * Math.PI / 180)
      const agrees = (cosine >= 0 ? 0.8 : 0.2) * Math.abs(cosine) * Math.exp(-(((look.offset - dot(slip, look.normal)) / look.sigma) ** 2) / 2)
      if (draws.uniform() < agrees) plain.push(dot(slip, vein.normal))
    }
    const shares = [0.1, 0.25, 0.5, 0.75, 0.9]
    const [ours, theirs] = [quantiles(apartOf(family), shares), quantiles(plain, shares)]
    ours.forEach((value, i) => { expect(Math.abs(value - theirs[i]!)).toBeLessThan(0.15) })
  })
  it('[LF12] one sense turned round turns the family round', () => {
    const moved = (turn: number) => familyOf({ grooves, senses: [{ toward: slipAt(90, turn), trust: 1 }], amount })
    const [one, other] = [1, -1].map(turn => quantiles(apartOf(moved(turn)), [0.1, 0.5, 0.9]))
    one!.forEach((value, i) => { expect(Math.abs(value + other![2 - i]!)).toBeLessThan(0.15 * Math.abs(value)) })
  })
  it('[LF13] a distrusted sense leaves both hands open, and the family says that it tells nothing', () => {
    const told = whatItTells(apartOf(familyOf({ grooves, senses: [{ toward: slipAt(90, 1), trust: 0.5 }], amount })))
    expect(told.tells).toBe('nothing')
    expect(Math.abs(told.chanceUp - 0.5)).toBeLessThan(0.05)
  })
  it('[LF14] an amount known exactly is taken exactly', () => {
    const { draws } = familyOf({ grooves, senses, amount: { low: 6, high: 6 } })
    for (const d of draws) expect(Math.hypot(...d.slip)).toBeCloseTo(6, 10)
  })
})

describe('a family', () => {
  const doubtful: LostPartInput = {
    ...setting, vein: { ...vein, sigma: 0.1, unevenness: 0.1 }, fault: { ...fault, sigma: 0.2 }, count: 300,
    evidence: {
      grooves: { line: slipAt(125, 1), sigma: 5 }, senses: [{ toward: slipAt(90, 1), trust: 0.9 }], amount,
      markers: [markerBetween({ ...exactly({ strike: 350, dip: 80 }), sigma: 0.2 }, { ...exactly({ strike: 350, dip: 80 }, slipAt(120, 6)), sigma: 0.2 })],
    },
  }
  it('[LF15] turns with everything that was measured', () => {
    const turn = turner([1, 2, -0.5], 77)
    const plane = <T extends { normal: Enu, point: Enu }>(p: T): T => ({ ...p, normal: turn(p.normal), point: turn(p.point) })
    const { grooves, senses, markers } = doubtful.evidence
    const turned = lostPartFamily({
      ...doubtful, vein: plane(doubtful.vein), fault: plane(doubtful.fault), evidence: {
        ...doubtful.evidence, grooves: { ...grooves!, line: turn(grooves!.line) }, senses: senses!.map(s => ({ ...s, toward: turn(s.toward) })),
        markers: markers!.map(m => ({ looks: m.looks.map(l => ({ ...l, normal: turn(l.normal), arm: turn(l.arm) })) })),
      },
    })
    const plain = lostPartFamily(doubtful)
    turned.draws.forEach((draw, i) => {
      expect(Math.abs(draw.apart - plain.draws[i]!.apart)).toBeLessThan(1e-9)
      turn(plain.draws[i]!.point).forEach((value, k) => { expect(Math.abs(draw.point[k]! - value)).toBeLessThan(1e-9) })
    })
  })
  it('[LF16] is the same for the same seed, another for another, and leaves what it is given alone', () => {
    const frozen = deepFreeze(structuredClone(doubtful))
    expect(lostPartFamily(frozen)).toEqual(lostPartFamily(doubtful))
    expect(lostPartFamily({ ...doubtful, seed: 12 }).draws[0]).not.toEqual(lostPartFamily(doubtful).draws[0])
  })
  it('[LF17] scales with the unit of length', () => {
    const scale = 1e5
    const big = <T extends { point: Enu, sigma?: number }>(p: T): T => ({ ...p, point: scaled(p.point, scale), sigma: (p.sigma ?? 0) * scale })
    const { evidence } = doubtful
    const scaledUp = lostPartFamily({
      ...doubtful, vein: { ...big(doubtful.vein), unevenness: 0.1 * scale }, fault: big(doubtful.fault), evidence: {
        ...evidence, amount: { low: scale, high: 25 * scale },
        markers: evidence.markers!.map(({ looks }) => ({
          looks: looks.map(l => ({ ...l, offset: l.offset * scale, sigma: l.sigma * scale, arm: scaled(l.arm, scale) })),
        })),
      },
    })
    lostPartFamily(doubtful).draws.forEach((draw, i) => { expect(Math.abs(scaledUp.draws[i]!.apart / scale - draw.apart)).toBeLessThan(1e-9) })
  })
  it('[LF18] the doubt of the planes widens it', () => {
    const covariance = normalCovariance({ strike: 40, dip: 70 }, { strike: 6, dip: 6 })
    const [sharp, wide] = [vein, { ...vein, covariance }].map(v => quantiles(apartOf(familyOf(known(slipAt(60, 9)), { vein: v })), [0.1, 0.9]))
    expect(wide![1]! - wide![0]!).toBeGreaterThan(sharp![1]! - sharp![0]! + 0.5)
  })
})

describe('refusals', () => {
  const evidence: SlipEvidence = { senses: [{ toward: [0, 0, -1], trust: 0.9 }], amount }
  it('[LF19] a vein parallel to the fault is degenerate', () => {
    expect(() => familyOf(evidence, { fault: exactly({ strike: 40, dip: 70 }, [3, 0, 0]) })).toThrow(DegenerateError)
    expect(() => familyOf(evidence, { fault: exactly({ strike: 40, dip: 70 }, [3, 0, 0]) })).toThrow('parallel')
  })
  it('[LF20] evidence that excludes itself is a contradiction', () => {
    const senses = [{ toward: slipAt(90, 1), trust: 1 }, { toward: slipAt(90, -1), trust: 1 }]
    expect(() => familyOf({ senses, amount })).toThrow('contradiction')
  })
  it.each<[string, Partial<LostPartInput>]>([
    ['vein.normal', { vein: { normal: [0, 0, 2], point: [0, 0, 0] } }],
    ['vein.point', { vein: { ...vein, point: [0, Number.NaN, 0] } }],
    ['fault.sigma', { fault: { ...fault, sigma: -1 } }],
    ['vein.unevenness', { vein: { ...vein, unevenness: Number.NaN } }],
    ['count', { count: 0 }],
    ['evidence.amount.low', { evidence: { amount: { low: 0, high: 3 } } }],
    ['evidence.amount.high', { evidence: { amount: { low: 4, high: 3 } } }],
    ['evidence.grooves.line', { evidence: { amount, grooves: { line: [0, 0, 0], sigma: 3 } } }],
    ['evidence.senses[0].toward', { evidence: { amount, senses: [{ toward: [0, 0, 0], trust: 1 }] } }],
    ['evidence.senses[0].trust', { evidence: { amount, senses: [{ toward: [0, 0, 1], trust: 1.5 }] } }],
    ['evidence.vector.slip', { evidence: { amount, vector: { slip: [Infinity, 0, 0], sigma: 0 } } }],
    ['evidence.markers[0].looks', { evidence: { amount, markers: [{ looks: [] }] } }],
    ['evidence.markers[0].looks[0].sigma', { evidence: { amount, markers: [{ looks: [{ normal: [0, 0, 1], offset: 1, sigma: 0, arm: [0, 0, 1], chance: 1 }] }] } }],
    ['evidence.markers[0].looks', { evidence: { amount, markers: [{ looks: [{ normal: [0, 0, 1], offset: 1, sigma: 1, arm: [0, 0, 1], chance: 0.5 }] }] } }],
  ])('[LF21] names %s', (field, wrong) => {
    expect(() => familyOf(evidence, wrong)).toThrow(field)
  })
})
