import { signal } from '@preact/signals'
import { registerSW } from 'virtual:pwa-register'

/** Whether a newer version of the app has been fetched and waits. It is taken only when the crew says so: never in the middle of writing. */
export const newer = signal(false)
const update = registerSW({ onNeedRefresh: () => { newer.value = true } })
export const takeNewer = (): void => { void update(true) }
