import { createReckoner } from '@lodebook/answers'
import type { Heaps } from '@lodebook/answers'
import { fold } from '@lodebook/book'
import { describe, expect, it } from 'vitest'
import { makeDemo } from '../../../demo/src/make-demo.ts'

const heapsOf = (seed: number) => {
  const demo = makeDemo(seed, { mistakes: false })
  return { truth: demo.truth, heaps: createReckoner(fold(demo.unsealed)).answer('heaps') }
}

describe('heaps of broken rock', () => {
  it('[H1] tells tonnes, grade and ounces of the gob with ranges, each open down to entries', () => {
    const { heaps } = heapsOf(1)
    expect('notEnough' in heaps).toBe(false)
    const [gob] = (heaps as Heaps).heaps
    expect(gob!.bags).toBe(4)
    expect(gob!.tonnes.from.length).toBeGreaterThan(0)
    expect(gob!.grade.parts).toHaveLength(4)
    expect(gob!.outcomes.ounces).toHaveLength(gob!.outcomes.tonnes.length)
    expect(gob!.ounces.value).toBeCloseTo(gob!.tonnes.value * gob!.grade.value / 31.1034768, 0)
  })

  it('[H3] without a heap, and with a heap nobody sampled, it says what would tell', () => {
    expect(createReckoner(fold([])).answer('heaps')).toMatchObject({ notEnough: true })
  })
})
