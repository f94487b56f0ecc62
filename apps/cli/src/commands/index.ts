import type { AddCommand } from './command.ts'
import { addReckon } from './reckon.ts'

/** In the order in which help lists them. */
export const commands: readonly AddCommand[] = [addReckon]
