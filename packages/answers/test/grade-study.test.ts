import { createReckoner } from '@lodebook/answers'
import type { Grade, GradeStudy } from '@lodebook/answers'
import { fold } from '@lodebook/book'
import { describe, expect, it } from 'vitest'
import { makeDemo } from '../../../demo/src/make-demo.ts'

const of = (seed: number, samples?: number) => {
  const reckoner = createReckoner(fold(makeDemo(seed, { mistakes: false, ...samples ? { samples } : {} }).unsealed))
  return { grade: reckoner.answer('grade') as Grade, study: reckoner.answer('gradeStudy') as GradeStudy }
}

describe('what stands beside the headline of grade', () => {
  const { grade, study } = of(1)

  it('[G1] every cut stands beside the uncut figure, costs ounces, and the deeper the more', () => {
    const { uncut, cuts, tenths, points } = study.topCut!
    expect(cuts.length).toBeGreaterThan(2)
    cuts.forEach((c, i) => { expect(c.answer.value).toBeLessThanOrEqual(cuts[i - 1]?.answer.value ?? uncut.value) })
    expect(tenths.reduce((sum, t) => sum + t.share, 0)).toBeCloseTo(1, 9)
    expect(points.map(p => p.z)).toEqual([...points.map(p => p.z)].sort((a, b) => a - b))
  })

  it('[G2] the variogram is drawn with its pairs and its doubt; each pair names two entries', () => {
    const v = study.variogram!
    expect(v.lags.every(l => l.pairs > 0)).toBe(true)
    for (const c of v.curve) { expect(c.low).toBeLessThanOrEqual(c.gamma); expect(c.gamma).toBeLessThanOrEqual(c.high) }
    const entries = new Set(grade.samples.map(s => s.entry))
    for (const pair of v.cloud) { expect(entries.has(pair.a.entry)).toBe(true); expect(entries.has(pair.b.entry)).toBe(true) }
    expect(v.ways).toHaveLength(4)
  })

  it('[G3] samples told from the others fall in their 80 % range about that often', () => {
    expect(study.leftOut!.answer.value).toBeGreaterThan(0.65)
    expect(study.leftOut!.answer.value).toBeLessThanOrEqual(1)
  })

  it('[G4] with few samples no curve is drawn; means of few values stand in its place', () => {
    const { study: few } = of(1, 10)
    expect(few.variogram).toBeUndefined()
    expect(few.sentence).toContain('noise drawn as a curve')
    expect(few.averages.map(a => a.id)).toContain('grade.average.sichel')
    expect(few.averages.map(a => a.id)).toContain('grade.average.bayes')
  })

  it('[G5] cut-offs: the higher, the less rock and gold; every panel says how it is known', () => {
    grade.cutOffs.forEach((c, i) => {
      if (i === 0) return
      expect(c.panels).toBeLessThanOrEqual(grade.cutOffs[i - 1]!.panels)
      expect(c.ounces.value).toBeLessThanOrEqual(grade.cutOffs[i - 1]!.ounces.value + 1e-9)
    })
    expect(grade.cutOffs[0]!.ounces.value).toBeCloseTo(grade.ounces.value, 6)
    for (const p of grade.panels) {
      expect(['positive', 'probable', 'possible']).toContain(p.known.word)
      expect(p.low95).toBeLessThanOrEqual(p.low)
      expect(p.high95).toBeGreaterThanOrEqual(p.high)
      expect(p.broken.tonnes).toBeGreaterThanOrEqual(p.tonnes * 0.999)
      expect([...p.chances].every((c, i, all) => i === 0 || c <= all[i - 1]!)).toBe(true)
    }
  })

  it('[G6] feet-and-ounces answers never tell grams, g/t or metres in a sentence', () => {
    const sentences = [grade.sentence, ...grade.panels.slice(0, 20).map(p => p.answer.sentence), study.sentence,
      ...study.averages.map(a => a.sentence), grade.tonnes.sentence, grade.broken.tonnes.sentence]
    for (const s of sentences) expect(s).not.toMatch(/\d (g\/t|m|g|t|m²)\b/)
  })

  it('[G7] the sentence and the label round alike', () => {
    const said = /About ([\d.,]+) oz/.exec(grade.sentence)![1]!
    expect(grade.ounces.sentence).toContain(`About ${said} oz`)
  })
})
