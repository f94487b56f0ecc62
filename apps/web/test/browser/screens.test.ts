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

const paths = ['workings', 'grade', 'pay', 'write', 'write/sample', 'write/shot', 'write/pan', 'write/air', 'book', 'book/shot', 'book/device']

async function faultsFound(page: Page): Promise<readonly string[]> {
  const { violations } = await new AxeBuilder({ page }).analyze()
  return violations.flatMap(v => v.nodes.map(n => `${v.id}: ${n.target.join(' ')} (${n.failureSummary?.split('\n')[1]?.trim() ?? ''})`))
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

  describe.each(['Day', 'Lamp', 'Print'])('on the ground for %s', (ground) => {
    beforeAll(async () => {
      await openScreen(page, camp.address, 'book/device')
      await page.getByRole('group', { name: 'Ground to read on' }).getByRole('radio', { name: ground }).check()
      expect(await page.evaluate(() => document.documentElement.dataset['ground'])).toBe(ground.toLowerCase())
    })

    it.each(paths)('%s has nothing that keeps a reader out', async (path) => {
      await openScreen(page, camp.address, path)
      expect(await faultsFound(page)).toEqual([])
      expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), 'nothing runs off to the side').toBe(true)
    })

    it('the drawer has nothing that keeps a reader out', async () => {
      await openScreen(page, camp.address, 'grade')
      await page.locator('.big .fig').click()
      await page.getByRole('dialog').locator('h3').first().waitFor()
      expect(await faultsFound(page)).toEqual([])
      await page.keyboard.press('Escape')
    })
  })

  it('no page and no worker has reported an error', () => { expect(faults).toEqual([]) })
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
