import { describe, expect, it } from 'vitest'
import { valueText, writeCsv } from '../../src/csv/index.ts'
import { readField } from '../../src/input/index.ts'
import { kinds } from '../../src/kinds/index.ts'
import { bookOf, preview, value } from './helpers.ts'

const written = (text: string, kind: string) => {
  const { drafts, problems } = preview(text, [kind])
  expect(problems.filter(problem => problem.warning !== true)).toEqual([])
  return { drafts, csv: writeCsv(kinds[kind]!, bookOf(drafts).of(kind)) }
}

describe('writeCsv', () => {
  it('writes a quantity in its base unit and as it was written, and who wrote it when', () => {
    const { csv, drafts } = written('Bag,Au oz/ton\nB-1,0.35\nB-2,tr\nB-3,<0.005 g/t\nB-4,nil\n', 'assay')
    expect(csv.split('\r\n')).toEqual([
      'Bag,Gold (g/t),Gold as written,Entry,Written by,Written at,Struck',
      `B-1,12,0.35 oz/ton,${drafts[0]!.entry},R,2026-11-20T00:00:00.000Z,`,
      `B-2,trace,tr,${drafts[1]!.entry},R,2026-11-20T00:00:00.000Z,`,
      `B-3,<0.005,<0.005 g/t,${drafts[2]!.entry},R,2026-11-20T00:00:00.000Z,`,
      `B-4,nil,nil,${drafts[3]!.entry},R,2026-11-20T00:00:00.000Z,`,
      '',
    ])
  })

  it('comes back in with the same values', () => {
    const text = 'From,To,Distance,Azimuth,Inclination,Surveyors,Taken,Note\nA1,A2,4 ft 6 1/2 in,N 23 E,-4,R; K,2026-05-03,"wet, \n""slick"""\nA2,A3,22 ft,210,,R,,\n'
    const { csv, drafts } = written(text, 'shot')
    const again = preview(csv, ['shot'])
    expect(again.problems).toEqual([])
    expect(again.drafts.map(draft => ['distance', 'azimuth', 'inclination'].map(field => value(draft, field))))
      .toEqual(drafts.map(draft => ['distance', 'azimuth', 'inclination'].map(field => value(draft, field))))
    expect(again.drafts.map(({ set }) => [set['surveyors'], set['taken'], set['note']])).toEqual(drafts.map(({ set }) => [set['surveyors'], set['taken'], set['note']]))
  })

  it('knows its own file for what the book holds already', () => {
    const { csv, drafts } = written('Bag,Method,Place\nB-1,chip,"A6 + 2 m toward A7, left rib"\nB-2,grab,by the ladder\n', 'sample')
    expect(preview(csv, ['sample'], {}, bookOf(drafts)).already.map(({ row, why }) => [row, why])).toEqual([[2, 'same content'], [3, 'same content']])
  })

  it('writes headings alone for no entries', () => {
    expect(writeCsv(kinds['shot']!, [])).toBe('Entry,Written by,Written at,Struck\r\n')
  })
})

describe('valueText', () => {
  it.each([
    ['heading', 'stations', 'A1 > A2 > A3'], ['heading', 'stations', 'old 3;'], ['sample', 'materials', 'quartz; iron-stained'], ['ground', 'found', 'drummy, dripping'],
    ['ground', 'scaled', 'yes'], ['cost', 'amount', '1,250.50 USD'], ['pan', 'colours', '12 fine at 0.05 mg; 2 coarse at 1.5 mg'], ['pan', 'colours', 'none'],
    ['sample', 'place', 'A6 + 2.3 m toward A7, left rib, 1.2 m up'], ['worked-out', 'corners', 'A6 + 2 m; A7; words: top of the stope'], ['relic', 'from', '1897'],
    ['air', 'taken', '2026-05-03T07:30-07:00'], ['price', 'spread', '12.5'], ['shot', 'azimuth', 'S68-05-35W'], ['sample', 'width', '7 1/2 in'],
  ])('[%s.%s] %j reads back as the same value', (kind, name, text) => {
    const field = kinds[kind]!.fields[name]!
    const first = readField(field, text, {}, name)
    if (!first.ok) throw new Error(first.expected)
    expect(readField(field, valueText(field, first.value), {}, name)).toMatchObject({ ok: true, value: typeof first.value === 'object' && 'currency' in first.value ? { amount: 1250.5 } : first.value })
  })
})
