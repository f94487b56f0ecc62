import { createHash } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { previewCsv } from '../../src/csv/index.ts'
import { bookOf, emptyBook, messages, now, preview, utf8, value } from './helpers.ts'

const shots = 'From,To,Distance (ft),Azimuth,Inclination\nA1,A2,10.5,203,-2\nA2,A3,22,210,0\n'

describe('a preview', () => {
  it('tells for each column what it feeds', () => {
    const { columns } = preview('Bag,Width (in),Au ppm,Colour\nB-1,8,2.1,red\n', ['sample', 'assay'], { fill: { method: 'chip' } })
    expect(columns.map(({ heading, feeds, example }) => [heading, feeds.map(feed => `${feed.kind}.${feed.field} ${feed.unit ?? ''}`.trim()), example])).toEqual([
      ['Bag', ['sample.bag', 'assay.bag'], 'B-1'],
      ['Width (in)', ['sample.width in'], '8'],
      ['Au ppm', ['assay.gold ppm'], '2.1'],
      ['Colour', [], 'red'],
    ])
  })

  it('makes one entry a row, with its row and its origin', () => {
    const { drafts, sha256, rows, problems } = preview(shots, ['shot'])
    expect(problems).toEqual([])
    expect(rows).toBe(2)
    expect(sha256).toBe(createHash('sha256').update(shots).digest('hex'))
    expect(drafts.map(draft => [draft.row, draft.origin])).toEqual([[2, `csv:${sha256}:2`], [3, `csv:${sha256}:3`]])
    expect(drafts[0]).toMatchObject({ kind: 'shot', set: { from: 'A1', to: 'A2', distance: { text: '10.5', from: 'ft', value: 3.2004, unit: 'm' } } })
  })

  it('does not change the bytes it is given', () => {
    const bytes = utf8(shots)
    previewCsv(bytes, { kinds: ['shot'] }, { book: emptyBook, now })
    expect(bytes).toEqual(utf8(shots))
  })

  it('names the headings when a field that is needed has no column', () => {
    const made = preview('From,To,Az\nA1,A2,203\n', ['shot'])
    expect(made.drafts).toEqual([])
    expect(messages(made)).toEqual(['Slope distance (shot): no column is headed so; expected a column for it, or one value for every row. The headings are From, To, Az.'])
  })

  it('refuses a kind that does not exist', () => {
    expect(preview(shots, ['shott']).problems[0]).toMatchObject({ field: 'kind', value: 'shott' })
    expect(preview(shots, []).problems[0]).toMatchObject({ field: 'kind' })
  })

  it.each([
    ['an azimuth of 370', 'A1,A2,10,370,0', 'azimuth', 370, /^Row 2, Azimuth: "370" will not do/],
    ['an inclination of 95', 'A1,A2,10,20,95', 'inclination', 95, /^Row 2, Inclination: "95" will not do/],
    ['a shot of no length', 'A1,A2,0,20,0', 'distance', 0, /^Row 2, Slope distance: "0" will not do; expected a length above 0 ft/],
    ['NaN', 'A1,A2,NaN,20,0', 'distance', NaN, /^Row 2, Slope distance: "NaN" will not do/],
    ['a shot to itself', 'A1,A1,10,20,0', 'to', 0, /^Row 2, To: a shot goes from one station to another/],
  ])('names field, value and row of %s, and takes the row below', (_, bad, field, __, words) => {
    const made = preview(`From,To,Distance (ft),Azimuth,Inclination\n${bad}\nA2,A3,22,210,0\n`, ['shot'])
    expect(made.problems[0]).toMatchObject({ field, row: 2 })
    expect(made.problems[0]!.warning).toBeUndefined()
    expect(messages(made)[0]).toMatch(words)
    expect(made.drafts.map(draft => draft.row)).toEqual([3])
  })

  it('names field, value and row of a negative mass and of a date to come', () => {
    const made = preview('Bag,Method,Mass dry (kg),Taken\nB-1,chip,-2,2026-05-01\nB-2,chip,2,2031-05-01\nB-3,chip,2,2026-05-01\n', ['sample'])
    expect(made.problems.map(({ field, row }) => [field, row])).toEqual([['mass', 2], ['taken', 3]])
    expect(messages(made)[0]).toMatch(/^Row 2, Mass dry: "-2" will not do/)
    expect(messages(made)[1]).toMatch(/^Row 3, Taken: "2031-05-01" will not do, because it is after 2026-11-25/)
    expect(made.drafts.map(draft => draft.row)).toEqual([4])
  })

  it('names the row that has a bag number first', () => {
    const made = preview('Bag,Method\nB-1,chip\nB-2,chip\nb-1,channel\n', ['sample'])
    expect(messages(made)).toEqual(['Row 4, Bag: "b-1" will not do, because row 2 has it already; expected a name used once.'])
    expect(made.drafts.map(draft => draft.row)).toEqual([2, 3])
  })

  it('refuses a bag number that the book has already for something else', () => {
    const before = bookOf(preview('Bag,Method\nB-1,grab\n', ['sample']).drafts)
    const made = preview('Bag,Method\nB-1,chip\nB-2,chip\n', ['sample'], {}, before)
    expect(messages(made)[0]).toMatch(/^Row 2, Bag: B-1 is used by another entry already/)
    expect(made.drafts.map(draft => draft.row)).toEqual([3])
  })

  it('knows a bag and a station from the same file', () => {
    expect(messages(preview('Bag,Method,Au ppm\nB-1,chip,2\n', ['sample', 'assay']))).toEqual([])
    expect(messages(preview('Bag,Au ppm\nB-1,2\n', ['assay']))).toEqual(['Row 2, Bag: no sample or split with bag B-1 is written yet.'])
  })

  it('lets warnings through', () => {
    const made = preview('Bag,Au ppm\nB-1,2\n', ['assay'])
    expect(made.problems[0]!.warning).toBe(true)
    expect(made.drafts).toHaveLength(1)
  })

  it('makes no second entry from a row that holds nothing for it', () => {
    expect(preview('Bag,Method,Au ppm\nB-1,chip,2\nB-2,chip,\n', ['sample', 'assay']).drafts.map(({ row, kind }) => `${row} ${kind}`)).toEqual(['2 sample', '2 assay', '3 sample'])
  })
})

describe('what the crew says of a file', () => {
  it('maps columns by heading, by letter and to one of two kinds', () => {
    const text = 'No.,Type,Remark,Weight\nB-1,chip,wet,12\n'
    const made = preview(text, ['sample'], { map: [{ headings: ['A'], field: 'bag' }, { headings: ['type'], field: 'method' }, { headings: ['Weight'], field: 'Mass wet' }], units: { massWet: 'kg' } })
    expect(messages(made)).toEqual([])
    expect(made.drafts[0]!.set).toMatchObject({ bag: 'B-1', method: 'chip', massWet: { value: 12_000 } })
    const two = preview('Bag,Method,Au ppm,When\nB-1,chip,2,2026-05-01\n', ['sample', 'assay'], { map: [{ headings: ['When'], field: 'assay.reported' }] })
    expect(two.drafts[1]!.set).toMatchObject({ reported: '2026-05-01' })
  })

  it('is refused where the heading or the field does not exist', () => {
    expect(messages(preview(shots, ['shot'], { map: [{ headings: ['Bearing'], field: 'azimuth' }] }))[0])
      .toBe('"Bearing" will not do for "Bearing"; expected a heading of the file: From, To, Distance (ft), Azimuth, Inclination.')
    expect(messages(preview(shots, ['shot'], { map: [{ headings: ['Azimuth'], field: 'bearing' }] }))[0]).toContain('"bearing" will not do for "Azimuth"; expected a field of shot: from, to')
  })

  it('is refused where it names a field twice, or fills none', () => {
    const map = [{ headings: ['Azimuth'], field: 'azimuth' }, { headings: ['Inclination'], field: 'azimuth' }]
    expect(messages(preview(shots, ['shot'], { map }))).toEqual(['"azimuth" will not do for "Inclination"; expected a field that is mapped once; columns for one field go together.'])
    expect(messages(preview(shots, ['shot'], { fill: { compas: 'Old Faithful' } }))).toEqual(['"Old Faithful" will not do for "compas"; expected a field of shot to fill.'])
  })

  it('maps a part of a place', () => {
    const made = preview('bag,method,at,feet in\nB-1,chip,A6,10\n', ['sample'], {
      map: [{ headings: ['at'], field: 'place' }, { headings: ['feet in'], field: 'place.along' }], units: { 'feet in': 'ft' },
    })
    expect(made.drafts[0]!.set['place']).toMatchObject({ by: 'station', station: 'A6', along: { value: 3.048 } })
  })

  it('adds up ounces, pennyweights and grains', () => {
    const made = preview('mine,long tons,oz,dwt,gr\nOld,10,2,3,12\nNew,10,,5,\n', ['crushing'], { map: [{ headings: ['oz', 'dwt', 'gr'], field: 'gold' }] })
    expect(messages(made)).toEqual([])
    // 2 x 480 + 3 x 24 + 12 grains of 64.79891 mg.
    expect(value(made.drafts[0], 'gold')).toBe(1044 * 0.06479891)
    expect(value(made.drafts[1], 'gold')).toBe(5 * 1.55517384)
  })

  it('puts columns of words one after another', () => {
    const made = preview('bag,method,a,b\nB-1,chip,old stope,by the ladder\n', ['sample'], { map: [{ headings: ['a', 'b'], field: 'place' }] })
    expect(made.drafts[0]!.set['place']).toEqual({ by: 'words', words: 'old stope, by the ladder' })
  })

  it('fills a field in rows that do not say', () => {
    const made = preview('bag,method\nB-1,\nB-2,grab\n', ['sample'], { fill: { method: 'channel' } })
    expect(made.drafts.map(draft => draft.set['method'])).toEqual(['channel', 'grab'])
  })

  it('gives words of the file a meaning where a field takes a choice, and says how often', () => {
    const made = preview('bag,method\nB-1,"cut, channel"\nB-2,CHIP\nB-3,picked\nB-4,channel or picked\n', ['sample'],
      { read: [{ text: 'channel', choice: 'channel' }, { text: 'picked', choice: 'grab' }] })
    expect(made.drafts.map(draft => draft.set['method'])).toEqual(['channel', 'chip', 'grab'])
    expect(made.readAs).toEqual([{ field: 'method', text: 'channel', choice: 'channel', rows: 1 }, { field: 'method', text: 'picked', choice: 'grab', rows: 1 }])
    expect(made.problems).toMatchObject([{ row: 5, field: 'method', value: 'channel or picked' }])
  })

  it('keeps columns that feed nothing in the note', () => {
    const made = preview('bag,method,Colour,Note,Lamp\nB-1,chip,rusty,wet,\n', ['sample'], { restToNote: true })
    expect(made.drafts[0]!.set['note']).toBe('wet\nColour: rusty')
    expect(made.columns.map(({ heading, toNote }) => [heading, toNote])).toEqual([['bag', false], ['method', false], ['Colour', true], ['Note', false], ['Lamp', true]])
  })

  it('says which words mean that nothing was written', () => {
    const text = 'bag,method,width (in)\nB-1,chip,n/k\n'
    expect(messages(preview(text, ['sample']))[0]).toMatch(/^Row 2, Width sampled: "n\/k" will not do/)
    expect(preview(text, ['sample'], { blank: ['N/K'] }).drafts[0]!.set).toEqual({ bag: 'B-1', method: 'chip' })
  })

  it('says in which order days and months stand', () => {
    const text = 'bag,method,taken\nB-1,chip,5/3/2026\n'
    expect(messages(preview(text, ['sample']))[0]).toMatch(/^Row 2, Taken: "5\/3\/2026" will not do, because it can be/)
    expect(preview(text, ['sample'], { dates: 'day first' }).drafts[0]!.set['taken']).toBe('2026-03-05')
    expect(preview(text, ['sample'], { dates: 'month first' }).drafts[0]!.set['taken']).toBe('2026-05-03')
  })

  it('says that tenths stand behind a comma', () => {
    const text = 'bag;width (m);method\nB-1;3,5;chip\n'
    expect(messages(preview(text, ['sample']))[0]).toContain('did you mean 3.5 or 35?')
    expect(value(preview(text, ['sample'], { input: { decimal: ',' } }).drafts[0], 'width')).toBe(3.5)
  })
})

describe('places', () => {
  it('are put together from the columns of their parts', () => {
    const made = preview('bag,method,station,along (ft),toward,side,height (ft)\nB-1,chip,A6,10,A7,left rib,4\nB-2,chip,A6,,,face,\n', ['sample'])
    expect(made.drafts[0]!.set['place']).toMatchObject({ by: 'station', station: 'A6', toward: 'A7', along: { value: 3.048 }, side: 'left rib', height: { value: 1.2192 } })
    expect(made.drafts[1]!.set['place']).toEqual({ by: 'station', station: 'A6', side: 'face' })
  })

  it('are grid or GPS numbers for a tie', () => {
    const grid = preview('Station,Easting (m),Northing (m),Elevation (m)\nP1,512.25,204.5,98\n', ['tie'])
    expect(messages(grid).filter(text => !text.includes('no shot reaches'))).toEqual([])
    expect(grid.drafts[0]!.set).toMatchObject({ station: 'P1', place: { by: 'grid', east: 512.25, north: 204.5, up: 98 } })
    const gps = preview('Station,Lat,Lon,Elev\nP1,41.25,-117.375,1650\n', ['tie'])
    expect(gps.drafts[0]!.set['place']).toMatchObject({ by: 'gps', latitude: 41.25, longitude: -117.375, elevation: 1650 })
  })

  it('in feet keep their unit', () => {
    expect(preview('Station,East (ft),North (ft)\nP1,100,200\n', ['tie']).drafts[0]!.set['place']).toMatchObject({ by: 'grid', east: 30.48, north: 60.96 })
  })
})

describe('the same again', () => {
  const assays = 'Bag,Au ppm\nB-1,2\nB-1,2\nB-2,4\n'

  it('adds nothing from the same file', () => {
    const first = preview(assays, ['assay'])
    const again = preview(assays, ['assay'], {}, bookOf(first.drafts))
    expect(first.drafts).toHaveLength(3)
    expect(again.drafts).toEqual([])
    expect(again.already.map(({ row, why, struck }) => [row, why, struck])).toEqual([[2, 'this file', false], [3, 'this file', false], [4, 'this file', false]])
  })

  it('makes the same entries on another device', () => {
    expect(preview(assays, ['assay']).drafts.map(draft => draft.entry)).toEqual(preview(assays, ['assay']).drafts.map(draft => draft.entry))
    expect(new Set(preview(assays, ['assay']).drafts.map(draft => draft.entry)).size).toBe(3)
  })

  it('adds only what is new from a file that has grown', () => {
    const before = bookOf(preview(assays, ['assay']).drafts)
    const made = preview(`Bag,Au ppm\nB-3,1\nB-1,2\nB-1,2.0\nB-1,2\nB-2,4\n`, ['assay'], {}, before)
    expect(made.already.map(({ row, why }) => [row, why])).toEqual([[3, 'same content'], [4, 'same content'], [6, 'same content']])
    // The book has two assays of B-1 at 2 ppm; a third one is new.
    expect(made.drafts.map(draft => draft.row)).toEqual([2, 5])
  })

  it('does not bring back what the crew has struck', () => {
    const first = preview(assays, ['assay'])
    const again = preview(assays, ['assay'], {}, bookOf(first.drafts, [first.drafts[2]!.entry]))
    expect(again.drafts).toEqual([])
    expect(again.already[2]).toMatchObject({ row: 4, struck: true })
  })
})
