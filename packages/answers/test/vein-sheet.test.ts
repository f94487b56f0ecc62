import { describe, expect, it } from 'vitest'
import { createReckoner, isAnswer } from '../src/index.ts'
import type { Answer, NotEnough, VeinSheet } from '../src/index.ts'
import { SmallBook } from './small-book.ts'

const tan = (degrees: number) => Math.tan(degrees * Math.PI / 180)

/** A drift 60 m due north on a vein that strikes 000 and dips 60 east; from 30 m on its strike turns by some degrees. */
function drift(turn: number, width: (north: number) => number = () => 0.4): SmallBook {
  const b = new SmallBook()
  b.write('mine', { name: 'Test adit', currency: 'USD', declination: '0', people: 'Ada, Bo' })
  b.write('tie', { station: 'A1', place: 'E 0 N 0 U 50', accuracy: '0.05 m' })
  for (let i = 1; i < 7; i++) b.write('shot', { from: `A${i}`, to: `A${i + 1}`, distance: '10 m', azimuth: '0', inclination: '0', left: '3 m', right: '9 m', up: '1 m', down: '0.8 m' })
  b.write('heading', { name: 'Drift', sort: 'drift', stations: 'A1, A2, A3, A4, A5, A6, A7', vein: 'Main' })
  for (let n = 0; n <= 60; n += 3) {
    const east = Math.max(0, n - 30) * tan(turn) + 0.05 * Math.sin(n)
    for (const up of [50, 53]) {
      b.write('structure', {
        feature: 'vein', name: 'Main', place: `E ${(east + (50 - up) / tan(60)).toFixed(3)} N ${n} U ${up} ± 0.1 m`,
        strike: String(n > 30 ? turn : 0), dip: '60', north: 'grid', quality: 'good',
      })
    }
    b.write('width', { vein: 'Main', place: `E ${east.toFixed(3)} N ${n} U 50 ± 0.1 m`, measured: `${width(n).toFixed(3)} m`, direction: 'square to the vein', materials: n < 20 ? 'quartz, gouge' : 'quartz', gouge: n < 20 ? '0.02 m' : '' })
  }
  return b
}
const sheet = (b: SmallBook) => createReckoner(b.book).answer('veinSheet') as VeinSheet

describe('what the vein does, how thick it is and what is in it', () => {
  it('[VS1] one plane is called one plane; the sentence says strike, dip and thickness', () => {
    const found = sheet(drift(0))
    expect(found.lie.kind).toBe('plane')
    expect(found.sentence).toMatch(/^The vein Main strikes (000|360|359|001)° and dips 60° toward \d+°; it is 0\.40 m thick/)
  })

  it('[VS2] two planes 12 degrees apart are told, with where they meet and how each lies', () => {
    const found = sheet(drift(12))
    expect(found.lie.kind).toBe('bend')
    expect((found.lie.answer as Answer<string>).sentence).toMatch(/two planes that meet about A4/)
    const [before, past] = found.lie.sides!
    const apart = Math.abs(((past.strike - before.strike + 540) % 360) - 180)
    expect(Math.abs(apart - 12)).toBeLessThan(3)
    expect(found.cautions.join(' ')).toContain('one plane')
  })

  it('[VS3] a swell is told with where it is; even widths are said to be even', () => {
    const swells = sheet(drift(0, n => 0.3 + 0.5 * Math.exp(-(((n - 40) / 6) ** 2)) + 0.02 * Math.sin(5 * n))).thickness
    expect(swells.swells!.sentence).toMatch(/swells to 0\.[678]\d* m (between A\d and A\d|about A5)/)
    expect(sheet(drift(0, n => 0.4 + 0.05 * Math.sin(n * n * 12.9898))).thickness.stretches).toEqual([])
  })

  it('[VS4] materials are the crew\'s own words with their places; gouge as taped', () => {
    const { materials, gouge } = sheet(drift(0))
    expect(materials.map(m => m.word)).toEqual(['quartz', 'gouge'])
    expect(materials[1]!.at).toHaveLength(7)
    expect(materials[1]!.answer.sentence).toMatch(/7 of 21 places/)
    expect(isAnswer(gouge) && gouge.value).toBeCloseTo(0.02, 9)
  })

  it('[VS5] the net holds every reading once, with the mean in its cone', () => {
    const b = drift(0)
    b.write('structure', { feature: 'fault', name: 'Gap', place: 'A4', strike: '90', dip: '80', north: 'grid' })
    b.write('structure', { feature: 'striae', name: 'Gap', place: 'A4', strike: '90', dip: '80', rake: '30', north: 'grid', sense: 'right' })
    const { net, faults } = sheet(b)
    expect(net.groups.map(g => [g.feature, g.readings.length])).toEqual([['vein', 42], ['fault', 1], ['striae', 1]])
    expect(net.groups[0]!.mean!.answer.sentence).toMatch(/dip 60°/)
    expect(net.groups[1]!.noMean).toBe('one reading has no mean')
    // Rake 30 in 090/80: plunges asin(sin 30 sin 80) = 29.5 degrees.
    expect(net.groups[2]!.readings[0]!.line.plunge).toBeCloseTo(Math.asin(0.5 * Math.sin(80 * Math.PI / 180)) * 180 / Math.PI, 6)
    expect(net.cutoff!.answer.sentence).toContain('parts nothing')
    expect(faults[0]!.sense!.value).toBe('right')
  })

  it('[VS6] with too few places, with places on one line and with none it says so in a sentence', () => {
    const none = createReckoner(new SmallBook().book).answer('veinSheet') as NotEnough
    expect(none.sentence).toContain('Not enough to say how the vein lies')
    const b = new SmallBook()
    b.write('tie', { station: 'A1', place: 'E 0 N 0 U 50', accuracy: '0.05 m' })
    b.write('shot', { from: 'A1', to: 'A2', distance: '10 m', azimuth: '0', inclination: '0' })
    for (let n = 0; n < 14; n++) b.write('width', { vein: 'Main', place: `E 0 N ${n} U 50 ± 0.1 m`, measured: '0.4 m' })
    const line = createReckoner(b.book).answer('veinSheet') as NotEnough
    expect(line.notEnough).toBe(true)
    expect(line.wanted.map(w => w.why).join(' ')).toContain('strike and dip')
    const few = new SmallBook()
    few.write('tie', { station: 'A1', place: 'E 0 N 0 U 50', accuracy: '0.05 m' })
    few.write('shot', { from: 'A1', to: 'A2', distance: '10 m', azimuth: '0', inclination: '0' })
    few.write('structure', { feature: 'vein', name: 'Main', place: 'A1', strike: '0', dip: '60', north: 'grid' })
    const read = sheet(few)
    expect(read.lie.kind).toBe('not enough')
    expect((read.lie.answer as NotEnough).sentence).toBe('1 place on the vein cannot tell a bend from a plane.')
  })

  it('[VS7] goes through a worker\'s door as it is, and calls nothing safe', () => {
    const found = sheet(drift(0))
    expect(structuredClone(found)).toEqual(found)
    expect(JSON.stringify(found)).not.toMatch(/\bsafe\b/i)
  })
})
