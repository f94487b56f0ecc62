import { z } from 'zod'
import { checkFields, kindOf } from '../schema/check-draft.ts'
import { checkShape } from '../schema/from-zod.ts'
import type { Problem } from '../schema/problem.ts'
import { refuse } from '../schema/problem.ts'
import { lineSchema } from '../schema/value-schemas.ts'
import { kinds } from '../kinds/index.ts'
import { isClock } from './clock.ts'
import { postingHash } from './hash.ts'
import type { Posting } from './posting.ts'

const hash = z.string().regex(/^[0-9a-f]{64}$/, 'a hash of 64 hexadecimal digits')
const name = z.string().regex(/^[A-Za-z0-9][A-Za-z0-9._:-]{0,99}$/, 'a name of letters, digits, dot, dash, colon and underscore')
const clock = z.string().refine(isClock, 'a clock such as 1777809600000-0000')

/** The envelope of a posting; what it sets is checked by the fields of its kind. */
export const postingSchema = z.strictObject({
  v: z.literal(1),
  device: name,
  seq: z.int('a place in the chain: 1, 2, 3…').min(1, 'a place in the chain: 1, 2, 3…'),
  prev: z.union([z.literal(''), hash], 'the hash of the posting before, or nothing for the first'),
  clock,
  by: lineSchema.max(100, 'a name of at most 100 characters'),
  entry: name,
  kind: lineSchema,
  set: z.record(z.string(), z.unknown()),
  saw: z.record(z.string(), z.array(z.string().regex(/^\d{13}-\d{4}@\S+$/, 'writings that were seen, as clock@device')).max(1000, 'at most 1000')).optional(),
  struck: z.boolean().optional(),
  why: lineSchema.optional(),
  origin: lineSchema.optional(),
  hash,
}).refine(posting => (posting.seq === 1) === (posting.prev === ''), { path: ['prev'], error: 'a hash for every posting but a device\'s first' })

/**
 * [P6] What every door asks of a posting: its shape, its hash, and each field by itself. The answer depends on nothing but the posting,
 * so what one door has taken no other door refuses.
 */
export function checkPosting(raw: unknown): Problem | undefined {
  const misshapen = checkShape(postingSchema, '', 'Posting', raw)
  if (misshapen) return misshapen
  const posting = raw as Posting
  const whole = postingHash(posting)
  if (whole !== posting.hash) {
    return { ...refuse('hash', 'Posting', posting.hash, whole), message: `Posting ${posting.seq} of device ${posting.device}: it was altered after it was written; its hash does not fit.` }
  }
  const kind = kindOf(posting.kind)
  if (kind === undefined) return refuse('kind', 'Kind', posting.kind, `one of ${Object.keys(kinds).join(', ')}`)
  const [problem] = checkFields(kind, posting.set)
  return problem && { ...problem, kind: posting.kind, entry: posting.entry }
}
