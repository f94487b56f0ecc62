import { InputError } from '@lodebook/reckon'
import { describe, expect, it } from 'vitest'
import { dating } from '../../src/reckon/dating.ts'
import { earthwork } from '../../src/reckon/earthwork.ts'

const run = (name: string, input: unknown) => [...dating, ...earthwork].find(reckoning => reckoning.name === name)?.run(input)

describe('reckon date-spans, section-volume, muck', () => {
  // V: Palmisano et al. 2017, counts and sums; spans rebuilt from them
  it('date-spans: counts 1 3 3 3', () => {
    const items = [{ from: -2200, to: -1400 }, { from: -2000, to: -1600 }, { from: -2000, to: -1400 }, { from: -1600, to: -1400 }]
    expect(run('date-spans', { items, bins: { start: -2200, width: 200, count: 4 } })).toMatchObject({
      counts: [1, 3, 3, 3], sums: [0.25, expect.closeTo(13 / 12, 12), expect.closeTo(13 / 12, 12), expect.closeTo(19 / 12, 12)], not_before: -1600,
      phases: [{ from: -1600, to: -1600, items: [0, 1, 2, 3] }],
    })
  })

  // V: Hicks, Handbook of Civil Engineering Calculations, p. 412
  it('section-volume: 6904 cubic yards', () => {
    const { volume } = run('section-volume', earthwork[0]?.example) as { volume: number }
    expect(Math.round(volume / 27)).toBe(6904)
  })

  it('muck: loads are not rounded, whole loads are', () => {
    expect(run('muck', { bank_volume: 10, swell_pct: 60, load_volume: 3 })).toMatchObject({ loose_volume: 16, loads: expect.closeTo(16 / 3, 12) as number, whole_loads: 6 })
  })

  it('runs every example, and names the field of bad input', () => {
    for (const { run, example } of [...dating, ...earthwork]) expect(run(example)).toBeTypeOf('object')
    expect(() => run('section-volume', { sections: [{ at: 0, area: 1 }], rule: 'prismoidal' })).toThrow(InputError)
    expect(() => run('date-spans', { items: [{ from: 1900, to: 1890 }], bins: { start: 1880, width: 10, count: 2 } })).toThrow(/items\[0\]\.to/)
  })
})
