import { describe, expect, it } from 'vitest'
import type { Enu } from '../../../src/core/index.ts'
import {
  axesOf, bearingOf, chanceWithin, crossSheet, edgeOf, edgesOn, fromSheet, lengthFor, lostPartFamily, meetHeading, onSheet, planeOnSheet, planSheet,
  shortestHeading, stretchOf, traceBand, tracesOn, whatItTells,
} from '../../../src/structure/index.ts'
import type { SheetLine } from '../../../src/structure/index.ts'
import { add, amount, dot, exactly, scaled, setting, slipAt, subtract, vein } from './setting.ts'

const slip = slipAt(125, 8)
const family = lostPartFamily({ ...setting, evidence: { vector: { slip, sigma: 0 }, amount }, count: 50 })
const loose = lostPartFamily({
  ...setting, vein: { ...vein, sigma: 0.2 },
  evidence: { grooves: { line: slipAt(125, 1), sigma: 6 }, senses: [{ toward: slipAt(125, 1), trust: 0.95 }], amount: { low: 5, high: 12 } },
})
const { normal, strike } = axesOf({ strike: 40, dip: 70 })
const apart = dot(slip, normal)
// A place far along the vein on the lost side: nothing of the fault is in the way.
const far = scaled(strike, dot(strike, axesOf({ strike: 110, dip: 60 }).normal) < 0 ? 60 : -60)
const towards: Enu = scaled(normal, Math.sign(apart))

describe('meeting a heading', () => {
  it('[MH1] square to the vein it is met after the distance between the parts', () => {
    const { lengths, points } = meetHeading(family, { from: far, ...bearingOf(towards) })
    for (const length of lengths) expect(length).toBeCloseTo(Math.abs(apart), 9)
    for (const point of points) expect(dot(subtract(point!, slip), normal)).toBeCloseTo(0, 9)
  })
  it('[MH2] not behind, not along the vein, and not this side of the fault', () => {
    const square = bearingOf(towards)
    expect(meetHeading(family, { from: far, ...bearingOf(scaled(towards, -1)) }).lengths.every(l => l === Infinity)).toBe(true)
    expect(meetHeading(family, { from: far, bearing: 40, inclination: 0 }).lengths.every(l => l > 1e9)).toBe(true)
    const near = scaled(far, -1)
    expect(meetHeading(family, { from: near, ...square })).toMatchObject({ points: family.draws.map(() => undefined) })
  })
  it('[MH3] the separation along the heading does not hang on where it starts', () => {
    const heading = { bearing: 100, inclination: 12 }
    const [one, other] = [far, [3, 4, 5] as Enu].map(from => meetHeading(loose, { from, ...heading }).separations)
    expect(one).toEqual(other)
  })
  it('[MH4] refuses a place that is none', () => {
    expect(() => meetHeading(family, { from: [0, Number.NaN, 0], bearing: 0, inclination: 0 })).toThrow('heading.from')
    expect(() => meetHeading(family, { from: far, bearing: Number.NaN, inclination: 0 })).toThrow('heading')
  })
})

describe('lengths', () => {
  it('[LN1] chance and length undo each other; a draw never met counts as no length', () => {
    const lengths = [4, 1, Infinity, 2, 3]
    expect(chanceWithin(lengths, 3)).toBe(0.6)
    expect(lengthFor(lengths, 0.6)).toBe(3)
    expect(lengthFor(lengths, 0.8)).toBe(4)
    expect(lengthFor(lengths, 0.81)).toBe(Infinity)
    expect(lengthFor([], 0.5)).toBe(Infinity)
    expect(lengths).toEqual([4, 1, Infinity, 2, 3])
    expect(() => lengthFor(lengths, 0)).toThrow('share')
  })
})

describe('the shortest heading', () => {
  it('[SH1] is square to the vein where nothing is in the way; level, it is longer by the sine of the dip', () => {
    const free = shortestHeading(family, far)!
    expect(free.length).toBeCloseTo(Math.abs(apart), 4)
    const level = shortestHeading(family, far, { inclination: 0 })!
    expect(level.length).toBeCloseTo(Math.abs(apart) / Math.sin(70 * Math.PI / 180), 4)
    expect(level.inclination).toBe(0)
    expect(Math.abs(level.bearing - bearingOf([towards[0], towards[1], 0]).bearing)).toBeLessThan(0.5)
  })
  it('[SH2] is no longer than a thousand others, drawn evenly', () => {
    const best = shortestHeading(loose, far)!
    const others = Array.from({ length: 1000 }, (_, i) => {
      const up = -0.97 + 1.94 * ((i * 0.618034) % 1)
      const heading = { from: far, bearing: (i * 137.508) % 360, inclination: Math.asin(up) * 180 / Math.PI }
      return lengthFor(meetHeading({ ...loose, draws: loose.draws.slice(0, 250) }, heading).lengths, 0.8)
    })
    expect(best.length).toBeLessThan(1.05 * Math.min(...others))
    expect(chanceWithin(meetHeading(loose, best).lengths, best.length)).toBeGreaterThanOrEqual(0.8)
  })
  it('[SH3] from this side of the fault goes through the fault', () => {
    const near = scaled(far, -0.1)
    const best = shortestHeading(family, near)!
    const { fault } = family.draws[0]!
    expect(dot(fault.normal, subtract(near, fault.point))).toBeGreaterThan(0)
    const point = meetHeading(family, best).points[0]!
    expect(dot(fault.normal, subtract(point, fault.point))).toBeLessThanOrEqual(1e-9)
    expect(best.length).toBeGreaterThan(Math.abs(dot(normal, subtract(slip, near))))
  })
  it('[SH4] is not named when no direction meets it often enough', () => {
    const grooves = { line: slipAt(125, 1), sigma: 3 }
    const both = lostPartFamily({ ...setting, evidence: { grooves, senses: [{ toward: slipAt(125, 1), trust: 0.5 }], amount } })
    expect(shortestHeading(both, far)).toBeUndefined()
    expect(whatItTells(both.draws.map(d => d.apart)).tells).toBe('nothing')
    expect(() => shortestHeading(both, far, { inclination: 91 })).toThrow('inclination')
  })
})

describe('what a family tells', () => {
  it('[WT1] where, which hand or nothing, by its 80 % range', () => {
    const even = (from: number, to: number) => Array.from({ length: 101 }, (_, i) => from + (to - from) * i / 100)
    expect(whatItTells(even(3, 6))).toMatchObject({ tells: 'where', median: 4.5, low: 3.3, high: 5.7, chanceUp: 1 })
    expect(whatItTells(even(-6, -3)).tells).toBe('where')
    expect(whatItTells(even(1, 11)).tells).toBe('which hand')
    expect(whatItTells(even(-2, 8)).tells).toBe('nothing')
    expect(whatItTells(even(-2, 8)).chanceUp).toBeCloseTo(0.8, 1)
    expect(() => whatItTells([])).toThrow()
  })
})

describe('traces', () => {
  const sheets = [planSheet(3), crossSheet([5, 5, 0], 130)]
  it('[TR1] lie in the continuation and begin on the fault, running into the lost side', () => {
    for (const sheet of sheets) {
      const lines = tracesOn(loose, sheet)
      expect(lines).toHaveLength(loose.draws.length)
      lines.forEach(({ point, direction }, i) => {
        const draw = loose.draws[i]!
        const [start, on] = [fromSheet(sheet, point), fromSheet(sheet, [point[0] + 7 * direction[0], point[1] + 7 * direction[1]])]
        for (const p of [start, on]) expect(Math.abs(dot(draw.normal, subtract(p, draw.point)))).toBeLessThan(1e-8)
        expect(Math.abs(dot(draw.fault.normal, subtract(start, draw.fault.point)))).toBeLessThan(1e-8)
        expect(loose.far * dot(draw.fault.normal, subtract(on, draw.fault.point))).toBeGreaterThan(0)
      })
    }
  })
  it('[TR2] the band holds four in five of them wherever all have begun, and its cases are among them', () => {
    const sheet = planSheet(0)
    const lines = tracesOn(loose, sheet)
    const band = traceBand(lines, { centre: [0, 0], reach: 40 })!
    const [low, high] = [band.low.at(-1)!, band.high.at(-1)!]
    const side = (line: SheetLine, p: readonly [number, number]) => line.direction[0] * (p[1] - line.point[1]) - line.direction[1] * (p[0] - line.point[0])
    const between = lines.filter(line => side(line, low) * side(line, high) <= 0).length
    expect(Math.abs(between / lines.length - 0.8)).toBeLessThan(0.01)
    expect(band.cases).toHaveLength(20)
    expect(band.middle).toHaveLength(band.low.length)
    expect(traceBand([], { centre: [0, 0], reach: 1 })).toBeUndefined()
    expect(() => traceBand(lines, { centre: [0, 0], reach: 0 })).toThrow('reach')
  })
  it('[TR3] edges lie in continuation and fault both', () => {
    for (const draw of loose.draws.slice(0, 50)) {
      const { point, direction } = edgeOf(draw)!
      for (const p of [point, add(point, scaled(direction, 9))]) {
        expect(Math.abs(dot(draw.normal, subtract(p, draw.point)))).toBeLessThan(1e-8)
        expect(Math.abs(dot(draw.fault.normal, subtract(p, draw.fault.point)))).toBeLessThan(1e-8)
      }
    }
    expect(edgesOn(loose, planSheet(0))).toHaveLength(loose.draws.length)
  })
  it('[TR4] a sheet along the vein or along a plane cuts no line', () => {
    const inVein = { origin: [0, 0, 1000] as Enu, across: strike, up: axesOf({ strike: 40, dip: 70 }).dip }
    expect(tracesOn(family, inVein)).toHaveLength(0)
    expect(planeOnSheet(planSheet(0), exactly({ strike: 0, dip: 0 }))).toBeUndefined()
    const line = planeOnSheet(planSheet(0), exactly({ strike: 90, dip: 45 }, [0, 0, 10]))! // falls to the south: 10 m south at the level 10 m down
    expect(line.point[1]).toBeCloseTo(-10, 9)
    expect(Math.abs(line.direction[0])).toBeCloseTo(1, 9)
  })
  it('[TR5] a stretch stays in its window, and one that passes by is not drawn', () => {
    const line: SheetLine = { point: [0, 3], direction: [1, 0], ends: false }
    expect(stretchOf(line, { centre: [10, 0], reach: 5 })).toEqual([[6, 3], [14, 3]])
    expect(stretchOf({ ...line, point: [12, 3], ends: true }, { centre: [10, 0], reach: 5 })).toEqual([[12, 3], [14, 3]])
    expect(stretchOf({ ...line, point: [20, 3], ends: true }, { centre: [10, 0], reach: 5 })).toBeUndefined()
    expect(stretchOf(line, { centre: [10, -9], reach: 5 })).toBeUndefined()
  })
  it('[TR6] sheet and grid undo each other', () => {
    const sheet = crossSheet([1, 2, 3], 200)
    const [x, y] = onSheet(sheet, fromSheet(sheet, [4, -5]))
    expect(x).toBeCloseTo(4, 12)
    expect(y).toBeCloseTo(-5, 12)
    expect(() => crossSheet([0, 0, 0], Number.NaN)).toThrow('azimuth')
  })
})
