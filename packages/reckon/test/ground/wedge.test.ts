import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Enu } from '../../src/core/index.ts'
import { drawsFrom } from '../../src/core/index.ts'
import { jointSets, wedgeOn } from '../../src/ground/index.ts'
import { normalOf } from '../../src/structure/index.ts'

const back: Enu = [0, 0, -1], north: Enu = [0, 1, 0]
const dot = (a: Enu, b: Enu) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
const threeAt = (dip: number): [Enu, Enu, Enu] => [0, 120, 240].map(strike => normalOf({ strike, dip })) as [Enu, Enu, Enu]

describe('a wedge in the back', () => {
  // Regular tetrahedron: three faces dip at acos(1/3) = 70.53 degrees; of edge 1 its volume is sqrt(2)/12 and its height sqrt(2/3)
  it('three joints dipping alike away from the middle fall; a regular tetrahedron has its volume', () => {
    const wedge = wedgeOn({ normals: threeAt(Math.acos(1 / 3) * 180 / Math.PI), open: back, along: north, span: 10, trace: 1 })!
    expect(wedge.volume).toBeCloseTo(Math.SQRT2 / 12, 10)
    expect(wedge.depth).toBeCloseTo(Math.sqrt(2 / 3), 10)
    expect(wedge.move).toBe('falls')
  })
  it('the same joints under a floor are held by their weight', () => {
    expect(wedgeOn({ normals: threeAt(60), open: [0, 0, 1], along: north, span: 2 })!.move).toBe('held by its weight')
  })
  it('is cut to the width: its corners reach across the span and no further', () => {
    const wedge = wedgeOn({ normals: threeAt(55), open: back, along: north, span: 1.4 })!, east = wedge.corners.map(c => c[0])
    expect(Math.max(...east) - Math.min(...east)).toBeCloseTo(1.4, 10)
    wedge.corners.forEach(c => expect(c[2]).toBeCloseTo(0, 10))
    expect(wedge.apex[2]).toBeCloseTo(wedge.depth, 10)
  })
  it('twice the span, eight times the rock', () => {
    const at = (span: number) => wedgeOn({ normals: threeAt(48), open: back, along: north, span })!.volume
    expect(at(3) / at(1.5)).toBeCloseTo(8, 9)
  })
  it('makes none of parallel joints or of one that lies in the back', () => {
    expect(wedgeOn({ normals: [normalOf({ strike: 0, dip: 60 }), normalOf({ strike: 0, dip: 60 }), normalOf({ strike: 90, dip: 60 })], open: back,
      along: north, span: 2 })).toBeUndefined()
    expect(wedgeOn({ normals: [normalOf({ strike: 0, dip: 60 }), normalOf({ strike: 0, dip: 0 }), normalOf({ strike: 90, dip: 60 })], open: back,
      along: north, span: 2 })).toBeUndefined()
  })
  it.each([[{ span: 0 }, /span/], [{ span: NaN }, /span/], [{ trace: -1 }, /trace/], [{ along: [0, 0, 1] as Enu }, /along/]])('refuses %j', (part, field) =>
    expect(() => wedgeOn({ normals: threeAt(50), open: back, along: north, span: 2, ...part })).toThrow(field))
})

describe('against brute force', () => {
  // Tenths of a degree: doubles drawn by their bits would nearly all strike north.
  const tenths = (min: number, max: number) => fc.integer({ min: min * 10, max: max * 10 }).map(v => v / 10)
  const planes = fc.tuple(...[0, 1, 2].map(() => fc.record({ strike: tenths(0, 360), dip: tenths(15, 88) })))
  const open = fc.constantFrom<Enu>([0, 0, -1], [1, 0, 0], [-1, 0, 0], [0, 0, 1])

  it('volume: darts thrown at the block, counted by which side of each plane they fall', () => {
    let tried = 0
    fc.assert(fc.property(planes, open, fc.integer(), (three, facing, seed) => {
      const normals = three.map(normalOf) as [Enu, Enu, Enu], wedge = wedgeOn({ normals, open: facing, along: north, span: 1.5, trace: 3 })
      if (!wedge || wedge.depth > 12) return
      tried++
      const corners = [wedge.apex, ...wedge.corners]
      const low = [0, 1, 2].map(i => Math.min(...corners.map(c => c[i]!))), high = [0, 1, 2].map(i => Math.max(...corners.map(c => c[i]!)))
      const middle = [0, 1, 2].map(i => corners.reduce((s, c) => s + c[i]!, 0) / 4) as unknown as Enu, draws = drawsFrom(seed), n = 20_000
      const side = (p: Enu, normal: Enu) => Math.sign(dot([p[0] - wedge.apex[0], p[1] - wedge.apex[1], p[2] - wedge.apex[2]], normal))
      let hits = 0
      for (let i = 0; i < n; i++) {
        const p = [0, 1, 2].map(k => low[k]! + draws.uniform() * (high[k]! - low[k]!)) as unknown as Enu
        if (dot(p, facing) <= 0 && normals.every(v => side(p, v) === side(middle, v))) hits++
      }
      const box = [0, 1, 2].reduce((v, k) => v * (high[k]! - low[k]!), 1), share = wedge.volume / box
      // Five standard deviations of the count.
      expect(Math.abs(hits - n * share)).toBeLessThan(5 * Math.sqrt(n * share * (1 - share)) + 3)
    }), { numRuns: 60, seed: 7 })
    expect(tried).toBeGreaterThan(30)
  })

  it('removable: of the eight corners of three planes exactly one opens wholly into the open, and it is this one', () => {
    let tried = 0
    fc.assert(fc.property(planes, open, (three, facing) => {
      const normals = three.map(normalOf) as [Enu, Enu, Enu], wedge = wedgeOn({ normals, open: facing, along: north, span: 1 })
      // Darts can't tell a sliver: edges well off the surface and planes well apart only.
      const steep = (c: Enu) => -dot([wedge!.apex[0] - c[0], wedge!.apex[1] - c[1], wedge!.apex[2] - c[2]], facing) / Math.hypot(c[0] - wedge!.apex[0],
        c[1] - wedge!.apex[1], c[2] - wedge!.apex[2])
      const apart = (i: number, j: number) => Math.abs(dot(normals[i]!, normals[j]!)) < 0.9
      if (!wedge || !wedge.corners.every(c => steep(c) > 0.3) || !(apart(0, 1) && apart(1, 2) && apart(0, 2))) return
      tried++
      const draws = drawsFrom(3), directions = Array.from({ length: 3000 }, (): Enu => [draws.normal(), draws.normal(), draws.normal()])
      const open = [-1, 1].flatMap(a => [-1, 1].flatMap(b => [-1, 1].map(c => [a, b, c])))
        .filter((code) => {
          const inside = directions.filter(d => normals.every((v, i) => code[i]! * dot(d, v) > 0)); return inside.length > 60
          && inside.every(d => dot(d, facing) > 0)
        })
      const middle = wedge.corners.reduce<Enu>((s, c) => [s[0] + c[0] - wedge.apex[0], s[1] + c[1] - wedge.apex[1], s[2] + c[2] - wedge.apex[2]], [0, 0, 0])
      const own = normals.map(v => Math.sign(dot(middle, v)))
      for (const code of open) expect(code).toEqual(own)
    }), { numRuns: 150, seed: 11 })
    expect(tried).toBeGreaterThan(20)
  })

  it('moves: a block that falls or slides goes into the open and down, and into none of the rock it does not lie on', () => {
    fc.assert(fc.property(planes, open, (three, facing) => {
      const normals = three.map(normalOf) as [Enu, Enu, Enu], wedge = wedgeOn({ normals, open: facing, along: north, span: 1 })
      if (wedge?.direction === undefined) return
      expect(wedge.direction[2]).toBeLessThan(0)
      expect(dot(wedge.direction, facing)).toBeGreaterThan(0)
      const middle = wedge.corners.reduce<Enu>((s, c) => [s[0] + c[0] - wedge.apex[0], s[1] + c[1] - wedge.apex[1], s[2] + c[2] - wedge.apex[2]], [0, 0, 0])
      normals.forEach((v, i) => {
        const inward = Math.sign(dot(middle, v)) * dot(wedge.direction!, v)
        if (wedge.slidesOn.includes(i)) expect(Math.abs(inward)).toBeLessThan(1e-7); else expect(inward).toBeGreaterThan(-1e-7)
      })
    }), { numRuns: 300, seed: 5 })
  })
})

describe('joint sets', () => {
  it('three sets of readings come back as three, near their planes', () => {
    const draws = drawsFrom(4), sets = [{ strike: 312, dip: 78 }, { strike: 222, dip: 52 }, { strike: 20, dip: 18 }]
    const found = jointSets(sets.flatMap(s =>
      Array.from({ length: 8 }, () => ({ strike: s.strike + draws.normal() * 4, dip: Math.min(90, Math.abs(s.dip + draws.normal() * 4)) }))))
    expect(found).toHaveLength(3)
    expect(found.map(s => s.of.length)).toEqual([8, 8, 8])
  })
  it('no planes, no sets; one plane, one set', () => {
    expect(jointSets([])).toEqual([])
    expect(jointSets([{ strike: 10, dip: 20 }])).toHaveLength(1)
  })
})
