import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { airNetwork, airway, fanDuct, naturalDraught, airPerPerson, breathingOutlook, smokeSpeed, traverse } from '../../src/air/index.ts'
import type { AirBranch } from '../../src/air/index.ts'

const flow = (branches: readonly AirBranch[], name: string) => airNetwork(branches).branches.find(b => b.name === name)!.flowM3S

describe('a network of airways', () => {
  // R: series resistances add up; Q = sqrt(p / (R1 + R2 + R3))
  it('three in series: R = 0.2 + 0.5 + 0.3, 4 Pa drive 2 m3/s', () => {
    const round = [{ name: 'a', from: '1', to: '2', resistance: 0.2, drive: 4 }, { name: 'b', from: '2', to: '3', resistance: 0.5 }, { name: 'c', from: '3', to: '1', resistance: 0.3 }]
    for (const name of ['a', 'b', 'c']) expect(flow(round, name)).toBeCloseTo(2, 10)
  })

  // R: parallel, 1/sqrt(R) = 1/sqrt(R1) + 1/sqrt(R2): 0.25 and 1 give 1/9; with 5/36 in series R = 0.25, so 9 Pa drive 6 m3/s, shared 4 and 2
  it('two in parallel behind one: 6 m3/s, shared 4 and 2', () => {
    const split = [{ name: 'fan', from: '1', to: '2', resistance: 5 / 36, drive: 9 }, { name: 'wide', from: '2', to: '1', resistance: 0.25 }, { name: 'narrow', from: '2', to: '1', resistance: 1 }]
    expect(flow(split, 'fan')).toBeCloseTo(6, 9)
    expect(flow(split, 'wide')).toBeCloseTo(4, 9)
    expect(flow(split, 'narrow')).toBeCloseTo(2, 9)
  })

  it('a balanced bridge carries nothing across, and a dead end nothing at all', () => {
    const bridge: AirBranch[] = [
      { name: 'fan', from: '0', to: '1', resistance: 0.1, drive: 10 }, { name: 'a', from: '1', to: '2', resistance: 1 }, { name: 'b', from: '1', to: '3', resistance: 2 },
      { name: 'c', from: '2', to: '0', resistance: 3 }, { name: 'd', from: '3', to: '0', resistance: 6 }, { name: 'across', from: '2', to: '3', resistance: 0.7 }, { name: 'end', from: '3', to: '9', resistance: 0.4 },
    ]
    // The pressure across goes with the square: within 1e-6 of the flow beside it.
    expect(Math.abs(flow(bridge, 'across'))).toBeLessThan(1e-5)
    expect(flow(bridge, 'end')).toBe(0)
  })

  it('two openings at different heights: what the columns press is what the airways take', () => {
    const p = naturalDraught(30, 10, 2, 85).pressurePa, way = airway({ lengthM: 120, areaM2: 2.2, perimeterM: 6, frictionKgM3: 0.014, shock: 1.5 })
    const q = flow([{ name: 'in', from: 'out', to: 'a', resistance: way.resistance, drive: p }, { name: 'rest', from: 'a', to: 'out', resistance: 0.01 }], 'in')
    expect(q).toBeCloseTo(Math.sqrt(p / (way.resistance + 0.01)), 10)
  })

  it('at every junction as much comes in as goes out, and closed ways balance (any network)', () => {
    const anyBranch = fc.record({ from: fc.integer({ min: 0, max: 7 }), to: fc.integer({ min: 0, max: 7 }),
      resistance: fc.integer({ min: -300, max: 300 }).map(v => 10 ** (v / 100)), drive: fc.integer({ min: -500, max: 500 }).map(v => v / 10) })
    fc.assert(fc.property(fc.array(anyBranch, { minLength: 1, maxLength: 16 }), (given) => {
      const branches = given.filter(b => b.from !== b.to).map((b, i): AirBranch => ({ ...b, name: `${i}`, from: `${b.from}`, to: `${b.to}` }))
      const solved = airNetwork(branches), most = Math.max(...solved.branches.map(b => Math.abs(b.flowM3S)), 1e-9)
      for (const node of new Set(branches.flatMap(b => [b.from, b.to]))) {
        const net = solved.branches.reduce((sum, b) => sum + (b.to === node ? b.flowM3S : 0) - (b.from === node ? b.flowM3S : 0), 0)
        expect(Math.abs(net)).toBeLessThan(1e-9 * most)
      }
      expect(solved.imbalancePa).toBeLessThan(1e-5)
    }), { numRuns: 200, seed: 12 })
  })

  it('nothing drives, nothing moves; no branches is no network', () => {
    expect(flow([{ name: 'a', from: '1', to: '2', resistance: 1 }, { name: 'b', from: '2', to: '1', resistance: 1 }], 'a')).toBe(0)
    expect(airNetwork([]).branches).toEqual([])
  })
  it.each([[{ resistance: 0 }, /resistance/], [{ resistance: NaN }, /resistance/], [{ to: '1' }, /another junction/], [{ drive: Infinity }, /drive/]] as const)('refuses %j', (part, message) => {
    expect(() => airNetwork([{ name: 'a', from: '1', to: '2', resistance: 1, ...part }])).toThrow(message)
  })
})

describe('fan and duct', () => {
  const fan = { freeFlowM3S: 0.5, shutPressurePa: 400, ductDiameterM: 0.3, ductLengthM: 60 }
  it('without leaks the fan meets friction and exit alone', () => {
    const { faceFlowM3S, fanFlowM3S, fanPressurePa, lost } = fanDuct({ ...fan, gap: 0 })
    const area = Math.PI * 0.09 / 4, r = 0.0037 * 60 * Math.PI * 0.3 / area ** 3 + 0.6 / area ** 2
    // R: r Q2 = 400 (1 - (Q/0.5)2)
    expect(faceFlowM3S).toBeCloseTo(Math.sqrt(400 / (r + 400 / 0.25)), 8)
    expect(fanFlowM3S).toBe(faceFlowM3S)
    expect(fanPressurePa).toBeCloseTo(r * faceFlowM3S ** 2, 6)
    expect(lost).toBe(0)
  })
  it('leaks and length cost the face, never the other way', () => {
    const face = (gap: number, ductLengthM: number) => fanDuct({ ...fan, gap, ductLengthM }).faceFlowM3S
    expect(face(0.003, 60)).toBeLessThan(face(0.0005, 60))
    expect(face(0.012, 60)).toBeLessThan(face(0.003, 60))
    expect(face(0.003, 120)).toBeLessThan(face(0.003, 60))
    expect(fanDuct({ ...fan, gap: 0.012 }).lost).toBeGreaterThan(fanDuct({ ...fan, gap: 0.003 }).lost)
  })
  it.each([[{ freeFlowM3S: 0 }, /free_flow/], [{ gap: -1 }, /gap/], [{ ductLengthM: NaN }, /duct_length/]] as const)('refuses %j', (part, message) => expect(() => fanDuct({ ...fan, ...part })).toThrow(message))
})

describe('speed times area', () => {
  it('nine points: their mean; one point: 0.8 of it', () => {
    expect(traverse([0.2, 0.3, 0.4], 2).flowM3S).toBeCloseTo(0.6, 12)
    expect(traverse([0.2, 0.3, 0.4], 2).sigmaM3S).toBeCloseTo(2 * 0.1 / Math.sqrt(3), 12)
    expect(traverse([0.5], 2).flowM3S).toBeCloseTo(0.8, 12)
    expect(smokeSpeed(5, 20)).toBeCloseTo(0.2, 12)
    expect(() => traverse([], 2)).toThrow(/speeds/)
    expect(() => traverse([-0.1], 2)).toThrow(/which way/)
  })
  // V: 8 CCR 8437(a): 200 cfm is 5.66 m3/min, 94 L/s
  it('200 cfm a person is 94 L/s', () => expect(airPerPerson * 1000).toBeCloseTo(94.4, 1))
})

describe('outlook by month', () => {
  it('turns round in the months whose days pass the inside\'s warmth', () => {
    const [winter, spring, summer] = breathingOutlook(1.4, 1.8, 10, [{ month: 'January', lowC: -12, highC: 1 }, { month: 'May', lowC: 4, highC: 20 }, { month: 'July', lowC: 12, highC: 30 }])
    expect([winter!.turns, spring!.turns, summer!.turns]).toEqual([false, true, false])
    expect([winter!.topAtLow, summer!.topAtHigh]).toEqual(['out', 'in'])
    expect(winter!.atLow).toBeGreaterThan(winter!.atHigh)
  })
})
