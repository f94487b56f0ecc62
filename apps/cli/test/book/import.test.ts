import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { beforeAll, describe, expect, it } from 'vitest'
import { folder, prompt } from '../run.ts'

const cwd = folder()
const run = prompt(cwd)
const book = async () => (await run(['export', 'a.book'])).out
const file = (name: string, text: string | Uint8Array) => { writeFileSync(join(cwd, name), text); return name }
const check = (name: string) => fileURLToPath(new URL(`../../../../checks/data/${name}`, import.meta.url))
const shots = 'From,To,Distance (ft),Azimuth,Inclination,Weather\nA1,A2,10.5,203,-2,dry\nA2,A3,22,210,0,wet\n'

beforeAll(async () => { await run(['new', 'a.book', '--name', 'Old Creek', '--by', 'Kit']) })

describe('a file of columns', () => {
  it('is only looked at until it is accepted', async () => {
    const before = await book()
    const { code, out, err } = await run(['import', 'a.book', file('shots.csv', shots), '--kind', 'shot'])
    expect([code, err]).toEqual([0, ''])
    expect(out).toBe([
      'shots.csv: 2 rows of survey shots', '',
      'Column         Feeds              In  First cell',
      '─────────────  ─────────────────  ──  ──────────',
      'From           from                   A1',
      'To             to                     A2',
      'Distance (ft)  distance           ft  10.5',
      'Azimuth        azimuth                203',
      'Inclination    inclination            -2',
      'Weather        nothing: left out      dry', '',
      'Survey shots',
      'From  To  Slope distance  Azimuth  Inclination',
      '────  ──  ──────────────  ───────  ───────────',
      'A1    A2         10.5 ft      203           -2',
      'A2    A3           22 ft      210            0', '',
      'Nothing is written yet. --accept writes 2 entries.', '',
    ].join('\n'))
    expect(await book()).toBe(before)
  })

  it('is written when it is accepted, and adds nothing a second time', async () => {
    expect((await run(['import', 'a.book', 'shots.csv', '--kind', 'shot', '--accept'])).out).toContain('2 entries written.')
    const after = await book()
    const again = await run(['import', 'a.book', 'shots.csv', '--kind', 'shot', '--accept'])
    expect([again.code, again.out.includes('2 entries in the book already. Nothing to write; the book is as it was.')]).toEqual([0, true])
    expect(await book()).toBe(after)
    expect((await run(['show', 'a.book', 'A1 to A2'])).out).toContain('rhys: From A1; To A2')
  })

  it('adds only what is new when it has grown', async () => {
    file('more.csv', `${shots}A3,A4,8,190,1,wet\n`)
    const made = JSON.parse((await run(['import', 'a.book', 'more.csv', '--kind', 'shot', '--accept', '--json'])).out) as Record<string, unknown>
    expect(made).toMatchObject({ rows: 3, written: 1, already: [{ row: 2, why: 'same content' }, { row: 3, why: 'same content' }] })
  })

  it('asks what its rows are, and says which kinds its headings would do for', async () => {
    const { code, err } = await run(['import', 'a.book', 'shots.csv'])
    expect(code).toBe(2)
    expect(err).toContain('--kind is missing; expected what one row is')
    expect(err).toContain('these headings would do for shot')
  })

  it('takes its options with more than one column, and says what is wrong with them', async () => {
    file('old.csv', 'mine,long tons,oz,dwt,gr\nOld,10,2,3,12\n')
    expect((await run(['import', 'a.book', 'old.csv', '--kind', 'crushing', '--map', 'oz+dwt+gr=gold'])).out).toContain('2 ozt 3 dwt 12 grain')
    for (const [words, said] of [
      [['--map', 'oz'], 'expected a heading and a field'], [['--map', 'ounces=gold'], '"ounces" will not do for "ounces"; expected a heading of the file'],
      [['--unit', 'mine'], 'expected a column or a field and its unit'], [['--dates', 'eu'], 'expected day-first or month-first'], [['--decimal', ';'], 'expected "." or ","'],
    ] as const) {
      const { code, out, err } = await run(['import', 'a.book', 'old.csv', '--kind', 'crushing', ...words])
      expect(code).toBe(2)
      expect(out + err).toContain(said)
    }
  })
})

describe('a file with mistakes in it', () => {
  const bad: readonly (readonly [string, string | Uint8Array, string, string, RegExp])[] = [
    ['a shot of no length', 'From,To,Distance (m),Azimuth\nA1,A2,0,20\n', 'shot', 'distance', /^Row 2, distance \(Slope distance\): "0"/m],
    ['an azimuth of 370', 'From,To,Distance (m),Azimuth\nA1,A2,3,370\n', 'shot', 'azimuth', /^Row 2, Azimuth: "370"/m],
    ['an inclination of 95', 'From,To,Distance (m),Azimuth,Inclination\nA1,A2,3,20,95\n', 'shot', 'inclination', /^Row 2, Inclination: "95"/m],
    ['two entries with one bag', 'Bag,Method\nB-1,chip\nB-1,chip\n', 'sample', 'bag', /^Row 3, Bag: "B-1" will not do, because row 2 has it/m],
    ['a negative mass', 'Bag,Method,Mass dry (kg)\nB-1,chip,-2\n', 'sample', 'mass', /^Row 2, mass \(Mass dry\): "-2"/m],
    ['a date to come', 'Bag,Method,Taken\nB-1,chip,2031-01-02\n', 'sample', 'taken', /^Row 2, Taken: "2031-01-02"/m],
    ['NaN', 'Bag,Au ppm\nB-1,NaN\n', 'assay', 'gold', /^Row 2, Gold: "NaN"/m],
    ['a line of 10 MB', `Bag,Note,Method\nB-1,${'x'.repeat(10_485_760)},chip\n`, 'sample', 'Note', /^Row 2, Note: the cell holds 10485760 characters/m],
    ['another encoding', Uint8Array.from('Bag,Method,Note\nB-1,chip,café\n', letter => letter.charCodeAt(0)), 'sample', 'Note', /^Row 2, Note: "café" holds the byte 0xE9/m],
    ['merged headings', 'Bag,Method,,Au ppm\nB-1,chip,3,2\n', 'sample', 'column C', /^Row 1: column C has no heading/m],
    ['a short row', 'Bag,Method,Note\nB-1,chip\n', 'sample', 'Note', /^Row 2: there are only 2 cells/m],
  ]

  it.each(bad)('%s: one message with field, value and row, and the book is as it was', async (_, text, kind, field, said) => {
    const before = await book()
    file('bad.csv', text)
    for (const words of [[], ['--accept']]) {
      const { code, out } = await run(['import', 'a.book', 'bad.csv', '--kind', kind, ...words])
      expect(code).toBe(2)
      expect(out).toMatch(said)
      expect(out.length).toBeLessThan(3000)
      expect(out.split('\n').filter(line => line.length > 80)).toEqual([])
    }
    const refused = await run(['import', 'a.book', 'bad.csv', '--kind', kind, '--accept', '--json'])
    expect(refused.out).toBe('')
    const { problems, written } = JSON.parse(refused.err) as { problems: { field: string, row: number }[], written: number }
    expect(problems.filter(problem => !('doubt' in problem))).toMatchObject([{ field, row: expect.any(Number) as number, value: expect.anything() as unknown }])
    expect(written).toBe(0)
    expect(await book()).toBe(before)
  })

  it('is written without its bad rows only when that is asked for', async () => {
    file('part.csv', 'Bag,Method,Mass dry (kg)\nP-1,chip,-2\nP-2,chip,2\n')
    expect((await run(['import', 'a.book', 'part.csv', '--kind', 'sample', '--accept'])).out).toContain('1 row refused. Nothing was written; the book is as it was.')
    const made = await run(['import', 'a.book', 'part.csv', '--kind', 'sample', '--accept', '--good-rows'])
    expect([made.code, made.out.includes('1 row refused. 1 entry written.')]).toEqual([0, true])
    expect((await run(['show', 'a.book', 'sample'])).out).toMatch(/P-2/)
  })
})

describe('a laboratory\'s results', () => {
  const lab = 'Client ID,Lab,Certificate No,Wt (g),Ag,Au (g/t)\nQ-1,Assay house,C-7,29.2,2.1,0.35\nQ-2,Assay house,C-7,29.2,NSS,NSS\nQ-3,Assay house,C-7,29.2,1,<0.05\nQ-4,Assay house,C-7,29.2,3,>100\n' +
    'Q-5,Assay house,C-7,29.2,3,tr\nQ-6,Assay house,C-7,,,LNR\n'
  const words = ['import', 'a.book', 'lab.csv', '--kind', 'assay', '--unit', 'Ag=g/t', '--accept']

  it('are read in any order of columns, with limits, traces and what was not run; the file is kept whole under its hash', async () => {
    const { code, out } = await run([...words.slice(0, 2), file('lab.csv', lab), ...words.slice(3)])
    expect(code).toBe(0)
    expect(out).toContain('6 entries written. The file is kept whole as 1 certificate')
    interface Shown { readonly fields: Record<string, { readonly value: number | null, readonly mark?: string, readonly sha256?: string } & string> }
    const shown = JSON.parse((await run(['show', 'a.book', 'assay', '--json'])).out) as readonly Shown[]
    const of = (bag: string) => shown.find(({ fields }) => fields['bag'] === bag)!.fields
    expect([of('Q-1')['gold']!.value, of('Q-3')['gold']!.mark, of('Q-4')['gold']!.mark, of('Q-5')['gold']!.mark]).toEqual([0.35, 'below', 'above', 'trace'])
    expect([of('Q-2')['gold'], of('Q-2')['silver'], of('Q-2')['result'], of('Q-6')['result']]).toEqual([undefined, undefined, 'not enough sample', 'not received'])
    expect(of('Q-1')).toMatchObject({ laboratory: 'Assay house', certificate: 'C-7', charge: { value: 29.2 } })
    const [kept] = JSON.parse((await run(['show', 'a.book', 'certificate', '--json'])).out) as readonly Shown[]
    expect(kept!.fields).toMatchObject({ name: 'C-7', laboratory: 'Assay house', file: { name: 'lab.csv', bytes: lab.length } })
    expect((await book()).includes(`{"blob":"${kept!.fields['file']!.sha256}"`)).toBe(true)
    expect((await run(words)).out).toContain('6 entries in the book already. Nothing to write')
  })
})

describe('a file that is no table', () => {
  it.each([
    ['no column for what is needed', 'Bag,Remark\nB-1,x\n', 'Gold (assay): no column is headed so'],
    ['UTF-16', Uint8Array.from('\u00ff\u00feB\0a\0g\0', c => c.charCodeAt(0)), 'UTF-16 text will not do'],
    ['blank lines only', '\n\n', 'The file is empty'],
  ] as const)('%s: says what is wrong with the file, and blames no row', async (_, text, said) => {
    const { code, out } = await run(['import', 'a.book', file('odd.csv', text), '--kind', 'assay'])
    expect(code).toBe(2)
    expect(out).toContain(said)
    expect(out).toContain('The file can\'t be read as it stands')
    expect(out).not.toContain('row refused')
  })

  it('a folder and an empty file are named alike', async () => {
    for (const [name, is] of [['.', 'this is a folder'], [file('empty.csv', ''), 'this is an empty file']] as const) {
      const { code, out, err } = await run(['import', 'a.book', name, '--kind', 'assay'])
      expect([code, out]).toEqual([2, ''])
      expect(err).toContain(is)
    }
  })
})

describe('an old survey of narrow veins, brought in as a crew would', () => {
  // Geological Survey of Canada, 1937 field season; addresses of the pages in the file (V). Sums recomputed: checks/grade-and-pay.md 5.12 (R).
  const words = ['import', 'gsc.book', check('gsc_narrow_vein_channel_samples.csv'), '--kind', 'sample+assay', '--map', 'vein_or_working+position_text=place',
    '--map', 'vein_or_working=vein', '--map', 'type_and_note=method', '--map', 'type_and_note=sample.note', '--read', 'channel=channel', '--read', 'underground=channel',
    '--read', 'representative=grab', '--read', 'selective=grab', '--rest']
  interface Shown { readonly fields: Record<string, { readonly value: number | null, readonly mark?: string } & string> }
  const entries = async (kind: string) => JSON.parse((await run(['show', 'gsc.book', kind, '--json'])).out) as readonly Shown[]

  it('gives 0.043930 oz/ton by width over the 15 underground channels, 0.0310 as a plain mean', async () => {
    await run(['new', 'gsc.book', '--name', 'Old survey', '--units', 'feet and oz/ton'])
    expect((await run([...words, '--accept'])).out).toContain('44 entries written.')
    const gold = new Map((await entries('assay')).map(({ fields }) => [fields['bag'], fields['gold']!]))
    const intervals = (await entries('sample')).filter(({ fields }) => fields['note']!.startsWith('underground'))
      .map(({ fields }) => ({ width: fields['width']!.value!, grade: gold.get(fields['bag'])!.mark === 'trace' ? 0 : gold.get(fields['bag'])!.value! }))
    expect(intervals).toHaveLength(15)
    const weighted = JSON.parse((await run(['reckon', 'weighted-grade'], JSON.stringify({ intervals }))).out) as { grade: number, width: number }
    const ounces = JSON.parse((await run(['reckon', 'convert'], JSON.stringify({ value: weighted.grade, from: 'g/t', to: 'ozt/short ton' }))).out) as { value: number }
    expect(ounces.value).toBeCloseTo(0.043930, 6)
    expect(weighted.width / 0.0254).toBeCloseTo(201, 9)
    expect(intervals.reduce((sum, one) => sum + one.grade, 0) / 15 / (240 / 7)).toBeCloseTo(0.0310, 9)
  })

  it('keeps traces as a mark and lists places in words', async () => {
    expect((await entries('assay')).filter(({ fields }) => fields['gold']!.mark === 'trace').map(({ fields }) => fields['gold']!.value)).toEqual([null, null, null])
    expect((await run(['show', 'gsc.book', 'sample:G12'])).out).toContain('Place          No. 3 adit vein, 11 ft from portal')
    expect((await run(['show', 'gsc.book', 'sample:G12'])).out).toContain('position_datum: feet from portal')
  })

  it('adds nothing a second time', async () => {
    const before = (await run(['export', 'gsc.book'])).out
    expect((await run([...words, '--accept'])).out).toContain('44 entries in the book already.')
    expect((await run(['export', 'gsc.book'])).out).toBe(before)
  })
})
