import { convert } from '@lodebook/reckon/units'
import { z } from 'zod'
import { reckoning, type Reckoning } from './define.ts'

export const units: readonly Reckoning[] = [
  reckoning('convert', 'a number of one unit as a number of another of the same kind',
    z.strictObject({ value: z.number(), from: z.string().max(60), to: z.string().max(60) }),
    { value: 0.35, from: 'ozt/short ton', to: 'g/t' },
    ({ value, from, to }) => ({ value: convert(value, from, to) })),
]
