import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { clocksAhead, clockTime, firstClock, receive, tick } from '../../src/index.ts'
import { postingsOf, startMs } from './sample-postings.ts'

describe('[P3] the clock', () => {
  it('is the time of day', () => {
    expect(tick(firstClock, startMs)).toBe('1777795200000-0000')
    expect(clockTime('1777795200000-0000')).toBe('2026-05-03T08:00:00.000Z')
  })
  it('counts within a millisecond and when time stands still or goes back', () => {
    expect(tick('1777795200000-0000', startMs)).toBe('1777795200000-0001')
    expect(tick('1777795200000-0041', startMs - 5000)).toBe('1777795200000-0042')
    expect(tick('1777795200000-9999', startMs)).toBe('1777795200001-0000')
  })
  it('is later than whatever was seen', () => {
    const ms = fc.integer({ min: 0, max: 2 ** 41 })
    fc.assert(fc.property(fc.array(ms, { minLength: 1, maxLength: 20 }), ms, (times, now) => {
      const clocks = times.map(ms => tick(firstClock, ms))
      const next = tick(clocks.reduce(receive, firstClock), now)
      for (const clock of clocks) expect(next > clock).toBe(true)
      expect(next).toMatch(/^\d{13}-\d{4}$/)
    }), { seed: 1, numRuns: 300 })
  })
  it.each([Number.NaN, -1, 1.5, Date.UTC(2200, 0, 2)])('refuses the time %s', (nowMs) => { expect(() => tick(firstClock, nowMs)).toThrow(/nowMs/) })
})

describe('[P4] clocks ahead', () => {
  const postings = [...postingsOf('d1', [{ entry: 'e1', kind: 'sample', set: {} }]), ...postingsOf('d2', [{ entry: 'e2', kind: 'sample', set: {} }, { entry: 'e2', kind: 'sample', set: {} }])]
  it('are named once a device, with the first posting', () => {
    expect(clocksAhead(postings, startMs - 3 * 3_600_000)).toEqual([
      expect.objectContaining({ device: 'd1', seq: 1, aheadMs: 3 * 3_600_000, message: 'Device d1 (crew of d1): its clock is 3 hours ahead since its posting 1; set it right.' }),
      expect.objectContaining({ device: 'd2', seq: 1 }),
    ])
  })
  it('a few minutes are nothing', () => { expect(clocksAhead(postings, startMs - 9 * 60_000)).toEqual([]) })
  it('the first posting is found in any order', () => { expect(clocksAhead([...postings].reverse(), 0).map(({ device, seq }) => `${device} ${seq}`)).toEqual(['d2 1', 'd1 1']) })
})
