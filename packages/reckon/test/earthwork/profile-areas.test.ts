import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { heightAt, profileAreas, profileBetween, sectionVolume, type Profile } from '../../src/earthwork/index.ts'

describe('cut and fill between two ground lines', () => {
  const level: Profile = [[0, 0], [10, 0]]
  it('a triangle over a level floor', () => { expect(profileAreas([[0, 0], [5, 4], [10, 0]], level)).toEqual({ cut: 20, fill: 0 }) })
  it('lines that cross: two triangles', () => { expect(profileAreas([[0, 2], [10, -2]], level)).toEqual({ cut: 5, fill: 5 }) })
  it('only where both are known', () => { expect(profileAreas([[-5, 1], [5, 1]], level)).toEqual({ cut: 5, fill: 0 }) })
  it('the same line twice is nothing', () => { expect(profileAreas([[0, 1], [3, 2]], [[0, 1], [3, 2]])).toEqual({ cut: 0, fill: 0 }) })

  const line = fc.array(fc.tuple(fc.integer({ min: 1, max: 30 }), fc.integer({ min: -40, max: 40 })), { minLength: 2, maxLength: 7 })
    .map((steps): Profile => { let x = 0; return steps.map(([dx, z]) => [(x += dx / 10), z / 10] as const) })
  it('agrees with slicing it thin (brute force), and turns with the roles', () => {
    fc.assert(fc.property(line, line, (found, wanted) => {
      const from = Math.max(found[0]![0], wanted[0]![0]), to = Math.min(found.at(-1)![0], wanted.at(-1)![0])
      fc.pre(to > from + 0.05)
      const n = 4000, dx = (to - from) / n
      let cut = 0, fill = 0
      for (let i = 0; i < n; i++) {
        const above = heightAt(found, from + (i + 0.5) * dx) - heightAt(wanted, from + (i + 0.5) * dx)
        if (above > 0) cut += above * dx
        else fill -= above * dx
      }
      const areas = profileAreas(found, wanted), near = 1e-3 * (1 + cut + fill)
      expect(Math.abs(areas.cut - cut)).toBeLessThan(near)
      expect(Math.abs(areas.fill - fill)).toBeLessThan(near)
      const turned = profileAreas(wanted, found)
      expect(turned.cut).toBeCloseTo(areas.fill, 10)
      expect(turned.fill).toBeCloseTo(areas.cut, 10)
    }), { seed: 17, numRuns: 60 })
  })

  it('half-way between a section and a point a pyramid is measured exactly by the prismoidal rule', () => {
    const base: Profile = [[0, 0], [3, 6], [6, 0]], point: Profile = [[0, 0], [3, 0], [6, 0]], mid = profileBetween(base, point)
    expect(mid).toEqual([[0, 0], [3, 3], [6, 0]])
    const area = (p: Profile) => profileAreas(p, [[0, 0], [6, 0]]).cut
    // A wedge that tapers in height alone: its volume is base x length / 2.
    expect(sectionVolume([{ at: 0, area: area(base), midArea: area(mid) }, { at: 5, area: 0 }], 'prismoidal')).toBeCloseTo(18 * 5 / 2, 12)
  })

  it.each<[string, Profile, Profile, RegExp]>([
    ['no points', [], level, /found/], ['one point', [[0, 0]], level, /found/], ['two on one spot', [[1, 0], [1, 2]], level, /found\[1\]\.across/],
    ['NaN', [[0, NaN], [1, 2]], level, /found\[0\]\.height/], ['lines side by side', [[20, 0], [30, 2]], level, /wanted/],
  ])('refuses %s', (_, found, wanted, field) => { expect(() => profileAreas(found, wanted)).toThrow(field) })
  it('keeps small differences far from zero', () => { expect(profileAreas([[1e7, 1], [1e7 + 2, 1]], [[1e7, 0], [1e7 + 2, 0]]).cut).toBe(2) })
})
