import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { Camp } from './camp.ts'
import { faultsOf, keptOffline, launch, openScreen, phone, startPhone } from './device.ts'

const camp = new Camp()
beforeAll(() => camp.on())
afterAll(() => camp.end())

/** Puts the big keys away, where the device has them. */
async function shutKeys(page: Page): Promise<void> {
  const done = page.locator('.keypad').getByText('done')
  if (await done.count() > 0) await done.click()
}

/** Writes a shot as the phone layout asks for it. */
async function writeShot(page: Page, from: string, to: string): Promise<void> {
  const writer = page.getByLabel('Who is writing?')
  if (await writer.count() > 0) await writer.fill('Ada')
  await page.locator('#shot-from').fill(from)
  await page.locator('#shot-to').fill(to)
  await page.locator('#shot-distance').fill('4\' 7½"')
  await page.locator('#shot-azimuth').fill('N 23 E')
  await page.locator('#shot-inclination').fill('-2')
  await shutKeys(page)
}

it('with the hub switched off a shot and a sample are saved, outlive the browser being killed, and go to the hub when it is back', async () => {
  const profile = mkdtempSync(join(tmpdir(), 'phone-'))
  let device = await startPhone(profile)
  try {
    await openScreen(device.page, camp.address, 'write/shot')
    await keptOffline(device.page)
    await camp.off()

    // The page is opened anew with no server at all.
    await device.page.reload()
    await device.page.locator('#shot-from').waitFor()
    await writeShot(device.page, 'A1', 'A2')
    expect(await device.page.locator('#shot-distance-echo').textContent()).toContain('= 1.410')
    await device.page.getByRole('button', { name: 'Save survey shot' }).click()
    await device.page.getByText(/Saved on this device at \d\d:\d\d/).first().waitFor()
    await device.kill()

    device = await startPhone(profile)
    const faults = faultsOf(device.context)
    await openScreen(device.page, camp.address, 'write/sample')
    await device.page.getByRole('button', { name: 'Survey shot A1 to A2' }).waitFor()
    await device.page.locator('#sample-bag').fill('B-001')
    await device.page.getByRole('radio', { name: 'channel', exact: true }).check()
    await device.page.getByRole('button', { name: 'Save sample' }).click()
    await device.page.getByText(/Saved on this device/).first().waitFor()
    await device.page.getByRole('button', { name: 'Sample B-001' }).waitFor()
    expect(faults).toEqual([])

    await camp.on()
    await device.page.goto(`${camp.address}#/book/device`)
    await device.page.getByRole('button', { name: 'Ask the hub now' }).click()
    await device.page.locator('main').getByText(/Kept here and at the hub/).waitFor()
    const postings = await camp.postings()
    expect(postings.map(p => [p.kind, p.by, p.seq])).toEqual([['shot', 'Ada', 1], ['sample', 'Ada', 2]])
    expect(postings[0]!.set['distance']).toMatchObject({ text: '4\' 7½"', value: 1.4097, unit: 'm' })
  } finally {
    await device.kill()
    rmSync(profile, { recursive: true, force: true })
  }
})

it('what is half written outlives the page, and a problem is said where it stands', async () => {
  const browser = await launch(), context = await browser.newContext(phone), faults = faultsOf(context)
  const page = await context.newPage()
  await openScreen(page, camp.address, 'write/shot')
  await writeShot(page, 'A2', 'A3')
  await page.locator('#shot-azimuth').fill('370')
  expect(await page.locator('#shot-azimuth-problem').textContent()).toMatch(/0 to 360/)
  await shutKeys(page)
  await page.getByRole('button', { name: 'Save survey shot' }).click()
  await page.getByRole('alert').filter({ hasText: 'Not saved: a field could not be read.' }).waitFor()
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('shot-azimuth')
  await page.close()

  const again = await context.newPage()
  await openScreen(again, camp.address, 'write')
  await again.getByRole('link', { name: 'Go on with the survey shot that is half written' }).click()
  expect(await again.locator('#shot-to').inputValue()).toBe('A3')
  await again.locator('#shot-azimuth').fill('N 40 E')
  await shutKeys(again)
  await again.getByRole('button', { name: 'Save survey shot' }).click()
  await again.getByText(/Saved on this device/).first().waitFor()
  // The next shot goes on from where this one ended.
  await again.waitForFunction(() => document.querySelector<HTMLInputElement>('#shot-from')?.value === 'A3')
  expect(await again.locator('#shot-to').inputValue()).toBe('A4')
  expect(faults).toEqual([])
  await browser.close()
})

it('from the home screen a next sample is two taps and what is different: its method, and saved', async () => {
  const browser = await launch(), context = await browser.newContext(phone), page = await context.newPage()
  await openScreen(page, camp.address, 'write/sample')
  await page.getByLabel('Who is writing?').fill('Ada')
  await page.locator('#sample-bag').fill('C-101')
  await page.getByRole('radio', { name: 'chip', exact: true }).check()
  await page.getByRole('button', { name: 'Save sample' }).click()
  await page.getByText(/Saved on this device/).first().waitFor()
  await page.close()

  const again = await context.newPage()
  await openScreen(again, camp.address, 'write/sample') // where the shortcut leads
  await again.waitForFunction(() => document.querySelector<HTMLInputElement>('#sample-bag')?.value === 'C-102')
  expect(await again.getByRole('radio', { checked: true }).count(), 'only the way to say the place is set: nothing is taken over that may be wrong').toBe(1)
  await again.getByRole('radio', { name: 'chip', exact: true }).tap()
  await again.getByRole('button', { name: 'Save sample' }).tap()
  await again.getByRole('button', { name: 'Sample C-102' }).waitFor()
  await browser.close()
})

it('mended and struck out on the phone: the list shows it, and the history keeps what it said', async () => {
  const browser = await launch(), context = await browser.newContext(phone), page = await context.newPage()
  await openScreen(page, camp.address, 'write/sample')
  await page.getByLabel('Who is writing?').fill('Bo')
  await page.locator('#sample-bag').fill('D-001')
  await page.getByRole('radio', { name: 'grab', exact: true }).check()
  await page.getByRole('button', { name: 'Save sample' }).click()
  await page.getByRole('link', { name: 'Mend Sample D-001' }).click()
  await page.getByRole('radio', { name: 'bulk', exact: true }).check()
  await page.getByLabel(/Why it is mended/).fill('weighed it')
  await page.getByRole('button', { name: 'Save the mending' }).click()
  const drawer = page.getByRole('dialog')
  await drawer.getByText('Changed once').click()
  expect(await drawer.locator('.history li').allTextContents()).toEqual([expect.stringMatching(/^grab Bo/), expect.stringMatching(/^bulk Bo.*: weighed it/)])
  await drawer.getByRole('button', { name: 'Strike out' }).click()
  await drawer.getByLabel(/Why it is struck out/).fill('bag burst')
  await drawer.getByRole('button', { name: 'Strike it out' }).click()
  await drawer.getByText('Struck out: bag burst').waitFor()
  await drawer.getByRole('button', { name: 'Restore' }).click()
  await drawer.getByRole('button', { name: 'Restore it' }).click()
  await drawer.getByRole('button', { name: 'Strike out' }).waitFor()
  await browser.close()
})
