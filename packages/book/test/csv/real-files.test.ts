import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { Quantity } from '@lodebook/reckon/units'
import { convert } from '@lodebook/reckon/units'
import type { CsvOptions } from '../../src/csv/index.ts'
import { previewCsv } from '../../src/csv/index.ts'
import { emptyBook, now } from './helpers.ts'

const read = (name: string, options: CsvOptions) =>
  previewCsv(readFileSync(new URL(`../../../../checks/data/${name}`, import.meta.url)), options, { book: emptyBook, now })
const sum = (values: readonly number[]) => values.reduce((total, one) => total + one, 0)
const quantity = (set: object, field: string) => (set as Readonly<Record<string, Quantity | undefined>>)[field]

describe('channel samples across narrow quartz veins', () => {
  // Geological Survey of Canada, 1937 field season, Silver Standard mine and neighbours, Hazelton, British Columbia: widths in inches, gold
  // and silver in troy ounces to the short ton, page addresses in the file. V as far as checks/data/README.md says; sums recomputed (R).
  const made = read('gsc_narrow_vein_channel_samples.csv', {
    kinds: ['sample', 'assay'],
    map: [
      { headings: ['vein_or_working', 'position_text'], field: 'place' },
      { headings: ['vein_or_working'], field: 'vein' },
      { headings: ['type_and_note'], field: 'method' },
      { headings: ['type_and_note'], field: 'sample.note' },
    ],
    read: [{ text: 'channel', choice: 'channel' }, { text: 'underground', choice: 'channel' }, { text: 'representative', choice: 'grab' }, { text: 'selective', choice: 'grab' }],
  })
  const samples = made.drafts.filter(draft => draft.kind === 'sample')
  const assays = new Map(made.drafts.filter(draft => draft.kind === 'assay').map(draft => [draft.set['bag'], draft.set]))
  // The 15 that check 5.12 counts are those whose type begins with `underground`.
  const underground = samples.filter(({ set }) => /^underground/.test(set['note'] as string)).map(({ set }) => ({
    width: quantity(set, 'width')!.value! / 0.0254,
    gold: quantity(assays.get(set['bag'])!, 'gold')!,
  }))
  const ounces = underground.map(({ width, gold }) => ({ width, gold: gold.mark === 'trace' ? 0 : convert(gold.value!, 'g/t', 'ozt/short ton') }))

  it('come in whole: 22 samples and 22 assays, nothing refused', () => {
    expect(made.problems).toEqual([])
    expect([samples.length, assays.size, underground.length]).toEqual([22, 22, 15])
  })

  it('weigh 0.043930 oz/ton by width against a plain mean of 0.0310 (check 5.12)', () => {
    // Inches come back from metres within 1e-12 of themselves, ounces from grams to the tonne likewise.
    expect(sum(ounces.map(one => one.width))).toBeCloseTo(201, 9)
    expect(sum(ounces.map(one => one.width * one.gold))).toBeCloseTo(8.83, 9)
    expect(sum(ounces.map(one => one.width * one.gold)) / sum(ounces.map(one => one.width))).toBeCloseTo(0.043930, 6)
    expect(sum(ounces.map(one => one.gold)) / 15).toBeCloseTo(0.031000, 9)
  })

  it('carry silver as printed: 20 values, plain mean 12.6957, by width 13.7561 (check 5.12)', () => {
    const silver = samples.flatMap(({ set }) => {
      const value = quantity(assays.get(set['bag'])!, 'silver')?.value
      return value === undefined || value === null ? [] : [{ width: quantity(set, 'width')!.value!, silver: convert(value, 'g/t', 'ozt/short ton') }]
    })
    expect(silver).toHaveLength(20)
    expect(sum(silver.map(one => one.silver)) / 20).toBeCloseTo(12.6957, 4)
    expect(sum(silver.map(one => one.silver * one.width)) / sum(silver.map(one => one.width))).toBeCloseTo(13.7561, 4)
  })

  it('keep `trace` as a mark, with no number made up for it', () => {
    const traces = [...assays].filter(([, set]) => quantity(set, 'gold')!.mark === 'trace')
    expect(traces.map(([bag]) => bag)).toEqual(['G12', 'G14', 'G16'])
    expect(quantity(assays.get('G12')!, 'gold')).toEqual({ text: 'trace', value: null, unit: 'g/t', mark: 'trace' })
  })

  it('have their places in words, so that they count as not placed yet', () => {
    expect(samples.filter(({ set }) => (set['place'] as { by: string }).by === 'words')).toHaveLength(22)
    expect(samples[6]!.set['place']).toEqual({ by: 'words', words: 'Silver Standard No. 1 vein, face of north drift' })
  })

  it('lead to four columns that feed nothing, each of them listed', () => {
    expect(made.columns.filter(({ feeds }) => feeds.length === 0).map(({ heading }) => heading)).toEqual(['source_page', 'source_url', 'position_ft', 'position_datum'])
  })

  it('say what was read as a channel and what as a grab sample', () => {
    expect(made.readAs.map(({ text, choice, rows }) => `${text} = ${choice} ${rows}`)).toEqual(['channel = channel 18', 'representative = grab 1', 'selective = grab 1', 'underground = channel 2'])
  })
})

describe('crushings of old reef mines', () => {
  // J. F. Downey, Quartz Reefs of the West Coast Mining District, New Zealand, Government Printer, 1928; page in each row (V). Yields recomputed (R).
  const made = read('downey1928_reef_crushings.csv', { kinds: ['crushing'], map: [{ headings: ['oz', 'dwt', 'gr'], field: 'gold' }] })

  it('come in whole, gold added up from three columns and quartz in long tons', () => {
    expect(made.problems).toEqual([])
    expect(made.drafts).toHaveLength(16)
    expect(quantity(made.drafts[0]!.set, 'gold')).toMatchObject({ text: '2645 ozt 7 dwt 22 grain' })
    // 2645 oz 7 dwt 22 gr is 1,269,790 grains of exactly 64.79891 mg.
    expect(quantity(made.drafts[0]!.set, 'gold')!.value).toBe(82_281.0079289)
    expect(quantity(made.drafts[0]!.set, 'crushed')).toMatchObject({ text: '11379', from: 'long tons' })
  })

  it('yield to the ton what is printed, to one unit in the last place', () => {
    // The book cuts figures off where it should round them (6.487 is printed 6.4), so half a unit would not do (check 1.2).
    const printed: Readonly<Record<string, readonly [dwt: number, unit: number]>> = {
      'Golden Lead': [4.6, 0.1], 'Rainy Creek-Supreme': [4.7, 0.1], 'Gallant and Scotia (1889?-1894)': [6.4, 0.1],
      'Break of Day': [105, 1], Swastika: [5, 1], 'Minerva (Blackball)': [6, 1],
    }
    const yields = new Map(made.drafts.map(({ set }) => [set['mine'] as string,
      quantity(set, 'gold')!.value! / 1.55517384 / (quantity(set, 'crushed')!.value! / 1_016_046.9088)]))
    for (const [mine, [dwt, unit]] of Object.entries(printed)) {
      expect(made.drafts.find(({ set }) => set['mine'] === mine)!.set['yieldPrinted']).toBeDefined()
      expect(Math.abs(yields.get(mine)! - dwt)).toBeLessThan(unit)
    }
    expect(made.drafts.filter(({ set }) => set['yieldPrinted'] !== undefined)).toHaveLength(Object.keys(printed).length)
  })

  it('list the columns that feed nothing', () => {
    expect(made.columns.filter(({ feeds }) => feeds.length === 0).map(({ heading }) => heading)).toEqual(['pdf_page', 'oz_decimal', 'calc_dwt_per_long_ton', 'calc_g_per_tonne'])
  })
})
