import { chromium } from 'playwright-core'
import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core'
import { spawn } from 'node:child_process'
import { createInterface } from 'node:readline'

const executablePath = process.env['CHROMIUM'] ?? '/usr/bin/chromium'
const quiet = ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync']

export const phone: BrowserContextOptions = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, deviceScaleFactor: 2 }
export const laptop: BrowserContextOptions = { viewport: { width: 1440, height: 900 } }

export const launch = (): Promise<Browser> => chromium.launch({ executablePath, args: quiet })

/** Notes every error that a page or its workers report, but for a hub that is switched off, which the app must bear. */
export function faultsOf(context: BrowserContext): string[] {
  const faults: string[] = []
  const note = (page: Page) => {
    page.on('pageerror', (error) => { faults.push(error.message) })
    page.on('console', (message) => { if (message.type() === 'error' && !/ERR_CONNECTION_REFUSED|ERR_INTERNET_DISCONNECTED/.test(message.text())) faults.push(message.text()) })
  }
  context.pages().forEach(note)
  context.on('page', note)
  return faults
}

/** Opens a screen and waits until it shows its answer. */
export async function openScreen(page: Page, address: string, path: string): Promise<void> {
  await page.goto(`${address}#/${path}`)
  await settled(page)
}

export async function settled(page: Page): Promise<void> {
  await page.locator('main h1').first().waitFor({ timeout: 60_000 })
  await page.locator('.waiting, .behind').first().waitFor({ state: 'detached', timeout: 60_000 })
}

/** Waits until the app is kept on the device, so that it opens with the hub off. */
export const keptOffline = (page: Page): Promise<void> => page.evaluate(async () => { await navigator.serviceWorker.ready })

/** A browser of its own process over a profile on disk, that can be killed as by a flat battery. */
export async function startPhone(profile: string): Promise<{ readonly context: BrowserContext, readonly page: Page, readonly kill: () => Promise<void> }> {
  const child = spawn(executablePath, ['--headless=new', '--remote-debugging-port=0', `--user-data-dir=${profile}`, '--window-size=390,844', ...quiet, 'about:blank'],
    { detached: true, stdio: ['ignore', 'ignore', 'pipe'] })
  const ended = new Promise<void>((resolve) => { child.once('exit', () => { resolve() }) })
  const address = await new Promise<string>((resolve, reject) => {
    createInterface(child.stderr).on('line', (line) => { const m = /DevTools listening on (ws:\S+)/.exec(line); if (m) resolve(m[1]!) })
    child.once('exit', (code) => { reject(new Error(`Chromium ended with ${code}`)) })
  })
  const browser = await chromium.connectOverCDP(address), context = browser.contexts()[0]!
  return {
    context, page: context.pages()[0] ?? await context.newPage(),
    async kill() {
      if (child.exitCode === null && child.signalCode === null) process.kill(-child.pid!, 'SIGKILL') // the browser and all its processes at once
      await ended
    },
  }
}
