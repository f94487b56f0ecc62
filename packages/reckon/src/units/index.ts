// What is written down
export { baseUnit } from './dimension.ts'
export type { BaseUnit, Dimension, Mark, Quantity } from './dimension.ts'

// Units
export { convert, convertWithin } from './convert.ts'
export { findUnit, unclearUnit, unitSymbols } from './find-unit.ts'

// Reading what people write
export { azimuthFrom } from './azimuth-from.ts'
export { parseMoney } from './parse-money.ts'
export type { ParsedMoney } from './parse-money.ts'
export { parseNumber } from './read-number.ts'
export type { DecimalMark } from './read-number.ts'
export { parseQuantity } from './parse-quantity.ts'
export type { Parsed, ParseOptions } from './parse-quantity.ts'
export type { Problem } from './reading.ts'

// Writing for screens and sheets
export { format, formatQuantity } from './format.ts'
export type { FormatOptions } from './format.ts'
