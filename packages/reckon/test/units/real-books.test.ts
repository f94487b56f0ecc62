import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { convert, parseQuantity, type Dimension } from '../../src/units/index.ts'

const rows = (file: string) => readFileSync(new URL(`../../../../checks/data/${file}`, import.meta.url), 'utf8').trim().split('\n').slice(1)
  .map(line => line.replace(/"[^"]*"/g, quoted => quoted.replaceAll(',', '')).split(','))
const base = (text: string, dimension: Dimension, defaultUnit?: string) => {
  const parsed = parseQuantity(text, dimension, defaultUnit === undefined ? {} : { defaultUnit })
  if (!parsed.ok) throw new Error(`${text}: ${parsed.problem.why}`)
  return parsed.quantity
}

describe('crushings as written, Downey 1928, Quartz Reefs of the West Coast Mining District (V)', () => {
  const crushings = rows('downey1928_reef_crushings.csv').map(([mine = '', , tons = '', oz = '', dwt = '', gr = '', , printed = '', , pennyweights = '', grams = '']) =>
    ({ mine, tons: `${tons} long tons`, gold: `${oz} oz ${dwt} dwt ${gr} gr`, printed, pennyweights: Number(pennyweights), grams: Number(grams) }))

  it('has all 16 mines', () => expect(crushings).toHaveLength(16))

  it.each(crushings)('$mine: $gold from $tons', ({ tons, gold, printed, pennyweights, grams }) => {
    const [won, crushed] = [base(gold, 'mass').value ?? NaN, base(tons, 'mass').value ?? NaN]
    const yielded = convert(won / crushed * 1e6, 'g/t', 'dwt/long ton')
    expect(yielded).toBeCloseTo(pennyweights, 3)
    expect(won / crushed * 1e6).toBeCloseTo(grams, 3)
    // The book cuts off its last place: within one unit of it.
    const simple = /^(?:about )?(\d+\.\d) dwt\/ton$/.exec(printed)?.[1]
    if (simple !== undefined) expect(Math.abs(yielded - Number(simple))).toBeLessThan(0.1)
  })

  it('reads a printed yield: 5 oz 5 dwt per long ton is within a pennyweight of what Break of Day won', () => {
    const breakOfDay = crushings.find(({ mine }) => mine === 'Break of Day')
    const printed = convert(base('5 oz 5 dwt per long ton', 'grade').value ?? NaN, 'g/t', 'dwt/long ton')
    expect(Math.abs(printed - (breakOfDay?.pennyweights ?? NaN))).toBeLessThan(1)
  })
})

describe('channel samples as written, Geological Survey of Canada, Hazelton, 1937 (V)', () => {
  const samples = rows('gsc_narrow_vein_channel_samples.csv')

  it('reads every width in inches and every gold assay in ounces to the short ton, trace as a trace', () => {
    expect(samples).toHaveLength(22)
    const golds = samples.map(cells => cells[8] ?? '').filter(text => text !== '').map(text => base(text, 'grade', 'oz/short ton'))
    expect(golds.filter(({ mark }) => mark === 'trace').every(({ value }) => value === null)).toBe(true)
    expect(golds.some(({ mark }) => mark === 'trace')).toBe(true)
  })

  // C in checks/grade-and-pay.md section 5.12: 15 underground channels, 201 inches, sum of width x gold 8.83, weighted 0.043930, plain 0.031000 (trace = 0)
  // They are those whose type begins with `underground`.
  it('the 15 underground channels weigh out to 0.043930 oz/ton against a plain 0.0310', () => {
    const channels = samples.filter(cells => /^"?underground/.test(cells[10] ?? '')).map(cells =>
      ({ width: base(cells[7] ?? '', 'length', 'in').value ?? NaN, gold: base(cells[8] ?? '', 'grade', 'oz/short ton').value ?? 0 }))
    expect(channels).toHaveLength(15)
    const width = channels.reduce((sum, channel) => sum + channel.width, 0)
    expect(convert(width, 'm', 'in')).toBeCloseTo(201, 10)
    const weighted = channels.reduce((sum, channel) => sum + channel.width * channel.gold, 0) / width
    expect(convert(weighted, 'g/t', 'oz/short ton')).toBeCloseTo(0.04393, 6)
    expect(convert(channels.reduce((sum, { gold }) => sum + gold, 0) / 15, 'g/t', 'oz/short ton')).toBeCloseTo(0.031, 10)
  })
})
