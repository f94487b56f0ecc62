import { describe, expect, it } from 'vitest'
import { parseQuantity } from '@lodebook/reckon/units'
import type { Dimension, Quantity } from '@lodebook/reckon/units'
import { checkBook, checkDraft, checkDrafts, isError } from '../../src/index.ts'
import type { Book, FieldValue } from '../../src/index.ts'
import { bookOf } from '../book-of.ts'

const now = Date.parse('2026-05-03T12:00:00Z')
const q = (text: string, dimension: Dimension): Quantity => {
  const parsed = parseQuantity(text, dimension)
  if (!parsed.ok) throw new Error(parsed.problem.why)
  return parsed.quantity
}
type Set = Record<string, FieldValue | null>
const problems = (kind: string, set: Set, book?: Book, entry?: string) =>
  checkDraft(kind, set, { now, ...(book ? { book } : {}), ...(entry === undefined ? {} : { entry }) })
const errors = (kind: string, set: Set, book?: Book, entry?: string) => problems(kind, set, book, entry).filter(isError).map(({ field }) => field)
const warnings =
  (kind: string, set: Set, book?: Book, entry?: string) => problems(kind, set, book, entry).filter(problem => !isError(problem)).map(({ field }) => field)

const shot: Set = { from: 'A6', to: 'A7', distance: q('4 ft 7 1/2 in', 'length'), azimuth: q('N 23 E', 'azimuth') }
const sample: Set = { bag: 'B-017', method: 'channel' }
const place = { by: 'station', station: 'A6' } as const

describe('kinds and fields', () => {
  it('takes a whole shot', () => { expect(problems('shot', shot)).toEqual([]) })
  it.each(['mystery', 'constructor', '__proto__', ''])('refuses the kind %j', (kind) => { expect(errors(kind, shot)).toEqual(['kind']) })
  it.each(['depth', 'constructor', 'toString'])('refuses the field %j', (field) => { expect(errors('shot', { ...shot, [field]: 'x' })).toEqual([field]) })
  it('names every required field that is missing', () => { expect(errors('shot', { from: 'A6' })).toEqual(['to', 'distance', 'azimuth']) })
  it('names the kind and the entry', () => {
    expect(problems('shot', { ...shot, to: 'A6' }, undefined, 's1')[0]).toEqual({
      kind: 'shot', entry: 's1', field: 'to', value: 'A6', expected: 'another than from', message: 'To: a shot goes from one station to another; both are the same here.',
    })
  })
})

describe('a change is checked as it would leave the entry', () => {
  const book = bookOf(['shot', shot as never, 's1'], ['tie', { station: 'A6', place: { by: 'grid', east: 0, north: 0 } }])
  it('one field alone will do', () => { expect(errors('shot', { distance: q('5 m', 'length') }, book, 's1')).toEqual([]) })
  it('a required field may not be taken away', () => { expect(errors('shot', { to: null }, book, 's1')).toEqual(['to']) })
  it('a field must agree with those already there', () => { expect(errors('shot', { from: 'A7' }, book, 's1')).toEqual(['to']) })
  it('an entry keeps its kind', () => { expect(errors('tie', { station: 'A6' }, book, 's1')).toEqual(['kind']) })
})

describe('times', () => {
  it('refuses a date in the future', () => { expect(errors('shot', { ...shot, taken: '2027-05-03' })).toEqual(['taken']) })
  it('takes the date it is already where the day begins first', () => { expect(errors('shot', { ...shot, taken: '2026-05-04' })).toEqual([]) })
  it('refuses the day after that', () => { expect(errors('shot', { ...shot, taken: '2026-05-05' })).toEqual(['taken']) })
  it('refuses a moment in the future, whatever its offset', () => {
    const air = { place, oxygen: q('20.8 %', 'percent') }
    expect(errors('air', { ...air, taken: '2026-05-03T05:00-07:00' })).toEqual([])
    expect(errors('air', { ...air, taken: '2026-05-03T05:11-07:00' })).toEqual(['taken'])
  })
  it('lets someone be due out later', () => {
    const going = { people: ['Ines'], in: '2026-05-03T11:00Z' }
    expect(errors('going-in', { ...going, due: '2026-05-03T16:00Z' })).toEqual([])
    expect(errors('going-in', { ...going, due: '2026-05-03T04:00-07:00' })).toEqual(['due'])
    expect(errors('going-in', { ...going, due: '2026-05-03T16:00Z', out: '2026-05-03T10:00Z' })).toEqual(['out'])
  })
  it('refuses a time due out that has passed, in words, unless they are out', () => {
    const going = { people: ['Ines'], in: '2026-05-03T08:00Z', due: '2026-05-03T11:59Z' }
    expect(errors('going-in', going)).toEqual(['due'])
    expect(problems('going-in', going)[0]?.message).toContain('that time has passed already')
    expect(errors('going-in', { ...going, out: '2026-05-03T11:30Z' })).toEqual([])
    expect(errors('going-in', { ...going, due: '2026-05-03T12:01Z' })).toEqual([])
  })
  it('doubts an air reading in the wrong unit or column, and a meter without a calibration date', () => {
    const air = { place, taken: '2026-05-03T11:00Z' }
    expect(warnings('air', { ...air, oxygen: q('20.9 ppm', 'percent') })).toContain('oxygen')
    expect(problems('air', { ...air, oxygen: q('20.9 ppm', 'percent') }).map(p => p.message).join()).toContain('was 20.9 % meant, not 20.9 ppm?')
    expect(warnings('air', { ...air, carbonMonoxide: q('20.9 ppm', 'concentration') })).toContain('carbonMonoxide')
    expect(warnings('instrument', { name: 'meter', sort: 'gas meter' })).toEqual(['calibrated'])
    expect(warnings('instrument', { name: 'meter', sort: 'gas meter', calibrated: '2026-05-01' })).toEqual([])
  })
  it('refuses oxygen of 209 and monoxide below nothing', () => {
    const air = { place, taken: '2026-05-03T11:00Z' }
    expect(errors('air', { ...air, oxygen: { text: '209 %', value: 209, unit: '%' } })).toEqual(['oxygen'])
    expect(errors('air', { ...air, carbonMonoxide: { text: '-3 ppm', value: -3, unit: 'ppm' } })).toEqual(['carbonMonoxide'])
  })
  it('refuses a relic from next year', () => { expect(errors('relic', { item: 'lamp', place, from: 2028 })).toEqual(['from']) })
})

describe('names that may be used once', () => {
  const book = bookOf(['sample', sample as never, 'x1'], ['split', { bag: 'B-018', of: 'B-017', method: 'riffle' }, 'x2'])
  it('two entries with one bag number', () => { expect(errors('sample', { ...sample, bag: 'b-017' }, book)).toEqual(['bag']) })
  it('a sample and a split with one bag number', () => { expect(errors('sample', { ...sample, bag: 'B-018' }, book)).toEqual(['bag']) })
  it('an entry may keep its own', () => { expect(errors('sample', { bag: 'B-017' }, book, 'x1')).toEqual([]) })
  it('two in one go', () => {
    const lists = checkDrafts([
      { entry: 'n1', kind: 'sample', set: { ...sample, bag: 'B-020' } },
      { entry: 'n2', kind: 'sample', set: { ...sample, bag: 'B-021' } },
      { entry: 'n3', kind: 'split', set: { bag: 'B-020', of: 'B-017', method: 'riffle' } },
      { entry: 'n1', kind: 'sample', set: { bag: 'B-020' } },
    ], { now, book })
    expect(lists.map(list => list.filter(isError).map(({ field, entry }) => `${entry} ${field}`))).toEqual([[], [], ['n3 bag'], ['n1 method']])
  })
})

describe('fields that belong together', () => {
  const structure = { feature: 'vein', place }
  const [strike, dip] = [q('203', 'azimuth'), q('62', 'angle')]
  it.each<[string, string, Set, string[]]>([
    ['strike and dip direction both', 'structure', { ...structure, strike, dip, dipDirection: strike }, ['dipDirection']],
    ['a strike without a dip', 'structure', { ...structure, strike }, ['dip']],
    ['a dip without a strike', 'structure', { ...structure, dip }, ['strike']],
    ['a dip with a dip direction', 'structure', { ...structure, dip, dipDirection: strike }, []],
    ['a trend without a plunge', 'structure', { ...structure, feature: 'striae', trend: strike }, ['plunge']],
    ['striae with neither line nor rake', 'structure', { ...structure, feature: 'striae' }, ['trend']],
    ['a rake without its plane', 'structure', { ...structure, feature: 'striae', rake: q('30', 'angle') }, ['dip']],
    ['a tape along a line without the line', 'width', { vein: 'Main', place, measured: q('0.4 m', 'length'), direction: 'along a line' }, ['trend', 'plunge']],
    ['more gouge than width', 'width', { vein: 'Main', place, measured: q('0.4 m', 'length'), gouge: q('50 cm', 'length') }, ['gouge']],
    ['drier than dry', 'sample', { ...sample, mass: q('3 kg', 'mass'), massWet: q('2 kg', 'mass') }, ['massWet']],
    ['a duplicate of nothing', 'sample', { ...sample, role: 'duplicate' }, ['duplicateOf']],
    ['a duplicate of itself', 'sample', { ...sample, role: 'duplicate', duplicateOf: 'B-017' }, ['duplicateOf']],
    ['a standard without a name', 'sample', { ...sample, role: 'standard' }, ['standard']],
    ['a standard without a certified grade', 'standard', { name: 'S1', sort: 'standard' }, ['gold']],
    ['a blank without a grade', 'standard', { name: 'S1', sort: 'blank' }, []],
    ['more found than seeded', 'pan', { bag: 'B-017', mass: q('2 kg', 'mass'), colours: [], seeded: 5, found: 6 }, ['found']],
    ['a density test that tests nothing', 'density', { material: 'quartz' }, ['density']],
    ['a tie in words', 'tie', { station: 'A1', place: { by: 'words', words: 'by the creek' } }, ['place']],
    ['an outline of two corners', 'worked-out', { name: 'Old stope', vein: 'Main', corners: [place, place] }, ['corners']],
    ['a heading that stands still', 'heading', { name: 'Adit', sort: 'adit', stations: ['A1', 'A1'] }, ['stations[1]']],
    ['years the wrong way round', 'crushing', { mine: 'Old', crushed: q('10 t', 'mass'), from: 1901, to: 1897 }, ['to']],
    ['a range that misses its value', 'assumption', { name: 'recovery', value: 3, low: 1, high: 2 }, ['high']],
  ])('%s', (_, kind, set, expected) => { expect(errors(kind, set)).toEqual(expected) })
})

describe('doubts are warnings and refuse nothing', () => {
  const tie = ['tie', { station: 'A1', place: { by: 'grid', east: 0, north: 0 } }] as const
  const far = ['shot', { ...shot, from: 'A1', to: 'A2' } as never] as const
  it('a station nobody measured', () => { expect(warnings('sample', { ...sample, place }, bookOf(tie, far))).toEqual(['place.station']) })
  it('a station measured and tied', () => { expect(problems('sample', { ...sample, place: { by: 'station', station: 'A2' } }, bookOf(tie, far))).toEqual([]) })
  it('a station used before it is tied', () => {
    const found = problems('sample', { ...sample, place: { by: 'station', station: 'A2' } }, bookOf(far))
    expect(found.map(({ message }) => message)).toEqual(['Place: station A2 is not joined to a tie yet, so its place on the ground is not known.'])
  })
  it('a shot off by itself', () => { expect(warnings('shot', shot, bookOf(tie, far))).toEqual(['from']) })
  it('a pan of a bag nobody filled', () => { expect(warnings('pan', { bag: 'B-9', mass: q('2 kg', 'mass'), colours: [] }, bookOf())).toEqual(['bag']) })
  it('a pan without a word of what was in it', () => { expect(warnings('pan', { bag: 'B-9', mass: q('2 kg', 'mass') })).toEqual(['colours']) })
  it('a second mine', () => { expect(warnings('mine', { name: 'Other' }, bookOf(['mine', { name: 'Hollow' }]))).toEqual(['name']) })
  it('errors come first', () => {
    expect(problems('air', { place, taken: '2026-05-03T05:00Z', wetBulb: q('12 C', 'temperature'), dryBulb: q('11 C', 'temperature') }, bookOf()).map(({ field }) => field))
      .toEqual(['dryBulb', 'place.station'])
  })
})

describe('a book as it stands', () => {
  it('names two bags of one number after a merge, and what waits for a station', () => {
    const book = bookOf(['sample', sample as never, 'x1'], ['sample', { ...sample, place }, 'x2'], ['shot', shot as never, 's1'])
    expect(checkBook(book, now).map(problem => `${problem.entry} ${problem.field}${problem.warning ? ' (doubt)' : ''}`)).toEqual(
      ['x1 bag', 'x2 bag', 'x2 place.station (doubt)'])
  })
  it('of nothing has no problem', () => { expect(checkBook(bookOf(), now)).toEqual([]) })
})
