import { describe, expect, it } from 'vitest'
import { headingReadings } from '../../src/csv/heading-text.ts'
import { matchHeadings } from '../../src/csv/match-headings.ts'
import type { Heading } from '../../src/csv/table.ts'
import { columnLetter } from '../../src/csv/table.ts'
import { kinds } from '../../src/kinds/index.ts'
import { messages, preview, value } from './helpers.ts'

const headings = (...texts: string[]): Heading[] => texts.map((text, column) => ({ column, letter: columnLetter(column), text }))
const untaken = { fields: new Set<string>(), columns: new Set<number>() }
const match = (ids: readonly string[], ...texts: string[]) => matchHeadings(ids.map(id => kinds[id]!), headings(...texts), untaken)
const found = (kind: string, heading: string) => match([kind], heading).matches.map(({ field, unit }) => [field, unit])

describe('headings', () => {
  it.each([
    ['sample', 'Width (in)', 'width', 'in'],
    ['sample', 'width_in', 'width', 'in'],
    ['sample', 'Width [cm]', 'width', 'cm'],
    ['sample', 'Width, ft', 'width', 'ft'],
    ['sample', 'TRUE WIDTH m', 'width', 'm'],
    ['sample', 'Width in inches', 'width', 'inches'],
    ['sample', 'Width', 'width', undefined],
    ['assay', 'Au oz/short ton', 'gold', 'oz/short ton'],
    ['assay', 'au_oz_per_short_ton', 'gold', 'oz per short ton'],
    ['assay', 'AuPpm', 'gold', 'Ppm'],
    ['assay', 'Gold (g/t)', 'gold', 'g/t'],
    ['assay', 'Ag [ppb]', 'silver', 'ppb'],
    ['shot', 'Backsight azimuth', 'backAzimuth', undefined],
    ['shot', 'backAzimuth', 'backAzimuth', undefined],
    ['shot', 'Slope distance (ft.)', 'distance', 'ft.'],
    ['shot', 'az.', 'azimuth', undefined],
    ['crushing', 'long_tons', 'crushed', 'long tons'],
    ['crushing', 'Quartz crushed (t)', 'crushed', 't'],
  ])('[%s] %j feeds %s in %s', (kind, heading, field, unit) => {
    expect(found(kind, heading)).toEqual([[field, unit]])
  })

  it.each([['sample', 'Width of the drift'], ['sample', 'Width (approx)'], ['sample', 'Au g/t'], ['shot', 'Colour'], ['assay', 'Aurora'], ['sample', '']])(
    '[%s] %j feeds nothing', (kind, heading) => { expect(found(kind, heading)).toEqual([]) })

  it('takes the name of the field itself before another heading for it', () => {
    expect(match(['assay'], 'Au', 'Gold').matches.map(({ heading }) => heading.text)).toEqual(['Gold'])
  })

  it('gives a column to the field that an entry cannot do without', () => {
    const fed = (...texts: string[]) => match(['shot'], ...texts).matches.map(({ field, heading }) => `${field}: ${heading.text}`).sort()
    expect(fed('From', 'To', 'Tape', 'Compass')).toEqual(['azimuth: Compass', 'distance: Tape', 'from: From', 'to: To'])
    expect(fed('From', 'To', 'Tape', 'Compass', 'Length', 'Azimuth')).toEqual(['azimuth: Azimuth', 'compass: Compass', 'distance: Length', 'from: From', 'tape: Tape', 'to: To'])
  })

  it('asks when two columns may hold the same field', () => {
    const [problem] = match(['sample'], 'Width (in)', 'Width (m)').problems
    expect(problem).toMatchObject({ kind: 'sample', field: 'width', row: 1 })
    expect(problem!.message).toBe('Width sampled: both "Width (in)" and "Width (m)" may hold it; expected one column for Width sampled; say which of the two.')
  })

  it('gives the bag to each of two kinds, and other columns to the first that knows them', () => {
    expect(match(['sample', 'assay'], 'Bag', 'Date', 'Au ppm').matches.map(({ kind, field }) => `${kind}.${field}`)).toEqual(['sample.bag', 'sample.taken', 'assay.bag', 'assay.gold'])
  })

  it('asks once about a needed field with two columns', () => {
    expect(messages(preview('From,To,Length (m),Dist (m),Distance (ft),Slope distance (ft),Azimuth\nA1,A2,1,1,3,3,203\n', ['shot']))).toEqual([
      'Slope distance: both "Distance (ft)" and "Slope distance (ft)" may hold it; expected one column for Slope distance; say which of the two.'])
  })

  it('reads a heading from the longest name down', () => {
    expect(headingReadings('au_oz_per_ton').map(({ name, rest }) => `${name}|${rest}`)).toEqual(['au oz per ton|', 'au oz per|ton', 'au oz|per ton', 'au|oz per ton'])
  })
})

describe('units', () => {
  const shot = 'From,To,Distance,Azimuth,Inclination\n'

  it('stand in a row of their own under the headings', () => {
    const made = preview(`${shot},,ft,deg,(deg)\nA1,A2,10,203,-4\n`, ['shot'])
    expect(messages(made)).toEqual([])
    expect(made.rows).toBe(1)
    expect(made.drafts[0]).toMatchObject({ row: 3, kind: 'shot' })
    expect(value(made.drafts[0], 'distance')).toBe(3.048)
  })

  it('stand in the cells, before any other', () => {
    const made = preview(`${shot}A1,A2,4 ft 6 in,N 23 E,-4\nA2,A3,2 m,203,\n`, ['shot'], { units: { distance: 'cm' } })
    expect(made.drafts.map(draft => value(draft, 'distance'))).toEqual([1.3716, 2])
  })

  it('are given for a column by heading or by field', () => {
    for (const key of ['Tape', 'distance', 'DISTANCE']) {
      const made = preview('From,To,Tape,Azimuth\nA1,A2,10,203\n', ['shot'], { units: { [key]: 'ft' } })
      expect(value(made.drafts[0], 'distance')).toBe(3.048)
    }
  })

  it('are the crew\'s usual ones when nothing else says', () => {
    const made = preview(`${shot}A1,A2,10,203,0\n`, ['shot'], { input: { units: { length: 'ft' } } })
    expect(value(made.drafts[0], 'distance')).toBe(3.048)
  })

  it('are asked for when nothing says them', () => {
    const made = preview(`${shot}A1,A2,10,203,0\n`, ['shot'])
    expect(made.drafts).toEqual([])
    expect(made.problems[0]).toMatchObject({ field: 'distance', value: '10', row: 2 })
    expect(messages(made)[0]).toContain('in what unit?')
  })

  it('that are none of the field\'s are refused', () => {
    expect(messages(preview(`${shot}A1,A2,10,203,0\n`, ['shot'], { units: { distance: 'oz' } }))[0]).toBe('"oz" will not do for "Distance"; expected a unit of length.')
    expect(messages(preview(`${shot}A1,A2,10,203,0\n`, ['shot'], { units: { widht: 'm' } }))[0]).toContain('expected a heading or a field to give the unit to: From, To, Distance')
  })

  it('that people read in two ways are asked about', () => {
    const made = preview('Mine,Quartz crushed (long tons),Gold (oz)\nOld,10,3\n', ['crushing'])
    expect(made.problems[0]!.message).toContain('did you mean ozt')
    expect(made.problems[0]).toMatchObject({ row: 2, field: 'gold' })
  })
})
