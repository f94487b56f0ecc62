import type { Workings } from '../src/index.ts'
import { createReckoner } from '../src/index.ts'
import { input, isError } from '@lodebook/book'
import { describe, expect, it } from 'vitest'
import { SmallBook } from './small-book.ts'

const workingsOf = (b: SmallBook) => createReckoner(b.book).answer('workings') as Workings
const at = (w: Workings, name: string) => w.stations.find(s => s.name === name)!

/** A tied adit of four stations due north on the grid. */
function adit(): SmallBook {
  const b = new SmallBook()
  b.write('mine', { name: 'Test adit', declination: '0', datum: 'the brass plug at the portal' })
  b.write('tie', { station: 'A1', place: 'E 100 N 200 U 50', accuracy: '0.05 m' })
  for (const [from, to] of [['A1', 'A2'], ['A2', 'A3'], ['A3', 'A4']] as const) b.write('shot', { from, to, distance: '10 m', azimuth: '0', backAzimuth: '180', inclination: '0', backInclination: '0' })
  return b
}

describe('instruments and surveys', () => {
  it('[SV1] each instrument\'s own corrections are applied: compass, clinometer, tape zero and tape stretch', () => {
    const b = new SmallBook()
    b.write('mine', { name: 'M', declination: '0' })
    b.write('tie', { station: 'A1', place: 'E 0 N 0 U 0', accuracy: '0.01 m' })
    b.write('instrument', { name: 'old compass', sort: 'compass and clinometer', correction: '2', inclinationCorrection: '-1' })
    b.write('instrument', { name: 'old tape', sort: 'tape', lengthFactor: '1.01', lengthCorrection: '0.1 m' })
    b.write('shot', { from: 'A1', to: 'A2', distance: '10 m', azimuth: '88', inclination: '1', compass: 'old compass', tape: 'old tape' })
    const [e, n, u] = at(workingsOf(b), 'A2').point
    expect(e).toBeCloseTo(10.2, 9)
    expect(n).toBeCloseTo(0, 9)
    expect(u).toBeCloseTo(0, 9)
  })

  it('[SV2] an older, rougher survey is weighed by what it was good to, and its turned north does not bend the newer one', () => {
    const b = adit()
    b.write('survey', { name: 'old plan 1931', year: '1931', compassPrecision: '3', tapePrecision: '0.3 m', northDoubt: '4' })
    b.write('shot', { from: 'A1', to: 'A4', distance: '30.6 m', azimuth: '6', inclination: '0', survey: 'old plan 1931' })
    b.write('shot', { from: 'A4', to: 'Z1', distance: '10 m', azimuth: '6', inclination: '0', survey: 'old plan 1931' })
    const w = workingsOf(b)
    expect(Math.hypot(at(w, 'A4').point[0] - 100, at(w, 'A4').point[1] - 230)).toBeLessThan(0.1)
    // The old survey's own turn is found from the line both measured, and what only it reached is turned back with it.
    expect(Math.abs(at(w, 'Z1').point[0] - at(w, 'A4').point[0])).toBeLessThan(0.6)
    expect(at(w, 'Z1').ellipse.major).toBeGreaterThan(3 * at(w, 'A4').ellipse.major)
    b.write('survey', { name: 'old plan 1931', use: 'left out' }, b.book.of('survey')[0]!.id)
    expect(workingsOf(b).stations.map(s => s.name)).not.toContain('Z1')
  })

  it('[SV3] readings outside the dates of the magnetic model are taken, and said so', () => {
    const b = new SmallBook()
    b.write('mine', { name: 'M', latitude: '40', longitude: '-110' })
    b.write('survey', { name: 'old notes', year: '1898' })
    b.write('shot', { from: 'A1', to: 'A2', distance: '10 m', azimuth: '10', inclination: '0', survey: 'old notes' })
    const w = workingsOf(b)
    expect(w.stations).toHaveLength(2)
    expect(w.cautions.join(' ')).toMatch(/1898-07-01 lie 1\d\d years outside the dates of WMM2015/)
  })
})

describe('ties, levels and parts', () => {
  it('[SV4] a GPS fix at 0, 0 is refused with a clear word, and one in an older book places nothing', () => {
    const { problems } = input('tie', { station: 'A1', place: '0.0, 0.0' }, { now: Date.UTC(2026, 5, 1) })
    expect(problems.filter(isError).map(p => p.message).join(' ')).toMatch(/receiver without a fix/)
    const b = adit()
    const [tie] = b.postings.filter(p => p.kind === 'tie')
    const old = { ...tie!, entry: 'old', hash: 'x', clock: '9999999999999-0000', set: { station: 'A4', place: { by: 'gps' as const, latitude: 0, longitude: 0 } } }
    b.postings.push(old)
    const w = workingsOf(b)
    expect(at(w, 'A4').point[1]).toBeCloseTo(230, 6)
    expect(w.cautions.join(' ')).toMatch(/fix of A4 is 0, 0/)
  })

  it('[SV5] elevations count from the zero that the crew names, and the answer names it', () => {
    const b = new SmallBook()
    b.write('mine', { name: 'M', declination: '0', datum: 'the brass plug' })
    b.write('tie', { station: 'A1', place: 'E 0 N 0', accuracy: '0.05 m', level: '12.5 m', levelAccuracy: '0.1 m' })
    b.write('shot', { from: 'A1', to: 'A2', distance: '10 m', azimuth: '0', inclination: '90' })
    const a2 = at(workingsOf(b), 'A2')
    expect(a2.point[2]).toBeCloseTo(22.5, 6)
    expect(a2.answer.sentence).toContain('the brass plug')
  })

  it('[SV6] a part that hangs on nothing is named, and what is placed in it says why it has no place', () => {
    const b = adit()
    b.write('shot', { from: 'B1', to: 'B2', distance: '5 m', azimuth: '90', inclination: '0' })
    b.write('relic', { item: 'can', place: 'B1' })
    const w = workingsOf(b)
    expect(w.adrift).toHaveLength(1)
    expect(w.adrift[0]!.sentence).toMatch(/B1, B2 hang together/)
    expect(w.notPlaced[0]!.why).toMatch(/no shot or tie joins it/)
    b.write('tie', { station: 'B2', place: 'E 120 N 210 U 50' })
    expect(workingsOf(b).adrift).toHaveLength(0)
  })

  it('[SV7] a loop that misses by metres still gives a map, and the reading that does it is named, with the day it was read', () => {
    const b = adit()
    b.write('shot', { from: 'A4', to: 'A1', distance: '22 m', azimuth: '180', backAzimuth: '0', inclination: '0', backInclination: '0', taken: '2026-05-03', surveyors: 'Ada' })
    const w = workingsOf(b)
    expect(w.stations).toHaveLength(4)
    expect(w.suspects[0]!.sentence).toContain('(read on 3 May 2026 by Ada)')
    expect([w.suspects[0]!.leave, ...w.suspects[0]!.others.map(o => o.leave)]).toContain('distance')
  })
})

describe('the crew decides', () => {
  it('[SV8] leaving a reading out is a posting that changes the picture, keeps the reading, and can be taken back', () => {
    const b = adit()
    const wrong = b.write('shot', { from: 'A1', to: 'A4', distance: '30 m', azimuth: '12', backAzimuth: '180', inclination: '0', backInclination: '0' })
    const before = workingsOf(b)
    expect(before.suspects[0]).toMatchObject({ entry: wrong, leave: 'azimuth' })
    b.write('shot', { leaveOut: before.suspects[0]!.leave!, leaveOutWhy: 'read beside the rail' }, wrong)
    const after = workingsOf(b)
    expect(after.suspects).toHaveLength(0)
    expect(after.leftOut[0]!.sentence).toMatch(/because read beside the rail.*foresight azimuth is 1\d/)
    expect(Math.abs(at(after, 'A4').point[0] - 100)).toBeLessThan(Math.abs(at(before, 'A4').point[0] - 100))
    b.write('shot', { leaveOut: 'nothing' }, wrong)
    expect(workingsOf(b).suspects[0]!.entry).toBe(wrong)
  })
})

describe('renaming', () => {
  it('[SV9] a renaming moves everything that hangs on the station; renamed again it moves again', () => {
    const b = adit()
    b.write('relic', { item: 'can', place: 'A3 + 2 m toward A4' })
    b.write('heading', { name: 'Adit', sort: 'adit', stations: 'A1, A2, A3, A4' })
    const can = workingsOf(b).placed.find(p => p.kind === 'relic')!.point
    b.write('rename', { was: 'A3', now: 'B1' })
    b.write('rename', { was: 'B1', now: 'B2' })
    b.write('relic', { item: 'lamp', place: 'B2 + 2 m toward A4' })
    const w = workingsOf(b)
    expect(w.stations.map(s => s.name).sort()).toEqual(['A1', 'A2', 'A4', 'B2'])
    expect(w.headings[0]!.stations).toEqual(['A1', 'A2', 'B2', 'A4'])
    for (const p of w.placed.filter(one => one.kind === 'relic')) expect(p.point).toEqual(can)
    expect(w.cautions.join(' ')).not.toMatch(/renamed/)
  })

  it('[SV10] one station renamed to two names is named; the last stands; renaming back undoes it', () => {
    const b = adit()
    b.write('rename', { was: 'A3', now: 'B1' })
    b.write('rename', { was: 'A3', now: 'C1' })
    expect(workingsOf(b).stations.map(s => s.name)).toContain('C1')
    expect(workingsOf(b).cautions.join(' ')).toMatch(/A3 was renamed 2 times: to B1, then to C1/)
    b.write('rename', { was: 'C1', now: 'A3' })
    expect(workingsOf(b).stations.map(s => s.name).sort()).toEqual(['A1', 'A2', 'A3', 'A4'])
  })
})

describe('stepped legs', () => {
  it('[SV11] a stepped leg gives a rough outline and a rough station until it is surveyed', () => {
    const b = adit()
    b.write('paced', { from: 'A4', to: 'P1', paces: '20', azimuth: '0', width: '1.2 m', heading: 'Far end' })
    const rough = workingsOf(b)
    expect(rough.paced).toHaveLength(1)
    expect(at(rough, 'P1').rough).toBe(true)
    expect(at(rough, 'P1').point[1]).toBeCloseTo(245, 6)
    expect(at(rough, 'P1').ellipse.major).toBeGreaterThan(2)
    b.write('shot', { from: 'A4', to: 'P1', distance: '14 m', azimuth: '2', inclination: '0' })
    const done = workingsOf(b)
    expect(done.paced).toHaveLength(0)
    expect(at(done, 'P1').rough).toBe(false)
    expect(at(done, 'P1').ellipse.major).toBeLessThan(1.5)
  })
})
