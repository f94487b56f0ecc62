import { describe, expect, it } from 'vitest'
import { input, isError, readColours, readDate, readMoment, coloursText } from '../../src/index.ts'

const now = Date.parse('2026-05-03T12:00:00Z')

describe('from written text to what is kept', () => {
  it('a shot as it stands in a notebook', () => {
    const { set, problems } = input('shot', {
      from: 'A6', to: ' A7 ', distance: '4\'7½"', azimuth: 'N 23 E', inclination: '-12°', left: '2.5', surveyors: 'Ines, Tomas', taken: '3 May 2026', note: '',
    }, { now, units: { length: 'ft' } })
    expect(problems).toEqual([])
    expect(set).toMatchObject({
      from: 'A6', to: 'A7', distance: { text: '4\'7½"', unit: 'm' }, azimuth: { value: 23 }, inclination: { value: -12 },
      left: { text: '2.5', from: 'ft' }, surveyors: ['Ines', 'Tomas'], taken: '2026-05-03',
    })
    // 4 ft 7 1/2 in is 55.5 in of 0.0254 m exactly (international yard and pound agreement, 1959)
    expect(set['distance']).toHaveProperty('value', 1.4097)
    expect(set).not.toHaveProperty('note')
  })
  it('a column\'s unit goes before the crew\'s', () => {
    const { set } = input('sample', { bag: 'G01', method: 'Channel', width: '20' }, { now, units: { length: 'ft' }, fieldUnits: { width: 'in' } })
    expect(set).toMatchObject({ method: 'channel', width: { text: '20', from: 'in', value: 0.508 } })
  })
  it('what could not be read is one problem, not two', () => {
    const { set, problems } = input('shot', { from: 'A6', to: 'A7', distance: '0 m', azimuth: '370' }, { now })
    expect(set).not.toHaveProperty('azimuth')
    expect(problems.filter(isError).map(({ field, value }) => [field, value])).toEqual([['azimuth', '370'], ['distance', expect.objectContaining({ text: '0 m' })]])
  })
  it.each([['shot', 'depth'], ['shot', '__proto__'], ['shot', 'constructor']])('%s has no field %s', (kind, field) => {
    const { problems } = input(kind, Object.fromEntries([['from', 'A6'], ['to', 'A7'], ['distance', '2 m'], ['azimuth', '5'], [field, 'x']]), { now })
    expect(problems.map(problem => problem.field)).toEqual([field])
  })
  it('money, choices, colours, yes and no', () => {
    expect(input('cost', { item: 'Bits', amount: '$40', per: 'once' }, { now, currency: 'USD' })).toEqual({ problems: [], set: { item: 'Bits', amount: { text: '$40', amount: 40, currency: 'USD' }, per: 'once' } })
    expect(input('cost', { item: 'Bits', amount: '40', per: 'once' }, { now }).problems.map(({ field }) => field)).toEqual(['amount'])
    expect(input('ground', { place: 'A6', found: 'Drummy; dripping', scaled: 'Y' }, { now }).set).toMatchObject({ found: ['drummy', 'dripping'], scaled: true })
    expect(input('pan', { bag: 'B-1', mass: '5 kg', colours: 'none' }, { now }).set).toMatchObject({ colours: [] })
  })
})

describe('dates that can be read in one way only', () => {
  it.each([['2026-05-03', '2026-05-03'], ['3 May 2026', '2026-05-03'], ['May 3rd, 2026', '2026-05-03'], ['3-may-2026', '2026-05-03'], ['13/5/2026', '2026-05-13'],
    ['5/13/2026', '2026-05-13'], ['5/5/2026', '2026-05-05'], ['3.5.2026', '2026-05-03'], ['2026/5/3', '2026-05-03'], ['12 Sept 1897', '1897-09-12']])('%s', (text, date) => {
    expect(readDate(text)).toEqual({ ok: true, value: date })
  })
  it('asks when it can be two days', () => {
    expect(readDate('3/5/2026')).toMatchObject({ ok: false, why: 'because it can be the 3. of may or the 5. of mar' })
  })
  it.each(['', '31 Apr 2026', '2026-13-01', '3 May 26', '29/2/2026', 'yesterday', '3 Mai 2026'])('refuses %j', (text) => { expect(readDate(text).ok).toBe(false) })
  it.each([
    ['2026-05-03T07:30-07:00', '2026-05-03T07:30-07:00'], ['2026-05-03 07:30', '2026-05-03T07:30:00-07:00'], ['3 May 2026 7:30 pm', '2026-05-03T19:30:00-07:00'],
    ['May 3, 2026 12 am', '2026-05-03T00:00:00-07:00'], ['2026-05-03 07:30 Z', '2026-05-03T07:30:00Z'],
  ])('the moment %s', (text, moment) => { expect(readMoment(text, '-07:00')).toEqual({ ok: true, value: moment }) })
  it.each(['2026-05-03', '2026-05-03 25:00', '2026-05-03 13 pm', '2026-05-03 7', '07:30'])('no moment: %s', (text) => { expect(readMoment(text, '-07:00').ok).toBe(false) })
  it('asks for the offset when nobody says it', () => { expect(readMoment('2026-05-03 07:30')).toMatchObject({ ok: false, why: 'because the offset from UTC is not said' }) })
})

describe('colours', () => {
  const colours = [{ class: 'fine', count: 12, mgEach: 0.05 }, { class: 'very coarse', count: 2, mgEach: 1.5 }]
  it('read back from their own text', () => { expect(readColours(coloursText(colours))).toEqual({ ok: true, value: colours }) })
  it('take the usual mass of a class', () => { expect(readColours('3 Fine', { fine: 0.05 })).toEqual({ ok: true, value: [{ class: 'fine', count: 3, mgEach: 0.05 }] }) })
  it.each(['3 fine', '3 constructor', 'fine', '3 fine at 0 mg', '3 fine at mg'])('refuse %j', (text) => { expect(readColours(text).ok).toBe(false) })
})

describe('a dip written with the side it goes down to', () => {
  const dip = (texts: Record<string, string>) => input('structure', { feature: 'vein', place: 'A6', ...texts }, { now })
  it.each([
    [{ strike: 'N 23 E', dip: '62 SE' }], [{ strike: '203', dip: '62° NW' }], [{ strike: '0', dip: '62 NE' }], [{ dipDirection: '113', dip: '62 toward the SE' }],
  ])('keeps %j, which agree', (texts) => {
    const { set, problems } = dip(texts)
    expect(problems).toEqual([])
    expect(set['dip']).toEqual({ text: texts.dip, value: 62, unit: 'deg' })
  })
  it('says which strike would dip that way', () => {
    expect(dip({ strike: 'N 23 E', dip: '62 NW' }).problems).toMatchObject([{ field: 'strike', expected: 'strike 203' }])
    expect(dip({ strike: '0', dip: '62 N' }).problems).toMatchObject([{ field: 'strike', expected: 'a strike that is not the way the plane dips' }])
    expect(dip({ dipDirection: '113', dip: '62 W' }).problems).toMatchObject([{ field: 'dip', expected: 'a dip towards the dip direction' }])
  })
  it('takes a point of the compass nowhere else', () => {
    expect(input('mine', { name: 'Hollow', declination: '12 W' }, { now }).problems).toMatchObject([{ field: 'declination' }])
    expect(dip({ trend: '20', plunge: '12 W' }).problems).toMatchObject([{ field: 'plunge' }])
    expect(dip({ strike: '23', dip: '95 SE' }).problems).toMatchObject([{ field: 'dip' }])
    expect(dip({ strike: '23', dip: '62 SEE' }).problems).toMatchObject([{ field: 'dip', expected: 'a dip such as 62 or 62 SE, 0 to 90 from level' }])
  })
})
