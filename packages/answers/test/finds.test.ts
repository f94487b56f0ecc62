import { describe, expect, it } from 'vitest'
import { createReckoner } from '../src/index.ts'
import type { Bags, Finds } from '../src/index.ts'
import { SmallBook } from './small-book.ts'

/** A portal, 20 m of drift in two legs, and a branch of 6 m off its middle; offsets of 0.6 m to the ribs. */
function drift(): SmallBook {
  const b = new SmallBook()
  b.write('mine', { name: 'Test adit', declination: '0', people: 'Ada' })
  b.write('tie', { station: 'A0', place: 'E 100 N 200 U 50', accuracy: '0.05 m' })
  for (const [from, to, distance, azimuth] of [['A0', 'A1', '12 m', '0'], ['A1', 'A2', '8 m', '0'], ['A1', 'B1', '6 m', '90']] as const) {
    b.write('shot', { from, to, distance, azimuth, inclination: '0', left: '0.6 m', right: '0.6 m', up: '1 m', down: '0.8 m' })
  }
  b.write('heading', { name: 'Drift', sort: 'adit', stations: 'A0, A1, A2' })
  return b
}
const finds = (b: SmallBook) => createReckoner(b.book).answer('finds') as Finds
const bags = (b: SmallBook) => createReckoner(b.book).answer('bags') as Bags
const figure = (f: Finds, id: string) => f.figures.find(one => one.id === id)!.value

describe('swept ground', () => {
  it('[FS1] is as long as the way along the shots between its ends, round a corner too', () => {
    const b = drift()
    b.write('sweep', { from: 'A0 + 2 m toward A1', to: 'A1 + 4 m toward B1', sides: 'left rib, back', result: 'silent' })
    const [sweep] = finds(b).sweeps
    expect(sweep!.length).toBeCloseTo(10 + 4, 6)
    expect(sweep!.lines.map(l => l.side)).toEqual(['left rib', 'back'])
    for (const [, , up] of sweep!.lines[1]!.points) expect(up).toBeCloseTo(51, 6) // the back stands a metre over the tape
  })

  it('[FS2] counts once what was swept twice, and as silent only what no sweep heard anything in', () => {
    const b = drift()
    b.write('sweep', { from: 'A0', to: 'A1', sides: 'left rib', result: 'silent' })
    b.write('sweep', { from: 'A0 + 6 m toward A1', to: 'A2', sides: 'back', result: 'silent' })
    b.write('sweep', { from: 'A1 + 1 m toward A0', to: 'A1 + 5 m toward A0', sides: 'sill', result: 'marks found', marks: 'T1' })
    const f = finds(b)
    expect(figure(f, 'finds.swept')).toBeCloseTo(20, 6)
    expect(figure(f, 'finds.silent')).toBeCloseTo(16, 6)
    expect(f.sweeps[2]!.length).toBeCloseTo(4, 6)
  })

  it('[FS3] without a place it is listed and adds nothing', () => {
    const b = drift()
    b.write('sweep', { from: 'words: somewhere in the raise', to: 'A2', sides: 'back', result: 'silent' })
    const f = finds(b)
    expect(f.sweeps[0]!.length).toBeUndefined()
    expect(f.sentence).toContain('No stretch is written as swept')
  })
})

describe('a target\'s chain', () => {
  const chain = () => {
    const b = drift()
    b.write('sweep', { from: 'A1', to: 'A2', sides: 'left rib', result: 'marks found', marks: 'T12' })
    const target = b.write('target', { mark: 'T12', place: 'A1 + 3 m toward A2, left rib, 1 m up', strength: '7', outcome: 'still in the wall' })
    return { b, target }
  }
  const story = (b: SmallBook, target: string) => finds(b).targets.find(t => t.entry === target)!

  it('[TC1] goes from the signal over the piece, its bag and split to the gold that was weighed', () => {
    const { b, target } = chain()
    b.write('target-check', { mark: 't12', found: 'still in the wall', checked: '2026-05-01T09:00Z' })
    expect(story(b, target)).toMatchObject({ state: 'still in the wall', open: true })
    b.write('target-check', { mark: 'T12', found: 'in this piece', piece: '900 g', checked: '2026-05-01T09:20Z' })
    expect(story(b, target)).toMatchObject({ state: 'in a piece', open: true })
    b.write('target-check', { mark: 'T12', found: 'in this piece', became: 'piece for the mortar', piece: '300 g', bag: 'P-1', checked: '2026-05-01T09:40Z' })
    b.write('sample', { bag: 'P-1', method: 'piece', target: 'T12', mass: '300 g' })
    b.write('split', { bag: 'P-1A', of: 'P-1', method: 'riffle', mass: '150 g' })
    expect(story(b, target)).toMatchObject({ state: 'in the mortar', open: true })
    b.write('pan', { bag: 'P-1', mass: '150 g', goldMass: '30 mg' })
    b.write('pan', { bag: 'P-1A', mass: '150 g', colours: '3 medium at 2 mg' })
    const done = story(b, target)
    expect(done).toMatchObject({ state: 'gold', open: false })
    expect(done.gold!.value).toBeCloseTo(36, 9)
    expect(done.steps.map(s => s.kind)).toEqual(['sweep', 'target', 'target-check', 'target-check', 'target-check', 'sample', 'split', 'pan', 'pan'])
    expect(done.gold!.from).toContain(target)
  })

  it.each([['scrap iron', 'scrap iron'], ['hot rock', 'hot rock'], ['relic', 'relic']] as const)('[TC2] ends with %s', (became, state) => {
    const { b, target } = chain()
    b.write('target-check', { mark: 'T12', found: 'in this piece', became })
    expect(story(b, target)).toMatchObject({ state, open: false })
  })

  it('[TC3] a weight written on the target counts only while no pan has one', () => {
    const b = drift(), target = b.write('target', { mark: 'T1', place: 'A1', outcome: 'gold', goldMass: '20 mg', bag: 'P-9' })
    expect(finds(b).targets[0]!.gold!.value).toBeCloseTo(20, 9)
    b.write('sample', { bag: 'P-9', method: 'piece' })
    b.write('pan', { bag: 'P-9', mass: '200 g', goldMass: '18 mg' })
    expect(finds(b).targets.find(t => t.entry === target)!.gold!.value).toBeCloseTo(18, 9)
  })

  it('[TC4] a piece picked for its gold tells nothing of the ground: no grade stands on it', () => {
    const { b } = chain()
    b.write('sample', { bag: 'P-1', method: 'piece', target: 'T12', mass: '300 g' })
    b.write('pan', { bag: 'P-1', mass: '300 g', colours: '20 coarse at 5 mg' })
    const associations = createReckoner(b.book).answer('associations')
    expect(associations).toHaveProperty('notEnough', true)
    expect(createReckoner(b.book).answer('samplePlan').whence.grade).toMatch(/before any bag/)
  })
})

describe('finding it again', () => {
  it('[FA1] nearest to the portal comes first; what lies within a metre is named; a hazard near by is told', () => {
    const b = drift()
    const far = b.write('target', { mark: 'T1', place: 'A1 + 5 m toward B1, left rib', outcome: 'open' })
    const near = b.write('target', { mark: 'T2', place: 'A0 + 3 m toward A1, left rib', outcome: 'open' })
    b.write('relic', { item: 'candle stub', place: 'A0 + 3.4 m toward A1, left rib' })
    b.write('hazard', { sort: 'old explosives', place: 'A0 + 5 m toward A1, sill', state: 'marked off' })
    const f = finds(b), at = f.finds.find(x => x.entry === near)!
    expect(f.open).toEqual([near, far])
    expect(f.portal).toBe('A0')
    expect(at.way).toBeCloseTo(3, 6)
    expect(f.finds.find(x => x.entry === far)!.way).toBeCloseTo(17, 6)
    expect(at.near.map(n => [n.kind, n.metres.toFixed(2)])).toEqual([['relic', '0.40']])
    expect(at.hazards.map(h => h.tag)).toEqual(['old explosives'])
    expect(at.doubt!).toBeLessThan(1) // of the place as taped, whatever the tie is good to
    expect(f.cautions.join(' ')).toMatch(/explosives/)
  })

  it('[FA2] speaks the crew\'s units, and keeps what was written in them as it was written', () => {
    const b = new SmallBook()
    b.write('mine', { name: 'Test', units: 'feet and oz/ton' })
    b.write('target', { mark: 'T1', place: 'A6 + 7 ft 3 in toward A7, left rib, 1 m up' })
    expect(finds(b).finds[0]!.where).toBe('7 ft 3 in from A6 towards A7, left rib, 3 ft 3.5 in above the sill')
  })
})

describe('bags', () => {
  it('[BG1] names numbers passed over, lost bags and results of bags that nobody took; the rest is accounted for', () => {
    const b = drift()
    b.write('label-roll', { prefix: 'B-', first: '1', last: '20' })
    for (const n of [1, 2, 4]) b.write('sample', { bag: `B-00${n}`, method: 'chip', place: 'A1' })
    b.write('pan', { bag: 'B-001', mass: '1 kg', colours: 'none' })
    b.write('split', { bag: 'B-004A', of: 'B-004', method: 'riffle' })
    b.write('assay', { bag: 'B-004A', gold: '2 g/t' })
    b.write('assay', { bag: 'B-014', gold: '9 g/t' })
    const found = bags(b), of = (sort: string) => found.faults.filter(f => f.sort === sort).flatMap(f => f.bags)
    expect([of('skipped'), of('never seen again'), of('result without a bag'), of('used twice')]).toEqual([['B-003'], ['B-002'], ['B-014'], []])
    expect(found.rolls).toMatchObject([{ used: 3, next: 'B-005', left: 16, skipped: ['B-003'] }])
    expect(found.trees.map(t => [t.bag, t.of.map(o => o.is)])).toEqual([['B-004', ['split']]])
  })

  it('[BG2] a number on two bags is named with both, upper or lower case alike', () => {
    const b = drift()
    const two = ['B-7', 'b-7'].map(bag => b.write('sample', { bag, method: 'chip' }))
    expect(bags(b).faults.find(f => f.sort === 'used twice')!.entries).toEqual(two)
  })

  it('[BG3] a seal broken or changed on the way is a gap, unless somebody wrote that the bag was opened', () => {
    const way = (...steps: readonly Readonly<Record<string, string>>[]) => {
      const b = drift()
      b.write('sample', { bag: 'B-1', method: 'chip', seal: 'S-1', taken: '2026-05-01' })
      for (const step of steps) b.write('custody', { bags: 'B-1', who: 'Ada', ...step })
      return bags(b).bags[0]!.gaps
    }
    const sent = { act: 'sent', to: 'Lab', when: '2026-05-03T09:00Z', seal: 'S-1' }
    expect(way(sent, { act: 'received', who: 'Lab', when: '2026-05-05T09:00Z', seal: 'S-1', intact: 'whole' })).toEqual([])
    expect(way(sent, { act: 'received', who: 'Lab', when: '2026-05-05T09:00Z', intact: 'broken' }).join()).toMatch(/seal was broken/)
    expect(way(sent, { act: 'received', who: 'Lab', when: '2026-05-05T09:00Z', seal: 'S-9' }).join()).toMatch(/sealed S-1.*S-9/)
    expect(way({ act: 'crushed', when: '2026-05-02T09:00Z' }, { ...sent, seal: 'S-2' })).toEqual([])
    expect(way(sent, { act: 'received', who: 'Neighbour', when: '2026-05-05T09:00Z' }).join()).toMatch(/sent to Lab, but received by Neighbour/)
    expect(way({ act: 'received', who: 'Lab', when: '2026-05-05T09:00Z' }).join()).toMatch(/nobody wrote that it was sent/)
  })

  it('[BG4] a run stands for each of its bags', () => {
    const b = drift()
    for (const n of [1, 2, 3]) b.write('sample', { bag: `B-00${n}`, method: 'chip' })
    b.write('custody', { bags: 'B-001 to B-003', act: 'carried', who: 'Ada', when: '2026-05-01T18:00Z' })
    expect(bags(b).bags.map(x => x.steps.length)).toEqual([2, 2, 2])
  })

  it('[BG5] an empty book says what would begin it', () => {
    expect(createReckoner(new SmallBook().book).answer('bags')).toMatchObject({ notEnough: true })
    expect(createReckoner(new SmallBook().book).answer('finds')).toMatchObject({ notEnough: true })
  })
})
