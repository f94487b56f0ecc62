import { finite, InputError, positive } from '../core/index.ts'

/**
 * How many years must a yearly income last to pay its owner a return and, put by at a lower rate, give back the price?
 *
 * n = ln(1 + i / (income - r)) / ln(1 + i); at i = 0 it is 1 / (income - r).
 * @param incomePct  yearly income as per cent of the price
 * @param ratePct  return wanted on the price, per cent a year
 * @param safePct  what money put by earns, per cent a year
 * @returns years, not rounded; null when the income does not exceed the return, so that nothing is left to put by
 * @throws InputError for a number that is not finite, an income of zero or less, a negative rate
 * Source: H. C. Hoover, Principles of Mining, 1909, table III (annual income and redemption; after H. D. Hoskold).
 * @example hoskoldYears(29, 5, 4) // 3.93...
 */
export function hoskoldYears(incomePct: number, ratePct: number, safePct: number): number | null {
  positive(incomePct, 'income_pct', 'per cent of the price a year, above zero')
  for (const [field, value] of [['rate_pct', ratePct], ['safe_rate_pct', safePct]] as const) {
    if (finite(value, field) < 0) throw new InputError(field, value, 'per cent a year, zero or more')
  }
  const [spare, safe] = [(incomePct - ratePct) / 100, safePct / 100]
  if (spare <= 0) return null
  return safe === 0 ? 1 / spare : Math.log1p(safe / spare) / Math.log1p(safe)
}

/**
 * What an income of 1 a year for so many years is worth now, when the owner wants one rate and what is put by earns another:
 * 1 / (r + i / ((1 + i)^n - 1)).
 * @param ratePct  return wanted, per cent a year, zero or more
 * @param safePct  what money put by earns, per cent a year, zero or more
 * @param years  above zero
 * @throws InputError for numbers outside those
 * Source: as {@link hoskoldYears}.
 */
export function hoskoldPresentValue(ratePct: number, safePct: number, years: number): number {
  positive(years, 'years')
  for (const [field, value] of [['rate_pct', ratePct], ['safe_rate_pct', safePct]] as const) {
    if (finite(value, field) < 0) throw new InputError(field, value, 'per cent a year, zero or more')
  }
  const safe = safePct / 100
  return 1 / (ratePct / 100 + (safe === 0 ? 1 / years : safe / Math.expm1(years * Math.log1p(safe))))
}
