export { DegenerateError, finite, InputError, positive, show } from './errors.ts'
export { degrees, radians } from './types.ts'
export type { Degrees, Enu, Radians, Range, VeinPoint } from './types.ts'
