import type { z } from 'zod'
import { plain, sentence } from '../refusal.ts'
import type { Refused } from '../refusal.ts'
import { fieldPath, valueAt } from './field-path.ts'
import { namesAt, wantedAt } from './wanted.ts'

type Issue = z.core.$ZodIssue
interface Fault { readonly path: readonly PropertyKey[], readonly expected: string | undefined }

/**
 * Says what a schema refused in our own words. Only the place is taken from the schema library; what would be right is read off the schema,
 * or is what the schema's author wrote.
 */
export function schemaRefusal(error: z.ZodError, schema: z.ZodType, input: unknown): Refused {
  const issue = error.issues[0]
  const fault = issue ? faultOf(issue, [], schema) : { path: [], expected: undefined }
  const field = fieldPath(fault.path) || 'input'
  const value = valueAt(input, fault.path)
  const expected = fault.expected ?? wantedAt(schema, fault.path)
  return { error: sentence(field, value, expected), field, value: plain(value), expected }
}

function faultOf(issue: Issue, above: readonly PropertyKey[], schema: z.ZodType): Fault {
  const path = [...above, ...issue.path]
  if (issue.code === 'invalid_union' && issue.errors.length > 0) {
    const branch = closest(issue.errors)
    if (branch) return faultOf(branch, path, schema)
  }
  if (issue.code === 'unrecognized_keys') return { path: [...path, issue.keys[0] ?? ''], expected: `one of the fields ${namesAt(schema, path).join(', ')}` }
  return { path, expected: authored(issue.message) }
}

/** Of the ways in which a value may be written, the one it comes nearest to; undefined when it is of no right type at all. */
function closest(errors: readonly (readonly Issue[])[]): Issue | undefined {
  const ofRightType = errors.filter(issues => !issues.some(issue => issue.path.length === 0 && issue.code === 'invalid_type'))
  const [best] = [...ofRightType].sort((a, b) => a.length - b.length)
  return best?.[0]
}

/** What the schema's author says would be right; undefined for a message that the library made up. */
const authored = (message: string): string | undefined => /^(Invalid|Too big|Too small|Unrecognized)\b/.test(message) ? undefined : message.replace(/^expected /i, '')
