import { notEnough } from '@lodebook/answers'
import type { NotEnough } from '@lodebook/answers'

/** A part of the answers when it has come and there is enough to say; undefined otherwise. */
export const there = <T extends object>(value: T | NotEnough | undefined): T | undefined => value && !notEnough(value) ? value : undefined
