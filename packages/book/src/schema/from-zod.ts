import type { z } from 'zod'
import type { Problem } from './problem.ts'
import { refuse } from './problem.ts'

/** Checks a value against a zod schema and tells the first thing wrong with it, with its path below `field`. */
export function checkShape(schema: z.ZodType, field: string, label: string, value: unknown): Problem | undefined {
  const result = schema.safeParse(value)
  if (result.success) return undefined
  const issue = result.error.issues[0]!
  return refuse(field + pathText(issue.path, field === ''), labelled(label, issue.path), reach(value, issue.path), expectation(issue))
}

const pathText = (path: readonly PropertyKey[], top: boolean): string => path.map((part, i) =>
  typeof part === 'number' ? `[${part}]` : top && i === 0 ? String(part) : `.${String(part)}`).join('')

/** The label of a part: `Place, along`, `Surveyors, no. 2`. */
const labelled = (label: string, path: readonly PropertyKey[]): string =>
  [label, ...path.map(part => typeof part === 'number' ? `no. ${part + 1}` : String(part))].join(', ')

const reach = (value: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>((at, part) => typeof at === 'object' && at !== null ? (at as Record<PropertyKey, unknown>)[part] : undefined, value)

const kindOfThing: Readonly<Record<string, string>> = { string: 'text', number: 'a number', int: 'a whole number', boolean: 'true or false', object: 'an object',
  record: 'an object', array: 'a list' }

function expectation(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case 'unrecognized_keys': return `no ${issue.keys.map(key => JSON.stringify(key)).join(', ')} here`
    case 'invalid_type': return issue.message.startsWith('Invalid') ? kindOfThing[issue.expected] ?? issue.expected : issue.message
    case 'invalid_value': return issue.values.length === 1 ? String(issue.values[0]) : `one of ${issue.values.map(String).join(', ')}`
    default: return issue.message
  }
}
