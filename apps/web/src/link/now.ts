import { signal } from '@preact/signals'

/** The time on this device, milliseconds since 1970; moves on every ten seconds. */
export const now = signal(Date.now())
setInterval(() => { now.value = Date.now() }, 10_000)
