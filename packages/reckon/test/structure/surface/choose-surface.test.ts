import { describe, expect, it } from 'vitest'
import type { DegenerateError} from '../../../src/core/index.ts'
import { drawsFrom } from '../../../src/core/index.ts'
import { chooseSurface, surfaceAt } from '../../../src/structure/index.ts'
import type { SurfaceData } from '../../../src/structure/index.ts'

/** A drift and a sublevel on a vein 80 m long: places good to 0.1 m and readings good to 4 degrees on a given surface, with swells of 0.1 m over 10 m. */
function drift(seed: number, off: (along: number, down: number) => number): SurfaceData {
  const draws = drawsFrom(seed), swell = 0.1
  const waves = Array.from({ length: 12 }, () => ({ k: (0.3 + draws.uniform()) / 5, turn: draws.uniform() * 6.28, phase: draws.uniform() * 6.28 }))
  const wave = (a: number, d: number) => waves.reduce((sum, w) => sum + Math.cos(w.k * (a * Math.cos(w.turn) + d * Math.sin(w.turn)) + w.phase), 0)
  const surface = (a: number, d: number) => off(a, d) + swell * Math.sqrt(2 / 12) * wave(a, d)
  const at = Array.from({ length: 60 }, (_, i) => ({ along: -40 + 80 * draws.uniform(), down: i % 3 === 0 ? -10 + draws.uniform() : 2 * draws.uniform() }))
  const slope = 4 * Math.PI / 180, h = 0.1
  return {
    points: at.map(p => ({ ...p, off: surface(p.along, p.down) + 0.1 * draws.normal(), variance: 0.01 + swell ** 2 })),
    slopes: at.filter((_, i) => i % 2 === 0).map(p => ({
      ...p, variance: slope ** 2,
      slopeAlong: (surface(p.along + h, p.down) - surface(p.along - h, p.down)) / (2 * h) + slope * draws.normal(),
      slopeDown: (surface(p.along, p.down + h) - surface(p.along, p.down - h)) / (2 * h) + slope * draws.normal(),
    })),
  }
}
const chosen = (count: number, off: (along: number, down: number) => number) => Array.from({ length: count }, (_, i) => chooseSurface(drift(i + 1, off)))
const ofKind = (all: ReturnType<typeof chosen>, kind: string) => all.filter(c => c.chosen.kind === kind)
const tan = (degrees: number) => Math.tan(degrees * Math.PI / 180)

describe('one plane against two, a step or a curve', () => {
  it('[CS1] a plane with swells and nothing else is called a plane nine times in ten', () => {
    expect(ofKind(chosen(30, () => 0), 'plane').length).toBeGreaterThanOrEqual(27)
  })

  it('[CS2] two planes that meet at 8 degrees are called so, and the break is where it was put', () => {
    const bent = ofKind(chosen(10, a => tan(8) * Math.max(0, a - 10)), 'bend')
    expect(bent.length).toBeGreaterThanOrEqual(9)
    const at = bent.map(c => c.chosen.surface.line!.at).sort((a, b) => a - b)
    expect(Math.abs(at[Math.floor(at.length / 2)]! - 10)).toBeLessThan(2)
    for (const { chosen: { surface } } of bent) {
      const turned = Math.atan(surfaceAt(surface, 35, 0).slopeAlong - surfaceAt(surface, -35, 0).slopeAlong) * 180 / Math.PI
      expect(Math.abs(turned - 8)).toBeLessThan(3)
    }
  })

  it('[CS3] a long curve is called a curve, and a step of 1 m a step more often than anything else', () => {
    expect(ofKind(chosen(6, a => a * a / 200), 'curve').length).toBe(6)
    const stepped = chosen(10, a => a > 10 ? 1 : 0)
    expect(ofKind(stepped, 'step').length).toBeGreaterThanOrEqual(5)
    const high = ofKind(stepped, 'step').map(c => c.chosen.surface.coefficients[3]!).sort((a, b) => a - b)
    expect(Math.abs(high[Math.floor(high.length / 2)]! - 1)).toBeLessThan(0.25)
  })

  it('[CS4] comes back exactly where there is no error: two planes at 10 degrees', () => {
    const off = (a: number) => tan(10) * Math.max(0, a)
    const points = Array.from({ length: 40 }, (_, i) => ({ along: i - 19.5, down: (i % 4) * 3, off: off(i - 19.5), variance: 1e-4 }))
    const { chosen: { kind, surface } } = chooseSurface({ points, slopes: [] })
    expect(kind).toBe('bend')
    expect(surface.line!.turn).toBe(0)
    expect(Math.abs(surface.line!.at)).toBeLessThan(1)
    expect(Math.abs(surface.coefficients[3]! - tan(10))).toBeLessThan(0.02)
  })

  it('[CS5] refuses too few places, places on one spot and on a line; readings settle what a line leaves open', () => {
    const line = Array.from({ length: 20 }, (_, i) => ({ along: i, down: 0, off: 0, variance: 0.01 }))
    const reason = (data: SurfaceData) => { try { chooseSurface(data); return '' } catch (error) { return (error as DegenerateError).reason } }
    expect(reason({ points: line.slice(0, 5), slopes: [] })).toBe('too few')
    expect(reason({ points: line, slopes: [] })).toBe('collinear')
    expect(reason({ points: line.map(p => ({ ...p, along: 3 })), slopes: [] })).toBe('collinear')
    expect(reason({ points: [], slopes: [] })).toBe('too few')
    const slopes = line.map(({ along, down }) => ({ along, down, slopeAlong: 0, slopeDown: 0, variance: 0.01 }))
    expect(chooseSurface({ points: line, slopes }).chosen.kind).toBe('plane')
  })

  it('[CS6] leaves what it was given as it was', () => {
    const data = drift(3, () => 0), before = structuredClone(data)
    chooseSurface(data)
    expect(data).toEqual(before)
  })
})
