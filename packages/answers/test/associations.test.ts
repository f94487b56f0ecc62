import { describe, expect, it } from 'vitest'
import { associationsOf } from '../src/associations/associations.ts'
import type { BagSeen } from '../src/associations/associations.ts'
import type { Associations } from '../src/index.ts'
import { metric } from '../src/words.ts'
import { planFor } from '../src/sampling/plan-for.ts'

/** Numbers that look drawn but are the same each time: the fractional parts of multiples of the golden ratio. */
const spread = (i: number): number => (i * 0.6180339887) % 1
const bag = (i: number, marks: readonly string[], ln: number, over: Partial<BagSeen> = {}): BagSeen =>
  ({ entry: `e${i}`, gold: [ln, ln], marks: new Set(marks), width: 0.2 + 0.3 * spread(3 * i + 1), fromFault: 5 + 20 * spread(7 * i + 2), signal: undefined, ...over })
const many = (n: number, of: (i: number) => BagSeen) => Array.from({ length: n }, (_, i) => of(i))
const named = (a: Associations, name: string) => a.of.find(x => x.name === name)!

describe('what goes with gold', () => {
  it('[AG1] finds what is there, with its size: bags with iron stain three times as rich', () => {
    const a = associationsOf(many(40, i => bag(i, i % 2 === 0 ? ['iron stain'] : [], spread(i) + (i % 2 === 0 ? Math.log(3) : 0))), metric) as Associations
    const iron = named(a, 'iron stain')
    expect(iron.says).toBe('more gold')
    expect(iron.low).toBeLessThan(3)
    expect(iron.high).toBeGreaterThan(3)
    expect(iron.ratio!.range!.low).toBe(iron.low)
    expect(iron.ratio!.from).toHaveLength(40)
    expect(a.sentence).toContain('iron stain')
  })

  it('[AG2] says nothing stands out where nothing does, and each question raises what the others must pass', () => {
    const a = associationsOf(many(40, i => bag(i, [['clay'], ['crystals'], []][i % 3]!, spread(5 * i))), metric) as Associations
    expect(a.of.every(x => x.says !== 'more gold' && x.says !== 'less gold')).toBe(true)
    expect(a.sentence).toMatch(/Nothing asked of 40 bags stands out/)
    for (const x of a.of) if (x.p !== undefined) expect(x.raised!).toBeGreaterThanOrEqual(x.p)
  })

  it('[AG3] says not enough where a side has fewer than five, or everything lies under a limit', () => {
    const few = associationsOf(many(20, i => bag(i, i < 3 ? ['sulphides'] : [], spread(i))), metric) as Associations
    expect(named(few, 'sulphides').says).toBe('not enough to say')
    expect(named(few, 'strength of signals').says).toBe('not enough to say')
    const under = associationsOf(many(20, i => bag(i, i % 2 === 0 ? ['clay'] : [], 0, { gold: [-Infinity, 1] })), metric) as Associations
    expect(named(under, 'clay').says).toBe('not enough to say')
    expect(associationsOf(many(6, i => bag(i, [], 1)), metric)).toHaveProperty('notEnough', true)
  })

  it('[AG4] gold that falls with thickness is told so, bags under a limit among them', () => {
    const a = associationsOf(many(40, (i) => {
      const width = 0.2 + i / 100, ln = 3 - 0.08 * i + 0.3 * spread(i)
      return bag(i, [], ln, { width, ...ln < 0.5 ? { gold: [-Infinity, 0.5] as const } : {} })
    }), metric) as Associations
    expect(named(a, 'thickness').says).toBe('less gold')
    expect(named(a, 'thickness').tau!).toBeLessThan(-0.8)
  })
})

describe('how much to take', () => {
  it('[HM1] the finer the gold, the more a bag can tell; and it says when no bag will do', () => {
    const wish = { grade: 10, grain: 0.001, fragment: 0.05, precision: 0.5, finalMass: 300, finalSize: 0.0005, cut: true }
    const coarse = planFor(wish, metric), fine = planFor({ ...wish, grain: 0.0005 }, metric)
    expect(fine.precision.value).toBeLessThan(coarse.precision.value)
    expect(planFor({ ...wish, precision: 0.001 }, metric)).toMatchObject({ reached: false })
    expect(coarse.bags.every((b, i) => i === 0 || b.atBest < coarse.bags[i - 1]!.atBest)).toBe(true)
  })
})
