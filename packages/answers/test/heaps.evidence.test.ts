import { createReckoner } from '@lodebook/answers'
import type { Heaps } from '@lodebook/answers'
import { fold } from '@lodebook/book'
import { describe, expect, it } from 'vitest'
import { makeDemo } from '../../../demo/src/make-demo.ts'

const heapsOf = (seed: number) => {
  const demo = makeDemo(seed, { mistakes: false })
  return { truth: demo.truth, heaps: createReckoner(fold(demo.unsealed)).answer('heaps') }
}

describe('heaps of broken rock, held against the truth', () => {
  it('[H2] over 60 seasons the 80 % range of its tonnes and of its grade holds the truth at least three times in four', () => {
    const seasons = Array.from({ length: 60 }, (_, i) => heapsOf(500 + i))
    const share = (held: (s: typeof seasons[number]) => boolean) => seasons.filter(held).length / seasons.length
    const within = (value: number, range: { low: number, high: number } | undefined) => value >= range!.low && value <= range!.high
    expect(share(({ truth, heaps }) => within(truth.gob.tonnes, (heaps as Heaps).heaps[0]!.tonnes.range))).toBeGreaterThan(0.7)
    const trueGrade = (t: typeof seasons[number]['truth']) => t.gob.median * Math.exp(t.gob.logDeviation ** 2 / 2)
    expect(share(({ truth, heaps }) => within(trueGrade(truth), (heaps as Heaps).heaps[0]!.grade.range))).toBeGreaterThan(0.7)
  })
})
