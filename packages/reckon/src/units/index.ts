export { baseUnit } from './dimension.ts'
export type { BaseUnit, Dimension, Mark, Quantity } from './dimension.ts'
