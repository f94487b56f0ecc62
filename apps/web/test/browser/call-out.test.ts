import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { postingsOf } from '../../../../packages/book/test/posting/sample-postings.ts'
import { Camp } from './camp.ts'
import { laptop, launch, openScreen, phone } from './device.ts'

const camp = new Camp(), minute = 60_000
let browser: Browser, inside: Page, outside: Page
beforeAll(async () => {
  await camp.begin(postingsOf('camp', [{ entry: 'm1', kind: 'mine', set: { name: 'Test adit', people: ['Ada', 'Bo', 'Cy'] } }]))
  await camp.on()
  browser = await launch()
  inside = await (await browser.newContext(phone)).newPage()
  outside = await (await browser.newContext(laptop)).newPage()
})
afterAll(async () => {
  await browser.close()
  await camp.end()
})

const alarm = (page: Page) => page.getByRole('alertdialog')
const rings = (page: Page) => alarm(page).waitFor({ timeout: 30_000 })

describe('the call-out clock on two devices', () => {
  it('[W8] refuses in words a time due out that has passed', async () => {
    await openScreen(inside, camp.address, 'today/in')
    await inside.getByRole('button', { name: 'Ada', exact: true }).first().click()
    await inside.getByLabel('Who', { exact: true }).fill('Ada, Bo')
    const passed = new Date(Date.now() - 10 * minute), two = (n: number) => String(n).padStart(2, '0')
    await inside.getByLabel('Due out').fill(`${two(passed.getHours())}:${two(passed.getMinutes())}`)
    await inside.getByRole('button', { name: 'They go in now' }).click()
    expect(await inside.getByRole('alert').filter({ hasText: 'has passed already' }).count()).toBe(1)
  })

  it('[W1] a phone writes two people in; the laptop outside shows them', async () => {
    await inside.getByRole('button', { name: '2 h', exact: true }).click()
    await inside.getByRole('textbox', { name: 'Outside person' }).fill('Cy')
    await inside.getByRole('button', { name: 'They go in now' }).click()
    await inside.getByText('Ada, Bo: due out').waitFor()
    await openScreen(outside, camp.address, 'today/in')
    await outside.getByText('Ada, Bo: due out').waitFor({ timeout: 30_000 })
    expect(await alarm(outside).count()).toBe(0)
  })

  it('[W3] [W5] the phone dies, the hub is off over the time due, and the laptop rings over any page when it is on again', async () => {
    await inside.context().close()
    await camp.off()
    const late = 125 * minute
    camp.now = () => Date.now() + late
    await camp.on()
    await openScreen(outside, camp.address, 'write')
    await rings(outside)
    expect(await alarm(outside).getByRole('heading').textContent()).toBe('Overdue')
    expect(await alarm(outside).textContent()).toContain('Ada, Bo')
    const box = (await alarm(outside).boundingBox())!
    expect([Math.round(box.width), Math.round(box.height)], 'it fills the screen').toEqual([1440, 900])
  })

  it('[W6] quieting it leaves a line; it rings again when help is to be called', async () => {
    await outside.getByRole('button', { name: /I hear it/ }).click()
    await alarm(outside).waitFor({ state: 'detached' })
    await outside.locator('.call-line.late').waitFor()
    camp.now = () => Date.now() + 155 * minute
    await rings(outside)
    expect(await alarm(outside).getByRole('heading').textContent()).toBe('Call for help')
  })

  it('[W7] a device whose clock is off says so and goes by the hub\'s', async () => {
    await outside.getByRole('button', { name: /I hear it/ }).click()
    await openScreen(outside, camp.address, 'today/in')
    expect(await outside.locator('main').textContent()).toMatch(/This device’s clock is 155 min slow/)
  })

  it('[W4] writing them as out ends it, on a second device too', async () => {
    const second = await (await browser.newContext(phone)).newPage()
    await openScreen(second, camp.address, 'today')
    await rings(second)
    await second.getByRole('button', { name: 'They are all out' }).click()
    await alarm(second).waitFor({ state: 'detached' })
    await outside.locator('.call-line').waitFor({ state: 'detached', timeout: 40_000 })
    expect((await camp.postings()).some(p => p.kind === 'going-in' && p.set['out'] !== undefined)).toBe(true)
  })
})
