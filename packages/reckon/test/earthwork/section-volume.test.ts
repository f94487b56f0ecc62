import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { InputError } from '../../src/core/index.ts'
import { muck, sectionVolume, type Section } from '../../src/earthwork/index.ts'

const cubicYard = 27

describe('section volume against published cases', () => {
  // V: Hicks, Handbook of Civil Engineering Calculations, p. 412: 1504, 1860, 2240 sq ft over 100 ft
  const hicks: Section[] = [{ at: 0, area: 1504, midArea: 1860 }, { at: 100, area: 2240 }]
  it('prismoid: 6904 cubic yards', () => expect(Math.round(sectionVolume(hicks, 'prismoidal') / cubicYard)).toBe(6904))
  // R, same source: average end area and the prismoidal correction
  it('average end area 6933.3, correction -29.6', () => {
    expect(sectionVolume(hicks, 'average-end-area') / cubicYard).toBeCloseTo(6933.3, 1)
    expect((sectionVolume(hicks, 'prismoidal') - sectionVolume(hicks, 'average-end-area')) / cubicYard).toBeCloseTo(-29.6, 1)
  })

  // V: Vose, Handbook of Railroad Construction, 1857, secs 106-108: cut in rock, slopes 1/4 to 1, base 18 ft, cubic yards per 100 ft
  it.each([[1, 68], [2, 137], [3, 208], [4, 281], [5, 356], [6, 433], [7, 512], [8, 593], [9, 675], [10, 759]])('rock cut of %f ft: %f', (h, yards) => {
    const area = 18 * h + h * h / 4
    expect(Math.round(sectionVolume([{ at: 0, area }, { at: 100, area }], 'average-end-area') / cubicYard)).toBe(yards)
  })

  // V: same, earth, slopes 1 1/2 to 1, base 19 ft; 7 ft is printed 780 for 765
  it.each([[1, 76], [2, 163], [3, 261], [4, 371], [5, 491], [6, 622], [8, 919], [9, 1083], [10, 1260]])('earth cut of %f ft: %f', (h, yards) => {
    const area = 19 * h + 1.5 * h * h
    expect(Math.abs(sectionVolume([{ at: 0, area }, { at: 100, area }], 'average-end-area') / cubicYard - yards)).toBeLessThan(1)
  })

  // V-part: same, sec. 108: base 20 ft, slopes 1 1/2 to 1, cuts 0, 5, 10, 15, 0 at 50 ft. Printed 56,200 from end areas cut to whole feet
  const cuts = [0, 5, 10, 15, 0]
  const earth = (h: number) => 20 * h + 1.5 * h * h
  const row = cuts.map((h, i): Section => ({ at: 50 * i, area: earth(h), midArea: earth((h + (cuts[i + 1] ?? 0)) / 2) }))
  it('a cutting by average end area: 56,250 (printed 56,200)', () => expect(sectionVolume(row, 'average-end-area')).toBe(56_250))
  it('the same by the prismoidal rule: 52,500 (R)', () => expect(sectionVolume(row, 'prismoidal')).toBeCloseTo(52_500, 8))
})

describe('section volume', () => {
  it('both rules agree on a prism; average end area makes a pyramid half too large (Webb, Railroad Construction, V)', () => {
    const prism: Section[] = [{ at: 2, area: 3, midArea: 3 }, { at: 12, area: 3 }]
    expect(sectionVolume(prism, 'prismoidal')).toBeCloseTo(sectionVolume(prism, 'average-end-area'), 12)
    const pyramid: Section[] = [{ at: 0, area: 12, midArea: 3 }, { at: 9, area: 0 }]
    expect(sectionVolume(pyramid, 'prismoidal')).toBeCloseTo(12 * 9 / 3, 12)
    expect(sectionVolume(pyramid, 'average-end-area')).toBeCloseTo(1.5 * 12 * 9 / 3, 12)
  })

  it('the prismoidal rule is exact where area is a cubic of distance (Simpson)', () => {
    const cubic = fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 4, maxLength: 4 })
    fc.assert(fc.property(cubic, fc.integer({ min: 1, max: 20 }), ([a = 0, b = 0, c = 0, d = 0], length) => {
      const area = (x: number) => a + b * x + c * x * x + d * x ** 3
      const exact = a * length + b * length ** 2 / 2 + c * length ** 3 / 3 + d * length ** 4 / 4
      expect(sectionVolume([{ at: 0, area: area(0), midArea: area(length / 2) }, { at: length, area: area(length) }], 'prismoidal')).toBeCloseTo(exact, 7)
    }), { seed: 91, numRuns: 200 })
  })

  it.each<[string, Section[], RegExp]>([
    ['one section', [{ at: 0, area: 1 }], /sections/], ['none', [], /sections/], ['distance that does not rise', [{ at: 1, area: 1 }, { at: 1, area: 1 }], /sections\[1\]\.at/],
    ['a negative area', [{ at: 0, area: -1 }, { at: 1, area: 1 }], /sections\[0\]\.area/], ['NaN', [{ at: 0, area: NaN }, { at: 1, area: 1 }], /sections\[0\]\.area/],
    ['no half-way area', [{ at: 0, area: 1 }, { at: 1, area: 1 }], /sections\[0\]\.mid_area/],
  ])('refuses %s', (_, sections, field) => {
    expect(() => sectionVolume(sections, 'prismoidal')).toThrow(InputError)
    expect(() => sectionVolume(sections, 'prismoidal')).toThrow(field)
  })
})

describe('muck', () => {
  // V: loader-handbook table, checks/physical.md section 5.2: swell %, voids %, load factor
  it.each([[5, 4.8, 0.952], [10, 9.1, 0.909], [15, 13.0, 0.870], [20, 16.7, 0.833], [25, 20.0, 0.800], [30, 23.1, 0.769], [35, 25.9, 0.741]])(
    'swell %f %%: voids %f %%, load factor %f', (swell, voids, factor) => {
      expect(muck(1, swell, 1).voids * 100).toBeCloseTo(voids, 1)
      expect(muck(1, swell, 1).loadFactor).toBeCloseTo(factor, 3)
    })

  // V: breccia 154 lb/cu ft in place, 90 lb/cu ft as muck (Compressed Air magazine): swell factor 1.71
  it('breccia of old workings: 154 lb in place fills 1.71 as much', () => expect(muck(1, (154 / 90 - 1) * 100, 1).looseVolume).toBeCloseTo(1.71, 2))

  // V: a barrow of 2, 3 or 6 cu ft takes 14 (13.5), 9 or 4.5 loads to the cubic yard
  it.each([[2, 13.5], [3, 9], [6, 4.5]])('a barrow of %f cu ft: %f loads a yard', (barrow, loads) => expect(muck(27, 0, barrow).loads).toBe(loads))

  it('refuses a negative swell, a load of nothing, NaN', () => {
    expect(() => muck(1, -5, 1)).toThrow(/swell_pct/)
    expect(() => muck(1, 5, 0)).toThrow(/load_volume/)
    expect(() => muck(NaN, 5, 1)).toThrow(InputError)
    expect(muck(0, 50, 1)).toMatchObject({ looseVolume: 0, loads: 0 })
  })
})
