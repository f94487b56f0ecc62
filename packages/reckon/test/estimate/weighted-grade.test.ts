import { readFileSync } from 'node:fs'
import Papa from 'papaparse'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { averageAlong, weightedGrade } from '../../src/estimate/index.ts'
import { mean, standardDeviation } from '../../src/statistics/index.ts'

// Status of each value: V read in the source, M from memory, R recomputed from data that were read; 'own' cases have no published answer.

describe('narrow-vein channels: GSC memoir, Silver Standard mine and neighbours (data V, answers R)', () => {
  const text = readFileSync(new URL('../../../../checks/data/gsc_narrow_vein_channel_samples.csv', import.meta.url), 'utf8')
  const rows = Papa.parse<Record<string, string>>(text.trim(), { header: true }).data
  const number = (value: string | undefined) => value === 'trace' ? 0 : Number(value)
  const channels = rows.filter(row => row.type_and_note!.startsWith('underground'))
  const intervals = channels.map(row => ({ width: number(row.width_in), grade: number(row.au_oz_per_short_ton) }))
  it('15 of 22 are underground channels, 201 in together', () => {
    expect(rows.length).toBe(22)
    expect(channels.length).toBe(15)
    expect(weightedGrade({ intervals }).width).toBe(201)
  })
  it('R: weighted by width 0.043930 oz/ton (8.83 over 201), against a plain mean of 0.031000; trace counts 0', () => {
    expect(weightedGrade({ intervals }).grade).toBeCloseTo(0.043930, 6)
    expect(weightedGrade({ intervals }).grade * 201).toBeCloseTo(8.83, 10)
    expect(mean(intervals.map(i => i.grade))).toBeCloseTo(0.031, 6)
  })
  it('R: silver of all 20 that have it: plain 12.6957, weighted 13.7561, geometric 1.79032, deviation of logs 2.46006, coefficient of variation 1.513', () => {
    const silver = rows.filter(row => row.ag_oz_per_short_ton !== '').map(row => ({ width: number(row.width_in), grade: number(row.ag_oz_per_short_ton) }))
    const grades = silver.map(s => s.grade)
    expect(silver.length).toBe(20)
    expect(mean(grades)).toBeCloseTo(12.6957, 4)
    expect(weightedGrade({ intervals: silver }).grade).toBeCloseTo(13.7561, 4)
    expect(Math.exp(mean(grades.map(Math.log)))).toBeCloseTo(1.79032, 5)
    expect(standardDeviation(grades.map(Math.log))).toBeCloseTo(2.46006, 5)
    expect(standardDeviation(grades) / mean(grades)).toBeCloseTo(1.513, 3)
  })
})

describe('dilution to a least width', () => {
  it('own: 0.30 m at 40 g/t to 0.90 m in barren rock is 13.333', () => {
    expect(weightedGrade({ intervals: [{ width: 0.3, grade: 40 }], minimumWidth: 0.9 })).toEqual({
      width: 0.3, grade: 40, dilutedWidth: 0.9, dilutedGrade: expect.closeTo(40 / 3, 10) as number })
  })
  it('own: with densities 2.65 and 2.80 and a wall of 0.2 g/t it is 12.9842', () => {
    const { dilutedGrade } = weightedGrade({ intervals: [{ width: 0.3, grade: 40, density: 2.65 }], minimumWidth: 0.9, wallGrade: 0.2, wallDensity: 2.8 })
    expect(dilutedGrade).toBeCloseTo(12.9842, 4)
  })
  it('a vein wider than the least width is not diluted', () => {
    const vein = weightedGrade({ intervals: [{ width: 1.2, grade: 7 }], minimumWidth: 0.9, wallGrade: 0.2 })
    expect(vein.dilutedWidth).toBe(1.2)
    expect(vein.dilutedGrade).toBe(vein.grade)
  })
})

describe('weighted grade', () => {
  const interval = fc.record({ width: fc.double({ min: 0.01, max: 3, noNaN: true }), grade: fc.double({ min: 0, max: 500, noNaN: true }) })
  it('lies between the least and the greatest, does not mind order, unit of width or equal densities', () => {
    fc.assert(fc.property(fc.array(interval, { minLength: 1, maxLength: 12 }), fc.double({ min: 0.1, max: 100, noNaN: true }), (intervals, k) => {
      const { grade } = weightedGrade({ intervals: Object.freeze(intervals) })
      expect(grade).toBeGreaterThanOrEqual(Math.min(...intervals.map(i => i.grade)) - 1e-9)
      expect(grade).toBeLessThanOrEqual(Math.max(...intervals.map(i => i.grade)) + 1e-9)
      for (const other of [[...intervals].reverse(), intervals.map(i => ({ ...i, width: i.width * k })), intervals.map(i => ({ ...i, density: k }))]) {
        expect(weightedGrade({ intervals: other }).grade).toBeCloseTo(grade, 8)
      }
    }), { seed: 1 })
  })
  it('heavier rock counts for more', () => {
    const intervals = [{ width: 1, grade: 0, density: 2.65 }, { width: 1, grade: 10, density: 5.3 }]
    expect(weightedGrade({ intervals }).grade).toBeCloseTo(20 / 3, 12)
  })
  it.each([
    [{ intervals: [] }, 'intervals'],
    [{ intervals: [{ width: 0, grade: 1 }] }, 'intervals[0].width'],
    [{ intervals: [{ width: 1, grade: -1 }] }, 'intervals[0].grade'],
    [{ intervals: [{ width: 1, grade: 1, density: 2 }, { width: 1, grade: 1 }] }, 'intervals[1].density'],
    [{ intervals: [{ width: 1, grade: 1 }], wallDensity: 2.7 }, 'intervals[0].density'],
    [{ intervals: [{ width: 1, grade: 1 }], minimumWidth: NaN }, 'minimum_width'],
    [{ intervals: [{ width: 1, grade: 1 }], wallGrade: -1 }, 'wall_grade'],
  ])('refuses %j naming %s', (input, field) => { expect(() => weightedGrade(input)).toThrow(field) })
})

describe('average along a heading', () => {
  // V rule: Hoover, Principles of Mining, ch. II, footnote; numbers R
  it('R: widths 2, 4, 6 at 0, 10, 30 average 4.3333, not 4', () => {
    expect(averageAlong([{ at: 0, width: 2 }, { at: 10, width: 4 }, { at: 30, width: 6 }]).meanWidth).toBeCloseTo(130 / 30, 12)
  })
  it('V rule: even spacing gives the two ends half weight', () => {
    const widths = [1, 2, 5, 3, 4]
    const { meanWidth } = averageAlong(widths.map((width, i) => ({ at: 5 * i, width })))
    expect(meanWidth).toBeCloseTo((0.5 + 2 + 5 + 3 + 2) / 4, 12)
  })
  it('grade is metal over area; missing one grade it says none', () => {
    const cuts = [{ at: 30, width: 6, grade: 1 }, { at: 0, width: 2, grade: 10 }, { at: 10, width: 4, grade: 5 }]
    expect(averageAlong(cuts).meanGrade).toBeCloseTo((10 * 20 + 20 * 13) / 130, 12)
    expect(averageAlong([...cuts, { at: 40, width: 3 }]).meanGrade).toBeUndefined()
    expect(averageAlong(cuts).length).toBe(30)
  })
  it('refuses one cut, cuts at one place and a width of zero', () => {
    expect(() => averageAlong([{ at: 0, width: 1 }])).toThrow('too few')
    expect(() => averageAlong([{ at: 3, width: 1 }, { at: 3, width: 2 }])).toThrow('coincident')
    expect(() => averageAlong([{ at: 3, width: 1 }, { at: 4, width: 0 }])).toThrow('cuts[1].width')
  })
})
