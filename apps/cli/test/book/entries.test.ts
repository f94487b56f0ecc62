import { kinds } from '@lodebook/book'
import { describe, expect, it } from 'vitest'
import { folder, prompt } from '../run.ts'

const cwd = folder()
const run = prompt(cwd)
const json = async (...words: string[]) => JSON.parse((await run([...words, '--json'])).out) as Record<string, unknown>

describe('a book at the prompt', () => {
  it('is begun once', async () => {
    expect(await run(['new', 'a.book', '--name', 'Old Creek', '--units', 'feet and oz/ton', '--currency', 'USD'])).toEqual({ code: 0, out: 'a.book is begun.\n', err: '' })
    expect(await run(['new', 'a.book'])).toEqual({ code: 2, out: '', err: 'book: "a.book" will not do; expected a file that is not there yet\n' })
    expect((await run(['show', 'a.book'])).out).toMatch(/^Old Creek\n\n {2}1 {2}Mine {2}mine\n\n1 posting by rhys; last on /)
  })

  it('takes an entry as it is written, in the crew\'s units', async () => {
    const made = await run(['add', 'a.book', 'shot', 'from=A6', 'to=A7', 'distance=14 ft 3 in', 'azimuth=N 23 E', 'inclination=-2', 'left=3.5', '--by', 'Kit'])
    expect(made.code).toBe(0)
    expect(made.out).toMatch(/^Survey shot A6 to A7 is written: entry cli-\w+\.\d+\.\n$/)
    expect(await json('show', 'a.book', 'A6 to A7')).toMatchObject({
      createdBy: 'Kit', fields: { from: 'A6', to: 'A7', distance: { text: '14 ft 3 in', value: 4.3434 }, azimuth: { value: 23 }, left: { text: '3.5', from: 'ft', value: 1.0668 } },
    })
  })

  it('keeps what an entry said before, with the reason', async () => {
    await run(['set', 'a.book', 'A6 to A7', 'Azimuth=N 24 E', 'left=', '--why', 'misread the needle', '--by', 'Kit'])
    const page = (await run(['show', 'a.book', 'A6 to A7'])).out
    expect(page).toContain('Azimuth         N 24 E = 24.0°\n')
    const onOneLine = page.replace(/\s+/g, ' ')
    expect(onOneLine).toContain('Kit: From A6; To A7; Slope distance 14 ft 3 in; Azimuth N 23 E; Inclination -2; To left rib 3.5 ft')
    expect(onOneLine).toContain('Kit: Azimuth N 24 E, was N 23 E; To left rib taken away, was 3.5 ft (misread the needle)')
    expect(page.split('\n').filter(line => line.length > 80)).toEqual([])
  })

  it('strikes an entry through and brings it back', async () => {
    expect((await run(['strike', 'a.book', 'A6 to A7', '--why', 'wrong book'])).out).toMatch(/^Survey shot A6 to A7 is struck through/)
    expect((await run(['show', 'a.book', 'shot'])).out).toBe('No survey shots are written yet.\n')
    expect((await run(['show', 'a.book', 'shot', '--struck'])).out).toContain('A6')
    expect((await run(['show', 'a.book', 'A6 to A7'])).out).toContain('Struck: wrong book')
    expect((await run(['strike', 'a.book', 'A6 to A7'])).code).toBe(2)
    expect((await run(['restore', 'a.book', 'A6 to A7'])).code).toBe(0)
    expect((await run(['show', 'a.book', 'Survey shots'])).out).toContain('A6')
  })

  it('finds an entry by its name with its kind, and asks when a name is not enough', async () => {
    await run(['add', 'a.book', 'sample', 'bag=B-1', 'method=chip'])
    const assay = await run(['add', 'a.book', 'assay', 'bag=b-1', 'gold=0.35'])
    expect(assay.out).toMatch(/^Assay b-1 is written/)
    const both = await run(['show', 'a.book', 'B-1'])
    expect(both.code).toBe(2)
    expect(both.err).toMatch(/expected one of 2 entries: cli-\w+\.\d+ \(Sample B-1\), cli-\w+\.\d+ \(Assay b-1\)/)
    expect(await json('show', 'a.book', 'assay:B-1')).toMatchObject({ kind: 'assay', fields: { gold: { value: 12, from: 'oz/ton' } } })
    expect((await run(['show', 'a.book', 'B-9'])).err).toContain('expected an entry of the book')
  })

  it('says doubts and writes all the same', async () => {
    const made = await run(['add', 'a.book', 'assay', 'bag=B-99', 'gold=tr'])
    expect(made.code).toBe(0)
    expect(made.out).toContain('Doubt: Bag: no sample or split with bag B-99 is written yet.')
  })

  it('says everything as JSON too', async () => {
    expect(await json('show', 'a.book')).toMatchObject({ mine: 'Old Creek', entries: { mine: 1, shot: 1, sample: 1, assay: 2 }, struck: 0, people: ['Kit', 'rhys'] })
    expect(await json('add', 'a.book', 'sample', 'bag=B-2', 'method=chip')).toMatchObject({ title: 'Sample B-2', doubts: [] })
  })
})

describe('bad input at the prompt', () => {
  const book = async () => (await run(['export', 'a.book'])).out

  it.each([
    [['shot', 'from=A7', 'to=A8', 'distance=0', 'azimuth=20'], 'distance', '"0" will not do'],
    [['shot', 'from=A7', 'to=A8', 'distance=10', 'azimuth=370'], 'azimuth', '"370" will not do'],
    [['shot', 'from=A7', 'to=A8', 'distance=10', 'azimuth=20', 'inclination=95'], 'inclination', '"95" will not do'],
    [['shot', 'from=A7', 'to=A7', 'distance=10', 'azimuth=20'], 'to', 'both are the same here'],
    [['shot', 'from=A7', 'to=A8', 'distance=NaN', 'azimuth=20'], 'distance', '"NaN" will not do'],
    [['shot', 'from=A7', 'to=A8', 'azimuth=20'], 'distance', 'nothing is written'],
    [['shot', 'from=A7', 'to=A8', 'length=10', 'azimuth=20'], 'field', '"length" will not do'],
    [['sample', 'bag=b-1', 'method=chip'], 'bag', 'b-1 is used by another entry already'],
    [['sample', 'bag=B-3', 'method=chip', 'mass=-2 kg'], 'mass', '"-2 kg" will not do'],
    [['sample', 'bag=B-3', 'method=chip', 'taken=2031-05-01'], 'taken', 'after 2026-11-25'],
    [['sampel', 'bag=B-3'], 'kind', '"sampel" will not do'],
  ])('%j is refused by its field and value, and the book is as it was', async (words, field, said) => {
    const before = await book()
    const { code, out, err } = await run(['add', 'a.book', ...words])
    expect([code, out]).toEqual([2, ''])
    expect(err.trimEnd().split('\n')).toHaveLength(1)
    expect(err).toContain(said)
    expect(err.length).toBeLessThan(600)
    const as = JSON.parse((await run(['add', 'a.book', ...words, '--json'])).err) as Record<string, unknown>
    expect(as['field']).toBe(field)
    expect(Object.keys(as)).toEqual(expect.arrayContaining(['error', 'field', 'value', 'expected']))
    expect(await book()).toBe(before)
  })

  it('names the field as it is typed, and answers in the unit that was written', async () => {
    const { err } = await run(['add', 'a.book', 'shot', 'from=A8', 'to=A9', 'distance=0', 'azimuth=20'])
    expect(err).toBe('distance (Slope distance): "0" will not do; expected a length above 0 ft.\n')
  })

  it('refuses a value of ten megabytes without saying it back', async () => {
    const before = await book()
    const { code, out, err } = await run(['add', 'a.book', 'sample', 'bag=B-3', 'method=chip', `note=${'x'.repeat(10_485_760)}`])
    expect([code, out]).toEqual([2, ''])
    expect(err).toMatch(/^Note: "x+\.\.\. will not do; expected at most 50000 characters\.\n$/)
    expect(await book()).toBe(before)
  })

  it('names a command, an option and a book that are not there', async () => {
    expect(await run(['shwo'])).toMatchObject({ code: 2, out: '' })
    expect(await run(['show', 'a.book', '--jsn'])).toMatchObject({ code: 2, out: '' })
    expect(await run(['show', 'nowhere.book'])).toEqual({ code: 3, out: '', err: 'book: "nowhere.book" will not do; expected a book that is there; `lodebook new` begins one\n' })
    expect(await run(['show', '.'])).toMatchObject({ code: 2, out: '' })
  })

  it('does not write without a name', async () => {
    expect((await run(['add', 'a.book', 'sample', 'bag=B-4', 'method=chip', '--by', ' '])).err).toBe('by is missing; expected the name of the person who writes: --by NAME\n')
  })
})

describe('help', () => {
  it.each([[['add', 'shot', '--help']], [['add', 'a.book', 'shot', '-h']]])('%j says what can be written in one', async (words) => {
    const { code, out } = await run(words)
    expect(code).toBe(0)
    expect(out.replace(/\s+/g, ' ')).toContain('distance Slope distance (needed): a length such as')
    expect(out.replace(/\s+/g, ' ')).toContain('north Azimuths are from: one of magnetic, true, grid; north that the compass')
    for (const name of Object.keys(kinds['shot']!.fields)) expect(out).toMatch(new RegExp(`^${name} `, 'm'))
    expect(out.split('\n').filter(line => line.length > 80)).toEqual([])
  })
  it('lists the kinds there are', async () => { expect((await run(['add', '--help'])).out.replace(/\s+/g, ' ')).toContain('Kinds mine, instrument, shot,') })
  it('refuses what is missing', async () => {
    expect(await run(['add'])).toMatchObject({ code: 2, out: '' })
    expect(await run(['add', 'a.book'])).toMatchObject({ code: 2, out: '' })
  })

  it.each([[[]], [['new']], [['import']], [['export']], [['check']], [['show']], [['add']], [['set']], [['strike']], [['restore']], [['demo']], [['reckon']]])(
    '%j says its exit codes and fits 80 columns', async (words) => {
      const { code, out } = await run([...words, '--help'])
      expect(code).toBe(0)
      expect(out).toContain('3  could not read or write a file or a port')
      expect(out.split('\n').filter(line => line.length > 80)).toEqual([])
    })
})
