import { effect, signal } from '@preact/signals'

/** Whether this device is the one that the outside person watches: its screen is kept on while the app is open. */
export const keepsWatch = signal(localStorage.getItem('keeps watch') === 'yes')
export const screenKept = signal<boolean | undefined>(undefined)
let lock: WakeLockSentinel | undefined

async function keepScreen(): Promise<void> {
  if (!keepsWatch.value) { await lock?.release(); lock = undefined; screenKept.value = undefined; return }
  try {
    lock = await navigator.wakeLock.request('screen')
    screenKept.value = true
  } catch { screenKept.value = false }
}
effect(() => { localStorage.setItem('keeps watch', keepsWatch.value ? 'yes' : 'no'); void keepScreen() })
document.addEventListener('visibilitychange', () => { if (document.visibilityState === 'visible') void keepScreen() })

/** Asks whether notices may be shown over other apps; the answer may be no. */
export async function allowNotices(): Promise<void> { if ('Notification' in window && Notification.permission === 'default') await Notification.requestPermission() }

let noticed = ''
/** A notice over other apps, once for each thing to say. */
export function notice(says: string): void {
  if (says === noticed) return
  noticed = says
  if (says === '' || !('Notification' in window) || Notification.permission !== 'granted') return
  void navigator.serviceWorker?.getRegistration().then(reg => reg?.showNotification('Overdue underground', { body: says, requireInteraction: true, tag: 'call-out' }))
}
