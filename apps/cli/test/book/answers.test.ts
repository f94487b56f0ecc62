import { createReckoner } from '@lodebook/answers'
import { fold } from '@lodebook/book'
import { makeDemo } from '@lodebook/demo'
import { beforeAll, describe, expect, it } from 'vitest'
import { figuresOf } from '../../src/actions/answer.ts'
import { crewUnits } from '../../src/book/crew-input.ts'
import { openedPage, partPage } from '../../src/print/answers.ts'
import { folder, prompt } from '../run.ts'

const cwd = folder()
const run = prompt(cwd)
const json = async (...words: string[]) => JSON.parse((await run([...words, '--json'])).out) as Record<string, unknown>
const narrow = (out: string) => { expect(out.split('\n').filter(line => line.length > 80 && !line.includes('http'))).toEqual([]) }

beforeAll(async () => { await run(['demo', 'demo.book']) }, 120_000)

describe('the demo', () => {
  it('is the same book from the same seed', async () => {
    await run(['demo', 'again.book'])
    await run(['demo', 'other.book', '--seed', '2'])
    const [a, b, c] = await Promise.all(['demo.book', 'again.book', 'other.book'].map(async name => (await run(['export', name])).out))
    expect(a).toBe(b)
    expect(a).not.toBe(c)
    expect((await run(['demo', 'demo.book'])).code).toBe(2)
    expect((await run(['demo', 'x.book', '--seed', 'one'])).err).toContain('expected a whole number of zero or more')
  })

  it('says that it is invented', async () => { expect((await run(['show', 'demo.book'])).out.split('\n')[0]).toContain('invented') })
})

describe('answer', () => {
  it('says all of it in short, with what wants another look', async () => {
    const { code, out } = await run(['answer', 'demo.book'])
    expect(code).toBe(0)
    expect(out).toMatch(/stations placed/)
    expect(out).toMatch(/Lantern vein strikes/)
    expect(out).toMatch(/oz of gold in/)
    expect(out).toMatch(/leaves\s+each\s+of\s+you/)
    expect(out).toMatch(/\nLook again\n/)
    narrow(out)
  })

  it('shows one part by itself, in the units that the mine speaks', async () => {
    const { code, out } = await run(['answer', 'demo.book', 'grade'])
    expect(code).toBe(0)
    expect(out).toMatch(/^Panel +tons +ft wide +oz\/ton +oz +80 %, oz +ft to a sample$/m)
    expect(out).toContain('Open a figure: lodebook answer demo.book --open NAME')
  })

  it('opens a figure down to its entries', async () => {
    const { out } = await run(['answer', 'demo.book', '--open', 'workings.station.A7'])
    const [, entry] = /Survey shot \S+ to \S+ +(\S+)\n/.exec(out)!
    expect((await run(['show', 'demo.book', entry!])).out).toMatch(/^Survey shot/)
    expect(await json('answer', 'demo.book', '--open', 'workings.station.A7')).toMatchObject({ id: 'workings.station.A7', from: expect.arrayContaining([entry]) as string[] })
  })

  it('says which figures there are when a name is none', async () => {
    const { code, err } = await run(['answer', 'demo.book', '--open', 'pay.wage'])
    expect(code).toBe(2)
    expect(err).toContain('such as pay.')
    expect((await run(['answer', 'demo.book', 'wage'])).err).toContain('expected one of today, breathing, ground, access, workings')
  })

  it('says that there is not enough, and what would tell', async () => {
    await run(['new', 'empty.book'])
    const { code, out } = await run(['answer', 'empty.book', 'grade'])
    expect(code).toBe(0)
    expect(out).toMatch(/^Not enough to say/)
    expect(out).toContain('What would tell')
    expect(await json('answer', 'empty.book', 'pay')).toMatchObject({ notEnough: true })
  })
})

describe('pages of answers', () => {
  const book = fold(makeDemo(1).postings)
  const reckoner = createReckoner(book)
  const said = { workings: reckoner.answer('workings'), vein: reckoner.answer('vein'), grade: reckoner.answer('grade'), pay: reckoner.answer('pay') }
  const all = figuresOf(said)

  it.each([['workings', 'workings.length'], ['vein', 'vein.strike'], ['grade', 'grade.ounces'], ['pay', 'pay.day']] as const)('%s names its figures, and each opens', (part, figure) => {
    const page = partPage(part, said[part], crewUnits(book), 80)
    narrow(page)
    const named = [...page.matchAll(/^ {2}([a-z]+\.[\w.-]+) {2}/gm)].map(([, name]) => name!)
    expect(named).toContain(figure)
    expect(named.filter(name => !all.has(name))).toEqual([])
  })

  it('open every figure of the demo in 80 columns, each with its method', () => {
    expect(all.size).toBeGreaterThan(200)
    for (const answer of all.values()) {
      const page = openedPage(answer, id => id, 80)
      narrow(page)
      expect(page.replace(/\s+/g, ' ')).toContain(`(docs/methods/${answer.method.page}`)
      expect(page).not.toMatch(/undefined|NaN|\[object/)
    }
  })
})

describe('check', () => {
  it('names the mistakes that the crew of the demo made, as doubts', async () => {
    const { code, out } = await run(['check', 'demo.book'])
    expect(code).toBe(1) // a number stands on two bags
    expect(out).toMatch(/used by another entry already/)
    expect(out).toMatch(/every chain is whole and unaltered/)
    expect(out).toMatch(/backsight/)
    expect(out).toMatch(/Blank B-\d+ ran/)
    narrow(out)
  })
})

describe('serve', () => {
  it('hands the book on until it is told to stop', async () => {
    let said: unknown
    const { code, out } = await run(['serve', 'demo.book', '--port', '0'], '', async (printed) => {
      const [url] = /http:\S+/.exec(printed)!
      said = await (await fetch(`${url}api/book`)).json()
    })
    expect(code).toBe(0)
    expect(out).toMatch(/^demo\.book is at http:\/\/127\.0\.0\.1:\d+\/\n/)
    expect(said).toMatchObject({ name: expect.stringContaining('invented') as string, postings: expect.any(Number) as number })
  })

  it('says that a port is taken, or is none', async () => {
    await run(['serve', 'demo.book', '--port', '0'], '', async (printed) => {
      const [, port] = /:(\d+)\//.exec(printed)!
      expect(await run(['serve', 'demo.book', '--port', port!])).toEqual({ code: 3, out: '', err: `Port ${port!} is in use already; choose another.\n` })
    })
    expect(await run(['serve', 'demo.book', '--port', '99999'])).toMatchObject({ code: 2, out: '' })
    expect(await run(['serve', 'nowhere.book'])).toMatchObject({ code: 3, out: '' })
  })
})
