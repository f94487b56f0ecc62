import { signal } from '@preact/signals'

/** Until when this device stays quiet about an entry, and in which state of it; milliseconds since 1970. Another state rings again. */
export const quiet = signal<Readonly<Record<string, number>>>({})
const minutes = 5

export const keyOf = (entry: string, state: string): string => `${entry} ${state}`
export const hush = (entry: string, state: string): void => { quiet.value = { ...quiet.value, [keyOf(entry, state)]: Date.now() + minutes * 60_000 } }
export const isHushed = (entry: string, state: string, at: number): boolean => (quiet.value[keyOf(entry, state)] ?? 0) > at
