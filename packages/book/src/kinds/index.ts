import type { Field, FieldType, Kind } from './field.ts'
import * as detecting from './detecting.ts'
import * as finds from './finds.ts'
import * as ground from './ground.ts'
import * as keeping from './keeping.ts'
import * as work from './work.ts'

/** Every kind of entry, by id. One description of each serves every door. */
export const kinds: Readonly<Record<string, Kind>> = Object.fromEntries(
  [...Object.values(ground), ...Object.values(finds), ...Object.values(detecting), ...Object.values(keeping), ...Object.values(work)].map(kind => [kind.id, kind]))

export type { Field, FieldType, Kind }
