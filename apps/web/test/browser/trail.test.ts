import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { makeDemo } from '../../../../demo/src/index.ts'
import { Camp } from './camp.ts'
import { laptop, launch, openScreen, settled } from './device.ts'

const camp = new Camp()
let browser: Browser, page: Page
beforeAll(async () => {
  await camp.begin(makeDemo(1893).postings)
  await camp.on()
  browser = await launch()
  page = await (await browser.newContext(laptop)).newPage()
})
afterAll(async () => {
  await browser.close()
  await camp.end()
})

const drawer = () => page.getByRole('dialog')
const title = () => drawer().locator('#drawer-title').textContent()

/** Goes down from the page that is open, always by the first way that leads on, until an entry is reached. */
async function downToAnEntry(): Promise<readonly string[]> {
  const way: string[] = []
  for (let depth = 0; depth < 12; depth++) {
    way.push(await title() ?? '')
    if (await drawer().getByRole('link', { name: 'Mend' }).count() > 0) return way
    const entries = drawer().locator('.entries-behind .fig'), parts = drawer().locator('.rests .fig')
    if (await drawer().getByRole('heading', { name: 'Entries', exact: true }).count() > 0) await entries.first().waitFor()
    const next = await entries.count() > 0 ? entries.last() : parts.last()
    await next.click()
    await page.waitForFunction(before => document.getElementById('drawer-title')?.textContent !== before, way.at(-1))
  }
  throw new Error(`no entry after ${way.join(' > ')}`)
}

it.each([['grade', '.big .fig'], ['pay', '.big .fig'], ['workings', '.said .fig']])('the figure on %s opens down to what was written, with who and when', async (path, figure) => {
  await openScreen(page, camp.address, path)
  await page.locator(figure).first().click()
  await drawer().getByRole('heading', { name: 'How it was worked out' }).waitFor()
  const way = await downToAnEntry()
  expect(way.length).toBeGreaterThan(1)
  expect(await drawer().textContent()).toMatch(/Written by .+ 2026/)
  for (let i = way.length - 2; i >= 0; i--) {
    await page.keyboard.press('Escape')
    expect(await title()).toBe(way[i])
  }
  await page.keyboard.press('Escape')
  await drawer().waitFor({ state: 'hidden' })
  expect(await page.evaluate(() => document.activeElement?.className)).toBe('fig')
})

it('a finger on the plan moves the mark on the section to the same place along', async () => {
  await openScreen(page, camp.address, 'workings')
  const station = page.getByRole('group', { name: 'Plan', exact: true }).locator('[data-id="station:A7"]')
  await station.hover()
  const marks = await page.locator('.finger circle').evaluateAll(circles => circles.map(c => Number(c.getAttribute('cx'))))
  expect(marks).toHaveLength(2)
  expect(Math.abs(marks[0]! - marks[1]!)).toBeLessThan(0.5)
  expect(await page.locator('.finger-says').textContent()).toMatch(/Station A7/)
})

it('the sheet is explored with keys alone: into the plan, from thing to thing, larger, open, and back', async () => {
  await openScreen(page, camp.address, 'workings')
  const plan = page.getByRole('group', { name: 'Plan', exact: true })
  await plan.locator('.thing[tabindex="0"]').focus()
  const first = await page.evaluate(() => document.activeElement?.getAttribute('data-id'))
  for (const key of ['ArrowRight', 'ArrowDown', 'ArrowLeft', 'ArrowUp']) {
    await page.keyboard.press(key)
    const now = await page.evaluate(() => document.activeElement?.getAttribute('data-id'))
    if (now !== first) break
  }
  const at = await page.evaluate(() => document.activeElement?.getAttribute('data-id'))
  expect(at).not.toBe(first)
  const wide = () => plan.locator('.metres').getAttribute('transform')
  const before = await wide()
  await page.keyboard.press('+')
  expect(await wide()).not.toBe(before)
  await page.keyboard.press('0')
  expect(await wide()).toBe(before)
  await page.keyboard.press('Enter')
  await drawer().locator('#drawer-title').waitFor()
  await page.keyboard.press('Escape')
  await page.waitForFunction(id => document.activeElement?.getAttribute('data-id') === id, at)
})

it('a keyboard walk from the top reaches the page, every screen and the first figure', async () => {
  await openScreen(page, camp.address, 'grade')
  await page.reload()
  await settled(page)
  const reached: string[] = []
  for (let i = 0; i < 24; i++) {
    await page.keyboard.press('Tab')
    reached.push(await page.evaluate(() => document.activeElement?.textContent.trim().slice(0, 24) ?? ''))
  }
  expect(reached[0]).toBe('Go to the page')
  for (const screen of ['Workings', 'Grade', 'Pay', 'Write', 'Book']) expect(reached.some(r => r.startsWith(screen))).toBe(true)
  expect(reached.some(r => /oz/.test(r))).toBe(true)
})
