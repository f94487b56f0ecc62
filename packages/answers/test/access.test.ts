import { describe, expect, it } from 'vitest'
import { makeDemo } from '../../../demo/src/index.ts'
import { fold } from '@lodebook/book'
import { createReckoner } from '../src/index.ts'
import type { Access } from '../src/index.ts'

const accessOf = (seed: number): { access: Access, dug: ReadonlyMap<string, number> } => {
  const demo = makeDemo(seed), reckoner = createReckoner(fold(demo.unsealed))
  const access = reckoner.answer('access')
  if ('notEnough' in access) throw new Error(access.sentence)
  return { access, dug: demo.truth.dug }
}

describe('access on the invented mine', () => {
  const { access, dug } = accessOf(1893)
  it('names what is left before what is done, and opens every figure to entries', () => {
    expect(access.jobs.map(j => j.state)).toEqual(['at it', 'to do', 'done'])
    for (const job of access.jobs) expect(job.volume.from.length).toBeGreaterThan(0)
    expect(access.figures[2]!.answer.value).toBeGreaterThan(0)
    expect(access.figures[2]!.answer.range!.low).toBeLessThan(access.figures[2]!.answer.value)
  })
  it('holds the true volumes in their ranges', () => {
    for (const [name, volume] of dug) {
      const { range } = access.jobs.find(j => j.name === name)!.volume
      expect([name, range!.low < volume, volume < range!.high]).toEqual([name, true, true])
    }
  })
  it('learns the pace from the tally: the planted gap is 4.2 minutes', () => {
    const { pace, done, next } = access.jobs[0]!.tally
    expect(done).toBe(48)
    expect(pace.range!.low).toBeLessThan(4.2 * 1.05)
    expect(pace.range!.high).toBeGreaterThan(4.2)
    expect(next!.answer.sentence).toMatch(/^At this rate 20 more loads take about/)
  })
  it('opens the portal in thirteen steps each way: more cut is never less muck, nor less air', () => {
    if ('notEnough' in access.opening) throw new Error(access.opening.sentence)
    for (const { cases } of access.opening.cuts) {
      expect(cases).toHaveLength(13)
      for (let i = 1; i < cases.length; i++) {
        expect(cases[i]!.muck.value).toBeGreaterThan(cases[i - 1]!.muck.value)
        expect(cases[i]!.air.value).toBeGreaterThanOrEqual(cases[i - 1]!.air.value - 1e-12)
      }
    }
  })
  it('never calls anything safe, and speaks feet to a crew of feet', () => {
    const said = JSON.stringify(access, (key, value: unknown) => key === 'unit' ? undefined : value)
    expect(said).not.toMatch(/\bsafe\b/i)
    expect([access.sentence, ...access.jobs.map(j => j.sentence), ...access.ways.map(w => w.sentence)].join(' ')).not.toMatch(/\d m[³ .,]/)
  })
})

it('with nothing written says what would tell', () => {
  const access = createReckoner(fold([])).answer('access')
  expect('notEnough' in access && access.wanted.map(w => w.kind)).toEqual(['digging', 'shot'])
})
