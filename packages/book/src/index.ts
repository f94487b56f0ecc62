// What a crew writes down
export { kinds } from './kinds/index.ts'
export type { Field, FieldType, Kind } from './kinds/index.ts'
export { sides, turns } from './place.ts'
export type { Place, Side } from './place.ts'
export type { Blob, Colour, Fields, FieldValue, GroundLine, Money } from './values.ts'

// Checking it
export * from './schema/index.ts'

// Reading it from plain text
export * from './input/index.ts'

// Postings and what they add up to
export * from './posting/index.ts'

// Where they are kept
export * from './store/index.ts'

// A whole book as a file
export * from './jsonl/index.ts'
