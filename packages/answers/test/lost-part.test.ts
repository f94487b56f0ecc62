import { describe, expect, it } from 'vitest'
import { createReckoner, isAnswer, lostPartOn } from '../src/index.ts'
import type { Answer, LostHeading, LostPart, NotEnough } from '../src/index.ts'
import { SmallBook } from './small-book.ts'

/**
 * A drift 40 m due north on a vein 000/60, cut 30 m on by a fault 090/80; 10 m of it were driven past the fault on the old line.
 * Nothing yet tells how the fault moved.
 */
function lostVein(): SmallBook {
  const b = new SmallBook()
  b.write('mine', { name: 'Test adit', currency: 'USD', declination: '0', people: 'Ada, Bo' })
  b.write('tie', { station: 'A1', place: 'E 0 N 0 U 50', accuracy: '0.05 m' })
  for (const [from, to] of [['A1', 'A2'], ['A2', 'A3'], ['A3', 'A4'], ['A4', 'A5']] as const) {
    b.write('shot', { from, to, distance: '10 m', azimuth: '0', inclination: '0', left: '0.6 m', right: '0.6 m', up: '1 m', down: '0.8 m' })
  }
  b.write('heading', { name: 'Drift', sort: 'drift', stations: 'A1, A2, A3, A4, A5', vein: 'Main' })
  for (const place of ['A1', 'A1 + 5 m toward A2', 'A2', 'A2 + 5 m toward A3', 'A3', 'A3 + 5 m toward A4']) {
    b.write('structure', { feature: 'vein', name: 'Main', place, strike: '0', dip: '60', north: 'grid', quality: 'good' })
  }
  for (let i = 0; i < 5; i++) b.write('structure', { feature: 'fault', name: 'Gap', place: 'A4', strike: '90', dip: '80', north: 'grid', quality: 'good' })
  return b
}

const grooves = (b: SmallBook, rake: string) => {
  for (let i = 0; i < 4; i++) b.write('structure', { feature: 'striae', name: 'Gap', place: 'A4', strike: '90', dip: '80', rake, north: 'grid', quality: 'good' })
}
const sense = (b: SmallBook, word: string) => b.write('structure', { feature: 'fault', name: 'Gap', place: 'A4', strike: '90', dip: '80', north: 'grid', sense: word })
/** A dyke 000/90 seen 12 m west of the drift before the fault, and so far further east past it. */
const dyke = (b: SmallBook, east: number) => {
  for (const [e, n] of [[-12, 20], [-12, 26], [-12 + east, 33], [-12 + east, 38]]) {
    b.write('structure', { feature: 'contact', name: 'dyke', place: `E ${e} N ${n} U 50 ± 0.1 m`, strike: '0', dip: '90', north: 'grid', quality: 'good' })
  }
}
const ask = (b: SmallBook) => createReckoner(b.book).answer('lostPart')
const lost = (b: SmallBook) => ask(b) as LostPart

describe('the lost part of a vein', () => {
  it('[LA1] says what is missing: a vein, a fault, a sign of how it moved', () => {
    const empty = ask(new SmallBook()) as NotEnough
    expect(empty.notEnough).toBe(true)
    const b = new SmallBook()
    b.write('tie', { station: 'A1', place: 'E 0 N 0 U 50', accuracy: '0.05 m' })
    b.write('shot', { from: 'A1', to: 'A2', distance: '10 m', azimuth: '0', inclination: '0' })
    b.write('structure', { feature: 'vein', name: 'Main', place: 'A1', strike: '0', dip: '60', north: 'grid' })
    expect((ask(b) as NotEnough).sentence).toContain('No fault')
    const still = ask(lostVein()) as NotEnough
    expect(still.sentence).toContain('Nothing tells yet')
    expect(still.wanted.map(w => w.kind)).toEqual(['structure', 'structure', 'structure', 'structure'])
    expect(still.cautions.join(' ')).toMatch(/ground support.*permits.*licensed people/)
  })

  it('[LA2] grooves and sense without an amount tell the hand, and say that they do not tell how far', () => {
    const b = lostVein()
    grooves(b, '0')
    sense(b, 'right')
    const found = lost(b)
    expect(found.tells).toBe('which hand')
    expect(found.hand).toBe('right')
    expect(found.sentence).toContain('cannot tell how far')
    expect(found.cautions.join(' ')).toContain('slip of the fault')
    expect(found.apart.assumed.map(a => a.name)).toContain('slip of the fault')
    expect(found.wanted[0]!.why).toContain('both sides of the fault')
  })

  it('[LA3] an amount that the crew knows turns that into a distance', () => {
    const b = lostVein()
    grooves(b, '0')
    sense(b, 'right')
    b.write('assumption', { name: 'slip of the fault', value: '6', low: '5.5', high: '6.5', unit: 'm', why: 'seen in the trench' })
    b.write('assumption', { name: 'grooves off the slip', value: '0', unit: '°' })
    const found = lost(b)
    expect(found.tells).toBe('where')
    // Level slip of 6 m square to the drift moves the vein 6 m to the side.
    expect(Math.abs(found.apart.value - 6)).toBeLessThan(0.3)
    expect(found.apart.range!.low).toBeGreaterThan(4)
    expect(found.apart.range!.high).toBeLessThan(8)
  })

  it('[LA4] left moves it left, whichever side is read; normal with a fault that dips to the lost side lets it down', () => {
    const b = lostVein()
    grooves(b, '0')
    sense(b, 'left')
    expect(lost(b).hand).toBe('left')
    const down = lostVein() // fault 090/80 dips south, to the near side: normal lets the near side down, the far side and its vein up
    grooves(down, '90')
    sense(down, 'normal')
    // A vein that dips east and goes up is met further east at the same level.
    expect(lost(down).hand).toBe('right')
    const up = lostVein()
    grooves(up, '90')
    sense(up, 'reverse')
    expect(lost(up).hand).toBe('left')
  })

  it('[LA5] grooves without a sense tell nothing: the band is drawn, no heading is named', () => {
    const b = lostVein()
    grooves(b, '0')
    const found = lost(b)
    expect(found.tells).toBe('nothing')
    expect(found.sentence).toContain('cannot tell on which hand')
    expect(found.heading).toHaveProperty('notEnough', true)
    expect(found.faces).toEqual([])
    expect(found.plan.cases.length).toBeGreaterThan(15)
    expect(found.wanted.some(w => w.why.includes('sense'))).toBe(true)
  })

  it('[LA6] a dyke seen on both sides with the grooves tells where, against a wrong sense too', () => {
    for (const word of ['right', 'left']) {
      const b = lostVein()
      grooves(b, '0')
      sense(b, word)
      dyke(b, 5)
      const found = lost(b)
      expect(found.tells).toBe('where')
      expect(Math.abs(found.apart.value - 5)).toBeLessThan(0.5)
      expect(found.apart.range!.low).toBeLessThan(5)
      expect(found.apart.range!.high).toBeGreaterThan(5)
    }
  })

  it('[LA7] names the heading from the nearest station past the fault, square across, and its chances rise', () => {
    const b = lostVein()
    grooves(b, '0')
    sense(b, 'right')
    dyke(b, 5)
    const heading = lost(b).heading as LostHeading
    expect(['A4', 'A5']).toContain(heading.station)
    expect(heading.inclination).toBe(0)
    expect(Math.abs(heading.bearing - 90)).toBeLessThan(20)
    expect(heading.length.value).toBeGreaterThan(4)
    expect(heading.length.value).toBeLessThan(6.5)
    const chances = heading.chance.map(c => c.chance)
    expect([...chances].sort((x, y) => x - y)).toEqual(chances)
    expect(chances.at(-1)).toBeGreaterThanOrEqual(0.9)
    const shortest = lost(b).shortest as LostHeading
    expect(shortest.length.value).toBeLessThan(heading.length.value)
  })

  it('[LA8] the vein found again past the fault settles it', () => {
    const b = lostVein()
    for (const n of [34, 38]) b.write('structure', { feature: 'vein', name: 'Main', place: `E 4 N ${n} U 50 ± 0.1 m`, strike: '0', dip: '60', north: 'grid' })
    const found = lost(b)
    expect(found.tells).toBe('where')
    expect(Math.abs(found.apart.value - 4)).toBeLessThan(0.5)
    expect(found.evidence.map(e => e.id)).toContain('lost-part.again')
  })

  it('[LA9] a vein read parallel to its fault is said to be so', () => {
    const b = new SmallBook()
    b.write('tie', { station: 'A1', place: 'E 0 N 0 U 50', accuracy: '0.05 m' })
    b.write('shot', { from: 'A1', to: 'A2', distance: '10 m', azimuth: '0', inclination: '0' })
    b.write('structure', { feature: 'vein', name: 'Main', place: 'E 0 N 0 U 50', strike: '0', dip: '60', north: 'grid' })
    b.write('structure', { feature: 'fault', name: 'Gap', place: 'E 5 N 0 U 50', strike: '0', dip: '60', north: 'grid', sense: 'normal' })
    const found = ask(b)
    expect(found).toHaveProperty('notEnough', true)
    expect((found as NotEnough).sentence).toContain('parallel')
  })

  it('[LA10] draws itself on any sheet: the same plan as its own, another at another level', () => {
    const b = lostVein()
    grooves(b, '0')
    sense(b, 'right')
    dyke(b, 5)
    const found = lost(b)
    const heading = found.heading as LostHeading
    const reach = 15
    const again = lostPartOn(found, { origin: found.plan.origin, across: found.plan.across, up: found.plan.up }, { point: heading.from, reach })
    expect(again.band!.middle[0]).toEqual(found.plan.band!.middle[0])
    const lower = lostPartOn(found, { ...found.plan, origin: [0, 0, found.plan.origin[2] - 10] }, { point: heading.from, reach })
    // 10 m lower a vein that dips 60 degrees east lies 5.8 m further east.
    expect(lower.band!.middle.at(-1)![0] - again.band!.middle.at(-1)![0]).toBeCloseTo(10 / Math.tan(Math.PI / 3), 0)
    expect(found.section.origin).toEqual(heading.from)
    expect(found.edge!.low).toHaveLength(found.edge!.high.length)
    expect(structuredClone(found)).toEqual(found) // goes through a worker's door as it is
  })

  it('[LA11] every figure opens down to entries of the book or a stated assumption, and nothing is called safe', () => {
    const b = lostVein()
    grooves(b, '0')
    sense(b, 'right')
    dyke(b, 5)
    const { book } = b
    const found = createReckoner(book).answer('lostPart') as LostPart
    const figures: readonly Answer<unknown>[] = [...found.evidence, (found.heading as LostHeading).length, (found.shortest as LostHeading).length]
    for (const figure of figures) {
      expect(isAnswer(figure)).toBe(true)
      const grounds = [figure, ...figure.parts].flatMap(a => a.from)
      expect(grounds.length, figure.id).toBeGreaterThan(0)
      for (const id of grounds) expect(book.all.has(id), `${figure.id} rests on ${id}`).toBe(true)
    }
    expect(JSON.stringify(found)).not.toMatch(/\bsafe\b/i)
    expect(found.cautions[0]).toMatch(/permits/)
  })

  it('[LA12] is its own part: asked for, it is reckoned once, and another bag does not reckon it again', () => {
    const b = lostVein()
    sense(b, 'right')
    const reckoner = createReckoner(b.book)
    reckoner.answer('vein')
    expect(reckoner.runs['lost part']).toBeUndefined()
    reckoner.answer('lostPart')
    expect(reckoner.answer('lostPart')).toBe(reckoner.answer('lostPart'))
    expect(reckoner.runs['lost part']).toBe(1)
  })

  it('[LA13] a senseless assumption does not break it: ours stands', () => {
    const b = lostVein()
    grooves(b, '0')
    sense(b, 'right')
    b.write('assumption', { name: 'slip of the fault', value: '-3' })
    b.write('assumption', { name: 'sense of slip right', value: '90' })
    b.write('assumption', { name: 'grooves off the slip', value: '-5' })
    expect(lost(b).hand).toBe('right')
  })
})

/** A second dyke, 045/90, seen before the fault and so far further east past it. */
const otherDyke = (b: SmallBook, east: number) => {
  for (const [e, n] of [[0, 18], [2, 20], [7, 25], [15 + east, 33], [17 + east, 35], [20 + east, 38]]) {
    b.write('structure', { feature: 'contact', name: 'felsite', place: `E ${e} N ${n} U 50 ± 0.1 m`, strike: '45', dip: '90', north: 'grid', quality: 'good' })
  }
}
/** One line that comes to the fault on both sides: its far end so much further east and up. */
const pierced = (b: SmallBook, east: number, up: number) => {
  b.write('structure', { feature: 'piercing point', name: 'meeting of Main and felsite', side: 'this side', place: 'E -3 N 30 U 50 ± 0.1 m' })
  b.write('structure', { feature: 'piercing point', name: 'meeting of Main and felsite', side: 'far side', place: `E ${-3 + east} N ${30 + up * Math.tan(10 * Math.PI / 180)} U ${50 + up} ± 0.1 m` })
}

describe('each case of evidence, as it can be written in the book', () => {
  it('[LE1] piercing points: the whole slip, and with it where the vein is', () => {
    const b = lostVein()
    pierced(b, 5, 3)
    const found = lost(b)
    expect(found.rests).toBe('piercing points')
    expect(found.tells).toBe('where')
    // A vein 000/60 that goes 5 m east and 3 m up lies 5 + 3 / tan 60 = 6.73 m further east at the same level.
    expect(Math.abs(found.apart.value - 6.73)).toBeLessThan(0.4)
    expect(found.apart.range!.high - found.apart.range!.low).toBeLessThan(3)
    expect(found.apart.assumed).toEqual([])
    expect(found.evidence.find(e => e.id === 'lost-part.pierced')!.sentence).toContain('comes to the fault on both sides')
  })

  it('[LE2] grooves, sense and a matched length: the whole slip too, with the doubt of each', () => {
    const b = lostVein()
    grooves(b, '0')
    sense(b, 'right')
    b.write('structure', { feature: 'striae', name: 'Gap', place: 'A4', strike: '90', dip: '80', rake: '0', north: 'grid', slip: '6 m', slipGoodTo: '0.3 m' })
    const found = lost(b)
    expect(found.rests).toBe('the length of the slip as written, grooves and sense')
    expect(found.tells).toBe('where')
    expect(Math.abs(found.apart.value - 6)).toBeLessThan(0.3)
    expect(found.apart.assumed).toEqual([])
    expect(found.cautions.join(' ')).not.toContain('slip of the fault')
  })

  it('[LE3] one marker alone never fixes the slip: the band is wider than with a second that runs another way', () => {
    const width = (make: (b: SmallBook) => void) => { const b = lostVein(); make(b); const { range } = lost(b).apart; return range!.high - range!.low }
    const one = width((b) => { otherDyke(b, 5) })
    const two = width((b) => { dyke(b, 5); otherDyke(b, 5) })
    expect(one).toBeGreaterThan(2 * two)
    const b = lostVein()
    otherDyke(b, 5)
    expect(lost(b).rests).toBe('one marker')
    expect(lost(b).wanted.map(w => w.why).join(' ')).toContain('runs another way')
  })

  it('[LE4] only that it moved that way: the hand at most, never the distance', () => {
    const b = lostVein()
    sense(b, 'right')
    const found = lost(b)
    expect(found.rests).toBe('sense')
    expect(found.tells).not.toBe('where')
    expect(found.wanted.length).toBeGreaterThan(2)
  })

  it('[LE5] nothing: says so and says what would tell', () => {
    const still = ask(lostVein()) as NotEnough
    expect(still.notEnough).toBe(true)
    expect(still.wanted.map(w => w.why).join(' ')).toMatch(/grooves.*sense.*piercing point/)
  })

  it('[LE6] a marker touched at the fault itself counts on the side that was written', () => {
    const b = lostVein()
    for (const [side, east] of [['this side', -12], ['far side', -7]] as const) {
      for (let i = 0; i < 2; i++) b.write('structure', { feature: 'contact', name: 'dyke', side, place: `E ${east} N 30 U 50 ± 0.1 m`, strike: '0', dip: '90', north: 'grid' })
    }
    grooves(b, '0')
    const found = lost(b)
    expect(found.rests).toBe('grooves and one marker')
    expect(Math.abs(found.apart.value - 5)).toBeLessThan(0.6)
  })
})
