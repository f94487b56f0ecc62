import { copyFileSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { beforeAll, describe, expect, it } from 'vitest'
import { folder, prompt } from '../run.ts'

const cwd = folder()
const run = prompt(cwd)
const book = async (name = 'a.book') => (await run(['export', name])).out
const at = (name: string) => join(cwd, name)

beforeAll(async () => {
  await run(['new', 'a.book', '--name', 'Old Creek', '--by', 'Kit'])
  for (const to of ['A2', 'A3', 'A4']) await run(['add', 'a.book', 'shot', 'from=A1', `to=${to}`, 'distance=10 m', 'azimuth=20'])
  await run(['export', 'a.book', '--out', 'a.jsonl'])
})

describe('a whole book as a file', () => {
  it('goes out and comes in, and goes out again as the same bytes', async () => {
    await run(['new', 'b.book'])
    expect(await run(['import', 'b.book', 'a.jsonl'])).toEqual({ code: 0, out: 'a.jsonl: 4 postings, 4 of them new to the book.\n', err: '' })
    expect(await book('b.book')).toBe(readFileSync(at('a.jsonl'), 'utf8'))
    expect((await run(['import', 'b.book', 'a.jsonl', '--json'])).out).toBe(`${JSON.stringify({ postings: 4, added: 0, blobs: 0, faults: [] }, null, 2)}\n`)
    expect(await book('b.book')).toBe(readFileSync(at('a.jsonl'), 'utf8'))
  })

  const lines = () => readFileSync(at('a.jsonl'), 'utf8').split('\n')
  const write = (change: (lines: string[]) => string) => { writeFileSync(at('bad.jsonl'), change(lines())) }

  it.each<[string, (lines: string[]) => string, string]>([
    ['is cut off', all => all.slice(0, 3).join('\n') + '\n', 'Row 3: the file breaks off after this line'],
    ['is cut off in a line', all => all.join('\n').slice(0, -20), 'the file breaks off in the middle of this line'],
    ['has another value in it', all => all.join('\n').replace('"A3"', '"A9"'), 'it was altered after it was written'],
    ['has lost a line', all => [...all.slice(0, 2), ...all.slice(3)].join('\n'), 'postings are missing before this line'],
    ['has a line of 10 MB', all => [all[0], `{"x":"${'x'.repeat(10_485_760)}"}`, ...all.slice(1)].join('\n'), 'Row 2: the line has 10 MB or more'],
    ['holds NaN', all => all.join('\n').replace('"seq":2', '"seq":NaN'), 'Row 3: it is not whole JSON'],
  ])('that %s is refused by its row, and the book is as it was', async (_, change, said) => {
    write(change)
    await run(['new', 'c.book'])
    const before = await book('c.book')
    const { code, out, err } = await run(['import', 'c.book', 'bad.jsonl'])
    expect([code, out]).toEqual([2, ''])
    expect(err).toContain(said)
    expect(err.length).toBeLessThan(500)
    expect(JSON.parse((await run(['import', 'c.book', 'bad.jsonl', '--json'])).err)).toMatchObject({ field: expect.any(String) as string, row: expect.any(Number) as number })
    expect(await book('c.book')).toBe(before)
  })

  it('in another encoding is refused', async () => {
    writeFileSync(at('latin.jsonl'), Buffer.from(readFileSync(at('a.jsonl'), 'utf8').replace('Old', 'Öld'), 'latin1'))
    expect((await run(['import', 'a.book', 'latin.jsonl'])).err).toContain('is not UTF-8, so it was altered or saved by another program')
  })

  it('takes no options of files of columns', async () => {
    expect((await run(['import', 'a.book', 'a.jsonl', '--rest'])).err).toContain('it is for files of columns')
  })

  it('that is not there is said so', async () => {
    expect(await run(['import', 'a.book', 'nowhere.jsonl'])).toMatchObject({ code: 3, out: '' })
  })
})

describe('check', () => {
  it('says that a whole record is whole, and what is doubtful', async () => {
    const { code, out } = await run(['check', 'a.book'])
    expect(code).toBe(0)
    expect(out.replace(/\s+/g, ' ')).toBe('4 postings of 1 device: every chain is whole and unaltered. Doubts '
      + 'No chain of shots joins A1, A2, A3, A4 to a tie: they have a shape but no place on the ground. ')
    expect(JSON.parse((await run(['check', 'a.book', '--json'])).out)).toMatchObject({ postings: 4, entries: 4, errors: 0, doubts: 1 })
  })

  const alter = (name: string, sql: string) => {
    copyFileSync(at('a.book'), at(name))
    const db = new Database(at(name))
    db.exec(sql)
    db.close()
  }

  it('ends with 1 and names the posting when a record was altered', async () => {
    alter('altered.book', 'UPDATE posting SET json = replace(json, \'"text":"10 m","unit":"m","value":10\', \'"text":"12 m","unit":"m","value":12\') WHERE seq = 3')
    const { code, out } = await run(['check', 'altered.book'])
    expect(code).toBe(1)
    expect(out).toMatch(/the chains are not whole\.\n\nProblems\nDevice cli-\w+, posting 3: altered after it was written by rhys\./)
  })

  it('ends with 1 and names the posting that is missing', async () => {
    alter('lost.book', 'DELETE FROM posting WHERE seq = 2')
    expect(await run(['check', 'lost.book'])).toMatchObject({ code: 1, out: expect.stringMatching(/posting 2: missing\./) as string })
  })

  it('ends with 1 when a posting was written over', async () => {
    alter('spoilt.book', 'UPDATE posting SET json = substr(json, 1, 40) WHERE seq = 2')
    for (const command of ['check', 'show', 'export']) {
      expect(await run([command, 'spoilt.book'])).toMatchObject({ code: 1, out: '', err: expect.stringContaining('the file is damaged') as string })
    }
  })

  it('names two entries with one bag', async () => {
    await run(['new', 'd.book'])
    await run(['new', 'e.book'])
    for (const [name, method] of [['d.book', 'chip'], ['e.book', 'grab']] as const) await run(['add', name, 'sample', 'bag=B-1', `method=${method}`])
    await run(['export', 'e.book', '--out', 'e.jsonl'])
    await run(['import', 'd.book', 'e.jsonl'])
    const { code, out } = await run(['check', 'd.book'])
    expect(code).toBe(1)
    expect(out).toContain('Sample B-1: Bag: B-1 is used by another entry already')
  })
})

describe('a book file that is no sound book', () => {
  it.each<[string, Buffer | ((whole: Buffer) => Buffer), number]>([
    ['cut off', whole => whole.subarray(0, Math.floor(whole.length * 0.6)), 1],
    ['of other bytes', Buffer.from('not a book at all, whatever its name says, and long enough to hold a header of a hundred bytes or more'.repeat(4)), 2],
    ['empty', Buffer.alloc(0), 2],
  ])('%s is refused with one sentence, and its bytes are as they were', async (name, change, code) => {
    const file = `${name.replace(/ /g, '-')}.book`
    const bytes = typeof change === 'function' ? change(readFileSync(at('a.book'))) : change
    writeFileSync(at(file), bytes)
    for (const words of [['show', file], ['add', file, 'sample', 'bag=B-1', 'method=chip']]) {
      const ended = await run(words)
      expect([ended.code, ended.out]).toEqual([code, ''])
      expect(ended.err.trimEnd().split('\n')).toHaveLength(1)
      expect(ended.err).toContain(file)
    }
    expect(readFileSync(at(file)).equals(bytes)).toBe(true)
  })
})

describe('the device that writes', () => {
  it('is the same from one command to the next', async () => {
    await run(['new', 'f.book', '--name', 'F'])
    await run(['add', 'f.book', 'sample', 'bag=B-1', 'method=chip'])
    expect(JSON.parse((await run(['show', 'f.book', '--json'])).out)).toMatchObject({ postings: 2, devices: [expect.any(String)] })
  })

  it('is another one when the file is an older copy, so that no chain forks', async () => {
    copyFileSync(at('f.book'), at('older.book'))
    await run(['add', 'f.book', 'sample', 'bag=B-2', 'method=chip'])
    await run(['export', 'f.book', '--out', 'f.jsonl'])
    copyFileSync(at('older.book'), at('f.book'))
    await run(['add', 'f.book', 'sample', 'bag=B-3', 'method=chip'])
    expect(await run(['import', 'f.book', 'f.jsonl'])).toMatchObject({ code: 0, out: 'f.jsonl: 3 postings, 1 of them new to the book.\n' })
    expect(await run(['check', 'f.book'])).toMatchObject({ code: 0 })
    expect(JSON.parse((await run(['show', 'f.book', '--json'])).out)).toMatchObject({ postings: 4, entries: { sample: 3 } })
  })

  it('is another one in a copy under another name', async () => {
    const devices = async (name: string) => (JSON.parse((await run(['show', name, '--json'])).out) as { devices: string[] }).devices
    copyFileSync(at('f.book'), at('copy.book'))
    await run(['add', 'copy.book', 'sample', 'bag=B-4', 'method=chip'])
    expect(await devices('copy.book')).toHaveLength((await devices('f.book')).length + 1)
  })
})
