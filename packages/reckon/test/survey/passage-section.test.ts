import { describe, expect, it } from 'vitest'
import { passageSection, passageVolume, shoelace } from '../../src/survey/index.ts'

const even = { left: 1, right: 1, up: 1, down: 1 }

describe('cross sections', () => {
  it('[PS1] offsets alone give a superellipse of exponent 3: 4 Γ(4/3)² / Γ(5/3) a b = 3.533 a b (M), to what 24 corners can', () => {
    const { area } = passageSection({ left: 0.5, right: 0.9, up: 1.2, down: 0.8 })
    const exact = 4 * 0.8929795115692493 ** 2 / 0.9027452929509336 / 4 * (0.5 + 0.9) * (1.2 + 0.8)
    expect(area / exact).toBeGreaterThan(0.97)
    expect(area).toBeLessThan(exact)
  })

  it('[PS2] sights to the corners of a box make it a box, and take most of the doubt of its shape away', () => {
    const hits = [-1, 1].flatMap(right => [-1, 1].map(up => ({ right, up })))
    const { area, shapeSigma } = passageSection(even, hits)
    expect(area).toBeGreaterThan(3.85)
    expect(area).toBeLessThanOrEqual(4 + 1e-12)
    expect(shapeSigma).toBeLessThan(0.7 * passageSection(even).shapeSigma)
  })

  it('[PS3] mirrored offsets give the mirrored outline; scaling by k scales the area by k²', () => {
    const one = passageSection({ left: 0.4, right: 1.1, up: 1, down: 0.7 }), other = passageSection({ left: 1.1, right: 0.4, up: 1, down: 0.7 })
    expect(other.area).toBeCloseTo(one.area, 12)
    expect(Math.max(...other.outline.map(p => p.right))).toBeCloseTo(0.4, 12)
    expect(passageSection({ left: 1.2, right: 3.3, up: 3, down: 2.1 }).area / one.area).toBeCloseTo(9, 10)
  })

  it('[PS4] edges: no opening at all, one offset only, a hit on the station, offsets that are none', () => {
    expect(passageSection({ left: 0, right: 0, up: 0, down: 0 }).area).toBe(0)
    expect(passageSection({ left: 1, right: 0, up: 0, down: 0 }).area).toBeCloseTo(0, 12)
    expect(passageSection(even, [{ right: 0, up: 0 }]).area).toBe(passageSection(even).area)
    expect(() => passageSection({ ...even, up: -1 })).toThrow('offsets.up')
    expect(() => passageSection({ ...even, up: Number.NaN })).toThrow('offsets.up')
  })

  it('[PS5] a shoelace sum is the area by hand', () => {
    expect(shoelace([{ right: 0, up: 0 }, { right: 4, up: 0 }, { right: 4, up: 3 }])).toBe(6)
  })
})

describe('volumes', () => {
  const at = (where: number, size: number, taped = true) => ({ at: where, section: passageSection({ left: size, right: size, up: size, down: size }), taped })

  it('[PS6] a prism is area times length, and cutting it in the middle changes nothing', () => {
    const one = passageVolume([at(0, 1), at(10, 1)])
    expect(one.volume).toBeCloseTo(10 * passageSection(even).area, 10)
    expect(passageVolume([at(0, 1), at(5, 1), at(10, 1)]).volume).toBeCloseTo(one.volume, 10)
  })

  it('[PS7] the doubt of the shape is shared: more sections do not average it away; borrowed offsets widen it', () => {
    const many = passageVolume(Array.from({ length: 41 }, (_, i) => at(i / 4, 1)))
    expect(many.sigma).toBeGreaterThan(10 * passageSection(even).shapeSigma * 0.99)
    expect(passageVolume([at(0, 1, false), at(10, 1, false)]).sigma).toBeGreaterThan(2 * passageVolume([at(0, 1), at(10, 1)]).sigma)
    expect(passageVolume([]).volume).toBe(0)
    expect(passageVolume([at(0, 1)]).volume).toBe(0)
  })
})
