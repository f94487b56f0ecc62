import { z } from 'zod'

/** The part of a JSON Schema that the words below are made from. */
interface Shape {
  readonly type?: string
  readonly const?: unknown
  readonly enum?: readonly unknown[]
  readonly anyOf?: readonly Shape[]
  readonly oneOf?: readonly Shape[]
  readonly properties?: Readonly<Record<string, Shape>>
  readonly required?: readonly string[]
  readonly additionalProperties?: Shape | boolean
  readonly items?: Shape | boolean
  readonly prefixItems?: readonly Shape[]
  readonly minItems?: number
  readonly maxItems?: number
  readonly minimum?: number
  readonly maximum?: number
  readonly exclusiveMinimum?: number
  readonly exclusiveMaximum?: number
  readonly minLength?: number
  readonly format?: string
  readonly description?: string
}

/** One field of an input: its name as messages write it, what it takes, and whether it may be left out. */
export interface FieldWords { readonly field: string, readonly takes: string, readonly optional: boolean }

const shapeOf = (schema: z.ZodType): Shape => z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any', reused: 'inline' }) as Shape

/** What the schema asks for at a path, in words: 'a number from 0 to 360'. */
export function wantedAt(schema: z.ZodType, path: readonly PropertyKey[]): string {
  const shapes = path.reduce<readonly Shape[]>((inside, key) => inside.flatMap(shape => step(shape, key)), [shapeOf(schema)])
  return shapes.length === 0 ? 'no such field' : either(shapes.map(describe))
}

/** The names of the fields that the schema knows at a path. */
export function namesAt(schema: z.ZodType, path: readonly PropertyKey[]): readonly string[] {
  const shapes = path.reduce<readonly Shape[]>((inside, key) => inside.flatMap(shape => step(shape, key)), [shapeOf(schema)])
  return [...new Set(shapes.flatMap(variants).flatMap(shape => Object.keys(shape.properties ?? {})))]
}

/** Every field of an input, two levels down, in the order of the schema. */
export function fieldsOf(schema: z.ZodType): readonly FieldWords[] {
  const list = (shape: Shape, parent: string, depth: number): FieldWords[] => variants(shape).flatMap(variant =>
    Object.entries(variant.properties ?? {}).flatMap(([key, inner]) => {
      const field = parent === '' ? key : `${parent}.${key}`
      const own: FieldWords = { field, takes: inner.description ?? describe(inner), optional: !(variant.required ?? []).includes(key) }
      if (depth === 0) return [own]
      const item = typeof inner.items === 'object' ? inner.items : undefined
      return [own, ...list(inner, field, depth - 1), ...item ? list(item, `${field}[]`, depth - 1) : []]
    }))
  return list(shapeOf(schema), '', 1)
}

const variants = (shape: Shape): readonly Shape[] => {
  const options = shape.anyOf ?? shape.oneOf
  return options ? options.flatMap(variants) : [shape]
}

function step(shape: Shape, key: PropertyKey): readonly Shape[] {
  return variants(shape).flatMap((variant) => {
    if (typeof key === 'number') {
      const item = variant.prefixItems?.[key] ?? variant.items
      return typeof item === 'object' ? [item] : []
    }
    const inner = variant.properties?.[String(key)] ?? variant.additionalProperties
    return typeof inner === 'object' ? [inner] : []
  })
}

const either = (words: readonly string[]): string => [...new Set(words)].join(' or ')

function describe(shape: Shape): string {
  const options = variants(shape)
  if (options.length > 1) return either(options.map(describe))
  const only = options[0] ?? {}
  if (only.const !== undefined) return JSON.stringify(only.const)
  if (only.enum) return `one of ${only.enum.map(value => JSON.stringify(value)).join(', ')}`
  switch (only.type) {
    case 'number': return `a number${bounds(only)}`
    case 'integer': return `a whole number${bounds(only)}`
    case 'boolean': return 'true or false'
    case 'null': return 'null'
    case 'string': return only.format === 'date' ? 'a date as YYYY-MM-DD' : (only.minLength ?? 0) > 0 ? 'text that is not empty' : 'text'
    case 'array': return list(only)
    case 'object': return object(only)
    default: return 'a value'
  }
}

function bounds(shape: Shape): string {
  const real = (limit: number | undefined) => limit === undefined || Math.abs(limit) >= Number.MAX_SAFE_INTEGER ? undefined : limit
  const [low, high, above, below] = [real(shape.minimum), real(shape.maximum), real(shape.exclusiveMinimum), real(shape.exclusiveMaximum)]
  if (low !== undefined && high !== undefined) return ` from ${low} to ${high}`
  const parts = [
    ...above === undefined ? [] : [`above ${above}`], ...low === undefined ? [] : [`${low} or more`],
    ...below === undefined ? [] : [`below ${below}`], ...high === undefined ? [] : [`${high} or less`],
  ]
  return parts.length === 0 ? '' : parts.length === 1 && (low ?? high) !== undefined ? `, ${parts[0]}` : ` ${parts.join(' and ')}`
}

function list(shape: Shape): string {
  if (shape.prefixItems) return `a list of ${shape.prefixItems.length}: [${shape.prefixItems.map(describe).join(', ')}]`
  const least = shape.minItems ?? 0
  const size = least > 0 && least === shape.maxItems ? `${least} ` : least > 0 ? `${least} or more ` : ''
  const item = typeof shape.items === 'object' ? describe(shape.items) : 'a value'
  return `a list of ${size}items, each ${item}`
}

function object(shape: Shape): string {
  const needed = shape.required ?? []
  if (needed.length > 0) return `an object with ${needed.join(', ')}`
  const inner = shape.additionalProperties
  return typeof inner === 'object' ? `an object whose every field holds ${describe(inner)}` : 'an object'
}
