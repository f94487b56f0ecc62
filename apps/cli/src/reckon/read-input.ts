import { Refusal, refuse } from '../refusal.ts'
import { jsonFault } from './json-fault.ts'

/** The JSON value in a file's bytes. Refuses, with the field at fault, what is not JSON in UTF-8. */
export function readInput(bytes: Uint8Array): unknown {
  const text = decode(bytes)
  if (text.trim() === '') throw refuse('input', undefined, 'JSON on standard input; `--example` shows one that runs')
  try {
    return JSON.parse(text) as unknown
  } catch (failure) {
    if (!(failure instanceof SyntaxError)) throw failure
    const fault = jsonFault(text)
    if (!fault) throw refuse('input', text, 'JSON')
    const field = fault.field || 'input'
    throw new Refusal({ error: `${field}: ${fault.found} will not do on line ${fault.line}; expected ${fault.expected}`, field, value: fault.found, expected: fault.expected })
  }
}

function decode(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes) // drops a byte order mark
  } catch {
    throw refuse('input', `${bytes.length} bytes that are not UTF-8`, 'JSON in UTF-8')
  }
}
