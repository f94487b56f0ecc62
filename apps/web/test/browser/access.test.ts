import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { makeDemo } from '../../../../demo/src/index.ts'
import { Camp } from './camp.ts'
import { faultsOf, launch, openScreen, phone, settled } from './device.ts'

const camp = new Camp()
let browser: Browser, page: Page, faults: string[]
beforeAll(async () => {
  await camp.begin(makeDemo(1893).postings)
  await camp.on()
  browser = await launch()
  const context = await browser.newContext(phone)
  faults = faultsOf(context)
  page = await context.newPage()
})
afterAll(async () => {
  await browser.close()
  await camp.end()
})

it('says what it takes, and the slider changes all four answers', async () => {
  await openScreen(page, camp.address, 'access')
  expect(await page.locator('h1').textContent()).toMatch(/^2 jobs stand between you and a proper way in: about .* still to move, \d+ loads, .* days of the crew/)
  const four = page.locator('.four dd'), before = await four.allTextContents()
  await page.getByRole('radio', { name: 'Draw the ribs back' }).check()
  await page.getByRole('slider').fill('12')
  const after = await four.allTextContents()
  expect(after).toHaveLength(4)
  for (const i of [0, 3]) expect(after[i]).not.toBe(before[i])
})

it('a press of the tally is a load in the book, and the last can be taken back', async () => {
  await page.getByRole('link', { name: 'Tally loads' }).first().click()
  await page.locator('.tip').waitFor()
  await page.getByLabel('Who is writing?').fill('Ives Candlewick')
  for (const count of ['1', '2']) {
    await page.locator('.tip').click()
    await page.locator('.tip-count', { hasText: count }).waitFor()
  }
  await page.getByRole('button', { name: /Take back the last/ }).click()
  await page.locator('.tip-count', { hasText: '1' }).waitFor()
  await expect.poll(async () => (await camp.postings()).filter(p => p.by === 'Ives Candlewick' && p.kind === 'load').length).toBe(3)
  await page.reload()
  await settled(page)
  await page.locator('.tip-count', { hasText: '1' }).waitFor()
  expect(faults).toEqual([])
})
