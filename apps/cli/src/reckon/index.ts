import type { Reckoning } from './define.ts'

/** Every reckoning at the prompt, by area. */
export const reckonings: readonly Reckoning[] = [
]
