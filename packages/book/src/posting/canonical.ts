import { InputError } from '@lodebook/reckon'

/**
 * JSON with one form for one value: members sorted by UTF-16 code units, no spaces, numbers and text as ECMAScript writes them.
 * Members that are undefined are left out.
 * @throws InputError for what JSON cannot hold: NaN, infinities, half a surrogate pair, and anything but plain objects, lists and scalars
 * Source: RFC 8785, JSON Canonicalization Scheme, section 3.2.
 */
export function canonicalJson(value: unknown): string {
  switch (typeof value) {
    case 'string':
      if (/\p{Surrogate}/u.test(value)) throw new InputError('text', value, 'text without half a surrogate pair')
      return JSON.stringify(value)
    case 'number':
      if (!Number.isFinite(value)) throw new InputError('number', value, 'a finite number')
      return JSON.stringify(value)
    case 'boolean': return String(value)
    case 'object': return value === null ? 'null' : Array.isArray(value) ? `[${value.map(canonicalJson).join(',')}]` : members(value)
    default: throw new InputError('value', String(value), 'text, a number, true, false, null, a list or an object')
  }
}

const members = (value: object): string => `{${Object.keys(value).sort()
  .flatMap((key) => {
    const member = (value as Record<string, unknown>)[key]
    return member === undefined ? [] : [`${canonicalJson(key)}:${canonicalJson(member)}`]
  }).join(',')}}`
