import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { makeDemo } from '../../../../demo/src/index.ts'
import { Camp } from './camp.ts'
import { faultsOf, launch, openScreen, phone } from './device.ts'

const camp = new Camp()
let browser: Browser, context: BrowserContext, page: Page, faults: string[]
beforeAll(async () => {
  await camp.begin(makeDemo(1893).postings)
  await camp.on()
  browser = await launch()
  context = await browser.newContext({ ...phone, acceptDownloads: true, permissions: [] })
  faults = faultsOf(context)
  page = await context.newPage()
})
afterAll(async () => {
  await browser.close()
  await camp.end()
})

it('[FB1] an open target leads to its story; a picture is added and the spot marked by a tap, and both reach the hub', async () => {
  await openScreen(page, camp.address, 'write/target')
  const writer = page.locator('#writer')
  await writer.waitFor()
  await writer.fill('Wren Tallow')
  await openScreen(page, camp.address, 'finds')
  await page.locator('.walk a').first().click()
  await page.getByRole('heading', { name: 'To find it again' }).waitFor()
  await page.locator('input[type=file]').setInputFiles(join(import.meta.dirname, '../../public/icon-192.png'))
  await page.getByRole('button', { name: 'Mark the spot' }).click()
  await page.locator('.spot.marking').click({ position: { x: 40, y: 60 } })
  await page.getByRole('img', { name: 'The spot is marked' }).waitFor()
  await expect.poll(async () => (await camp.postings()).find(p => p.kind === 'photo' && 'markX' in p.set)?.set, { timeout: 30_000 })
    .toMatchObject({ markX: expect.any(Number) as number, markY: expect.any(Number) as number })
})

it('[FB2] where the camera is refused the number can be typed, and the bag opens', async () => {
  await openScreen(page, camp.address, 'finds/scan')
  await page.getByRole('button', { name: 'Turn the camera on' }).click()
  await page.getByText(/no camera that can be used|camera was refused/).waitFor()
  await page.getByLabel('Number on the label').fill('b-004')
  await page.getByRole('button', { name: 'Take it' }).click()
  await page.getByRole('heading', { name: /^Bag B-004/ }).waitFor()
})

it('[FB3] the labels of a roll are drawn on the device as a PDF', async () => {
  await openScreen(page, camp.address, 'finds/bags')
  const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Print the labels' }).click()])
  const bytes = readFileSync(await download.path())
  expect(bytes.subarray(0, 5).toString()).toBe('%PDF-')
  expect(bytes.length).toBeGreaterThan(20_000)
})

it('[FB4] a plan answers to other figures', async () => {
  await openScreen(page, camp.address, 'finds/how-much')
  const before = await page.locator('h1').textContent()
  await page.getByLabel(/^Largest gold seen/).fill('0.1')
  await expect.poll(() => page.locator('h1').textContent()).not.toBe(before)
})

it('no page and no worker has reported an error', () => { expect(faults).toEqual([]) })
