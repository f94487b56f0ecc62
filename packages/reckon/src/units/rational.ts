/** An exact fraction, so that what was written is rounded once, when it becomes a number, and not at each step on the way. */
export interface Rational { readonly over: bigint, readonly under: bigint }

/**
 * Reads decimal text such as `0.3048`, `-1.5e-3` or a fraction of two such, `1200/3937`, exactly.
 * @param text  ASCII digits, `.`, `e` and at most one `/`; the caller has checked its shape
 * @throws RangeError for text that is not of that shape or divides by zero
 */
export function rational(text: string): Rational {
  const [top = '', bottom] = text.split('/')
  const above = decimal(top)
  return bottom === undefined ? above : divide(above, decimal(bottom))
}

function decimal(text: string): Rational {
  const found = /^([+-]?)(\d*)\.?(\d*)(?:e([+-]?\d{1,3}))?$/i.exec(text.trim())
  const digits = `${found?.[2] ?? ''}${found?.[3] ?? ''}`
  if (!found || digits === '') throw new RangeError(`not decimal text: ${text}`)
  const power = Number(found[4] ?? 0) - (found[3]?.length ?? 0)
  const whole = BigInt(digits) * (found[1] === '-' ? -1n : 1n)
  return power >= 0 ? { over: whole * 10n ** BigInt(power), under: 1n } : { over: whole, under: 10n ** BigInt(-power) }
}

export const multiply = (a: Rational, b: Rational): Rational => ({ over: a.over * b.over, under: a.under * b.under })
export const add = (a: Rational, b: Rational): Rational => ({ over: a.over * b.under + b.over * a.under, under: a.under * b.under })
export const negate = (a: Rational): Rational => ({ over: -a.over, under: a.under })

/** @throws RangeError when b is zero */
export function divide(a: Rational, b: Rational): Rational {
  if (b.over === 0n) throw new RangeError('division by zero')
  const sign = b.over < 0n ? -1n : 1n
  return { over: a.over * b.under * sign, under: a.under * b.over * sign }
}

/** Below zero, zero or above it, as a is less than, equal to or more than b. */
export function compare(a: Rational, b: Rational): number {
  const difference = a.over * b.under - b.over * a.under
  return difference < 0n ? -1 : difference > 0n ? 1 : 0
}

const bits = (value: bigint): number => value.toString(16).length * 4

/** The double nearest to the fraction, ties to even; infinite when it is beyond the largest double. */
export function toNumber({ over, under }: Rational): number {
  if (over === 0n) return 0
  const size = over < 0n ? -over : over
  // A quotient of 64 bits or more whose last bit also says 'and something more': Number() then rounds it as IEEE 754 asks.
  const shift = 68 - bits(size) + bits(under)
  const scaled = shift >= 0 ? size << BigInt(shift) : size
  const by = shift >= 0 ? under : under << BigInt(-shift)
  const quotient = scaled / by
  const nearest = Number(quotient * by === scaled ? quotient : quotient | 1n)
  const half = Math.trunc(shift / 2)
  return (over < 0n ? -nearest : nearest) * 2 ** -half * 2 ** -(shift - half)
}
