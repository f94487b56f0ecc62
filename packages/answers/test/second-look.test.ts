import { fold } from '@lodebook/book'
import { describe, expect, it } from 'vitest'
import { makeDemo } from '../../../demo/src/make-demo.ts'
import { createReckoner } from '../src/index.ts'
import { nineSamples } from './small-book.ts'

describe('second look', () => {
  it('[S1] an honest small book raises nothing', () => {
    expect(createReckoner(nineSamples().book).answer('secondLooks')).toEqual([])
  })

  it('[S2] finds the backsight, the slipped unit and the width down the dip that the invented crew wrote', () => {
    const demo = makeDemo(1)
    const looks = createReckoner(fold(demo.postings)).answer('secondLooks')
    const named = new Set(looks.flatMap(l => l.entries))
    for (const sort of ['backsight', 'unit slip', 'width down the dip'] as const) {
      const planted = demo.truth.mistakes.find(x => x.sort === sort)!
      expect(planted.entries.some(entry => named.has(entry)), sort).toBe(true)
    }
    expect(looks.find(l => l.sort === 'survey')!.sentence).toContain('C4-C5')
  })

  it('[S3] a blank that carries gold is named with the sample run before it', () => {
    const small = nineSamples()
    small.write('standard', { name: 'Road quartz', sort: 'blank' })
    small.write('sample', { bag: 'B-90', role: 'blank', method: 'grab', standard: 'Road quartz' })
    small.write('assay', { bag: 'B-5', gold: '61 g/t', sequence: '1', certificate: 'C1', charge: '30 g' })
    small.write('assay', { bag: 'B-90', gold: '2.1 g/t', sequence: '2', certificate: 'C1', charge: '30 g' })
    const [look] = createReckoner(small.book).answer('secondLooks').filter(l => l.sort === 'blank')
    expect(look!.sentence).toContain('B-90 ran 2.1 g/t')
    expect(look!.sentence).toContain('B-5')
  })

  it('[S4] a standard beyond three deviations is named, one within is not', () => {
    const small = nineSamples()
    small.write('standard', { name: 'Powder 7', sort: 'standard', gold: '5 g/t', deviation: '0.2 g/t' })
    for (const [bag, gold] of [['B-91', '5.4 g/t'], ['B-92', '5.9 g/t']] as const) {
      small.write('sample', { bag, role: 'standard', method: 'pulp', standard: 'Powder 7' })
      small.write('assay', { bag, gold, charge: '30 g' })
    }
    const found = createReckoner(small.book).answer('secondLooks').filter(l => l.sort === 'standard')
    expect(found.map(l => l.sentence)).toEqual([expect.stringContaining('B-92')])
  })
})
