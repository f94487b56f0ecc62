import type { Field, FieldType, Kind } from './field.ts'
import * as detecting from './detecting.ts'
import * as earth from './earth.ts'
import * as entering from './entering.ts'
import * as finds from './finds.ts'
import * as ground from './ground.ts'
import * as keeping from './keeping.ts'
import * as work from './work.ts'

/** Every kind of entry, by id. One description of each serves every door. */
export const kinds: Readonly<Record<string, Kind>> = Object.fromEntries(
  [ground, finds, detecting, keeping, entering, work, earth].flatMap(group => Object.values(group)).map(kind => [kind.id, kind]))

export type { Field, FieldType, Kind }
