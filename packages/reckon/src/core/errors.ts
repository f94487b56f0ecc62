/** What every refused input says: which field, what stood there, and what would be right. */
export class InputError extends Error {
  override readonly name: string = 'InputError'
  constructor(
    readonly field: string,
    readonly value: unknown,
    readonly expected: string,
    message = `${field}: ${show(value)} will not do; expected ${expected}`,
  ) { super(message) }
}

/**
 * The input is well formed but does not determine an answer: collinear points, parallel planes, a singular system.
 * `reason` is a short fixed word that callers may switch on.
 */
export class DegenerateError extends InputError {
  override readonly name = 'DegenerateError'
  constructor(readonly reason: string, field: string, value: unknown, expected: string) {
    super(field, value, expected, `${field}: ${reason}; expected ${expected}`)
  }
}

/** A value as text for a message, cut short so that a message stays one line. */
export function show(value: unknown): string {
  const text = typeof value === 'string' ? JSON.stringify(value) : typeof value === 'object' && value !== null ? JSON.stringify(value) : String(value)
  return text.length > 60 ? `${text.slice(0, 57)}...` : text
}

/** Throws InputError unless value is a finite number; returns it. */
export function finite(value: number, field: string, expected = 'a finite number'): number {
  if (!Number.isFinite(value)) throw new InputError(field, value, expected)
  return value
}

/** Throws InputError unless value is finite and > 0; returns it. */
export function positive(value: number, field: string, expected = 'a number above zero'): number {
  if (!(Number.isFinite(value) && value > 0)) throw new InputError(field, value, expected)
  return value
}
