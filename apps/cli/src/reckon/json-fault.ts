import { at } from './field-path.ts'

/** Where JSON text goes wrong: the field being read, what stands there, and what would be right. */
export interface JsonFault {
  readonly field: string
  readonly found: string
  readonly expected: string
  readonly line: number
}

const numberForm = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?(?![\w.])/y
const stringForm = /"(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"/y
const wordForm = /true(?!\w)|false(?!\w)|null(?!\w)/y
const spaceForm = /[ \t\r\n]*/y
const tokenForm = /[^\s,[\]{}:]+|[^\s]/y
const deepest = 200

class Found extends Error { constructor(readonly fault: JsonFault) { super() } }

/**
 * Reads text that JSON.parse refused, once more and slowly, to say which field of it is at fault.
 * @returns undefined when the text is sound JSON
 */
export function jsonFault(text: string): JsonFault | undefined {
  let position = 0
  const match = (form: RegExp): string | undefined => {
    form.lastIndex = position
    const found = form.exec(text)?.[0]
    if (found !== undefined) position += found.length
    return found
  }
  const space = () => { match(spaceForm) }
  const fail = (field: string, expected: string): never => {
    const found = position >= text.length ? 'the end of the input' : (match(tokenForm) ?? '')
    throw new Found({ field, found, expected, line: text.slice(0, position).split('\n').length })
  }
  const take = (mark: string) => { if (text[position] !== mark) return false; position++; return true }

  const value = (field: string, depth: number): void => {
    space()
    if (depth > deepest) fail(field, `JSON no more than ${deepest} levels deep`)
    if (take('{')) members(field, depth)
    else if (take('[')) elements(field, depth)
    else if (match(stringForm) ?? match(numberForm) ?? match(wordForm)) return
    else fail(field, wanted(text.slice(position, position + 40)))
  }
  const members = (field: string, depth: number) => {
    space()
    if (take('}')) return
    do {
      space()
      const key = match(stringForm)
      if (key === undefined) return fail(field, 'a field name in double quotes')
      const inside = at(field, JSON.parse(key) as string)
      space()
      if (!take(':')) fail(inside, 'a colon after the field name')
      value(inside, depth + 1)
      space()
    } while (take(','))
    if (!take('}')) fail(field, 'a comma or a closing } here')
  }
  const elements = (field: string, depth: number) => {
    space()
    if (take(']')) return
    let index = 0
    do { value(at(field, index++), depth + 1); space() } while (take(','))
    if (!take(']')) fail(field, 'a comma or a closing ] here')
  }

  try {
    value('', 0)
    space()
    if (position < text.length) fail('', 'nothing after the end of the JSON value')
    return undefined
  } catch (failure) {
    if (failure instanceof Found) return failure.fault
    throw failure
  }
}

function wanted(rest: string): string {
  if (/^[-+]?(nan|inf)/i.test(rest)) return 'a finite number'
  if (/^[-+.\d]/.test(rest)) return 'a number as JSON writes it, such as 0.5 or -12'
  if (rest === '') return 'the rest of the JSON; it stops short'
  return 'a JSON value: a number, text in double quotes, true, false, null, [ ] or { }'
}
