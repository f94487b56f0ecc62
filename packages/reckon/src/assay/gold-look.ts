import { InputError, positive } from '../core/index.ts'

/**
 * One look at a sample's gold: a portion of so much mass in which gold was found, weighed, counted or assayed.
 * How far it can be trusted follows from how many grains the portion can have held, not from how precisely it was weighed.
 */
export interface GoldLook {
  /** Mass of the portion looked at, g. */
  readonly mass: number
  /** Mass of the grains that carry the gold, mg: the mass-weighted mean. */
  readonly grain: number
  /** Share of the portion's gold that the look finds: 1 for an assay, a pan's recovery. */
  readonly recovery: number
  /** Relative standard deviation of all else: analysis, weighing, recovery, mass of a colour. */
  readonly relativeSd: number
  /** Grade the look gave before recovery is put right, g/t; or only a limit it was under or over. */
  readonly found: { readonly grade: number } | { readonly below: number } | { readonly above: number }
}

/** Above this many grains a count is as good as normal, and its sum need not be made term by term. */
const manyGrains = 150

/**
 * ln of the likelihood of a look when the sample's grade is exp(logGrade) g/t, up to a constant.
 *
 * Grains in the portion are a Poisson count, and all else multiplies it by an error of its own: together a negative binomial, whose variance is
 * m + s² m² at the *expected* count m. Its own count would make a look that happens to read low seem sure of itself.
 * A count need not be whole: it is the gold found over the mass of a grain.
 */
export function logLikelihood(look: GoldLook, logGrade: number): number {
  // 1 g/t in 1 g is 1 µg, a thousandth of a mg.
  const grains = look.mass * look.recovery / (1000 * look.grain)
  const expected = Math.exp(logGrade) * grains
  const other = look.relativeSd ** 2
  const { found } = look
  if ('grade' in found) {
    const count = found.grade / look.recovery * grains
    return other === 0 ? count * logGrade - expected : count * logGrade - (count + 1 / other) * Math.log1p(other * expected)
  }
  const limit = ('below' in found ? found.below : found.above) / look.recovery * grains
  if (limit > manyGrains) {
    const z = (limit - expected) / Math.sqrt(limit + other * limit * limit)
    return logNormalTail('below' in found ? -z : z)
  }
  const atMost = logAtMost(Math.floor(limit), expected, other)
  return 'below' in found ? atMost : Math.log(Math.max(Number.MIN_VALUE, -Math.expm1(Math.min(-1e-300, atMost))))
}

/** ln P(at most k grains) of the negative binomial with mean `expected` and relative variance `other` beyond Poisson's; on logs, so that nothing overflows. */
function logAtMost(k: number, expected: number, other: number): number {
  const step = Math.log(expected) - Math.log1p(other * expected)
  const terms = [other === 0 ? -expected : -Math.log1p(other * expected) / other]
  for (let i = 1; i <= k; i++) terms.push(terms[i - 1]! + step + Math.log(((i - 1) * other + 1) / i))
  const top = Math.max(...terms)
  return Math.min(0, top + Math.log(terms.reduce((sum, term) => sum + Math.exp(term - top), 0)))
}

/**
 * ln P(Z > z), good to a few per cent in its value, which is ample for a limit.
 * Source: Mills' ratio for z > 5, logistic form elsewhere (Bowling et al. 2009, from memory).
 */
function logNormalTail(z: number): number {
  if (z > 5) return -z * z / 2 - Math.log(z * Math.sqrt(2 * Math.PI))
  return -Math.log1p(Math.exp(0.07056 * z ** 3 + 1.5976 * z))
}

/** Refuses a look that can't be one, naming it by its place in the list. */
export function checkLook(look: GoldLook, i: number): void {
  positive(look.mass, `looks[${i}].mass`, 'grams above zero')
  positive(look.grain, `looks[${i}].grain`, 'milligrams above zero')
  if (!(look.recovery > 0 && look.recovery <= 1)) throw new InputError(`looks[${i}].recovery`, look.recovery, 'a share above 0 and at most 1')
  if (!(look.relativeSd >= 0 && Number.isFinite(look.relativeSd))) throw new InputError(`looks[${i}].relativeSd`, look.relativeSd, 'zero or more')
  const value = Object.values(look.found)[0] as number
  if (!(value >= 0 && Number.isFinite(value))) throw new InputError(`looks[${i}].found`, value, 'g/t, zero or more')
}
