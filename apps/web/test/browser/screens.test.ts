import { AxeBuilder } from '@axe-core/playwright'
import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { makeDemo } from '../../../../demo/src/index.ts'
import { Camp } from './camp.ts'
import { faultsOf, laptop, launch, openScreen, phone } from './device.ts'

const camp = new Camp()
let browser: Browser
beforeAll(async () => {
  await camp.begin(makeDemo(1893).postings)
  await camp.on()
  browser = await launch()
})
afterAll(async () => {
  await browser.close()
  await camp.end()
})

const grounds = ['day', 'lamp', 'print'] as const
const paths = [
  'today', 'today/air', 'today/ground', 'today/in', 'today/breathing', 'today/limits', 'access', 'workings', 'vein', 'vein/3d',
  'finds', 'finds/bags', 'finds/scan', 'finds/how-much', 'finds/with-gold', 'lab', 'grade', 'pay', 'next',
  'write', 'write/sample', 'write/shot', 'write/pan', 'write/air', 'book', 'book/shot', 'book/device', 'contents',
]

/** The rules that colours alone can break; the others hold or fail on every ground alike. */
const ofColours = ['color-contrast', 'link-in-text-block']

/** Asked within the page itself, which is several times quicker than through one more page; the app has no frames that this would miss. */
async function faultsFound(page: Page, rules?: readonly string[]): Promise<readonly string[]> {
  const axe = new AxeBuilder({ page }).setLegacyMode(true).options({ resultTypes: ['violations'], ...(rules ? { runOnly: [...rules] } : {}) })
  const { violations } = await axe.analyze()
  return violations.flatMap(v => v.nodes.map(n => `${v.id}: ${n.target.join(' ')} (${n.failureSummary?.split('\n')[1]?.trim() ?? ''})`))
}

/** Changes the ground under a page that stays as it is, as a choice made in another window does. */
async function standOn(page: Page, ground: typeof grounds[number]): Promise<void> {
  await page.evaluate((g) => { dispatchEvent(new StorageEvent('storage', { key: 'ground', newValue: g })) }, ground)
  await page.waitForFunction(g => document.documentElement.dataset['ground'] === g, ground)
}

/** Every rule on one ground, those of colours on the others. */
async function onEveryGround(page: Page): Promise<Readonly<Record<string, readonly string[]>>> {
  expect(page.frames()).toHaveLength(1)
  const found: Record<string, readonly string[]> = {}
  for (const ground of grounds) {
    await standOn(page, ground)
    const faults = await faultsFound(page, ground === 'day' ? undefined : ofColours)
    if (faults.length > 0) found[ground] = faults
  }
  return found
}

describe.each([['phone', phone], ['laptop', laptop]] as const)('on a %s', (_, size) => {
  let context: BrowserContext, page: Page, faults: string[]
  beforeAll(async () => {
    context = await browser.newContext(size)
    faults = faultsOf(context)
    page = await context.newPage()
    await openScreen(page, camp.address, 'workings')
  })
  afterAll(() => context.close())

  it.each(paths)('%s has nothing that keeps a reader out, on any ground', async (path) => {
    await openScreen(page, camp.address, path)
    expect(await onEveryGround(page)).toEqual({})
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), 'nothing runs off to the side').toBe(true)
  })

  it('the drawer has nothing that keeps a reader out, on any ground', async () => {
    await openScreen(page, camp.address, 'grade')
    await page.locator('.big .fig').click()
    await page.getByRole('dialog').locator('h3').first().waitFor()
    expect(await onEveryGround(page)).toEqual({})
    await page.keyboard.press('Escape')
  })

  it('no page and no worker has reported an error', () => { expect(faults).toEqual([]) })
})

it('the ground chosen on the page about this device is the ground everything stands on', async () => {
  const page = await (await browser.newContext(phone)).newPage()
  await openScreen(page, camp.address, 'book/device')
  for (const name of ['Lamp', 'Print', 'Day']) {
    await page.getByRole('group', { name: 'Ground to read on' }).getByRole('radio', { name }).check()
    expect(await page.evaluate(() => document.documentElement.dataset['ground'])).toBe(name.toLowerCase())
  }
})

it('everything to be tapped on a phone is big enough for a glove', async () => {
  const page = await (await browser.newContext(phone)).newPage()
  for (const path of ['write', 'write/sample', 'write/shot']) {
    await openScreen(page, camp.address, path)
    const small = await page.evaluate(() => [...document.querySelectorAll<HTMLElement>('main a.btn, main button, .contents a, main input:not([type=radio]), main .choice')]
      .filter(e => e.offsetParent !== null).map(e => ({ name: e.textContent.trim() || e.id, height: e.getBoundingClientRect().height }))
      .filter(e => e.height < 40))
    expect(small).toEqual([])
  }
})
