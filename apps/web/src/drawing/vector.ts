import type { Enu } from '@lodebook/reckon'

export const dot = (a: Enu, b: Enu): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]

/** a with so many times b added. */
export const plus = (a: Enu, b: Enu, times: number): Enu => [a[0] + b[0] * times, a[1] + b[1] * times, a[2] + b[2] * times]
