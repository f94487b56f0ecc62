import { InputError, positive } from '../../core/index.ts'

/** A positive quantity thought to be about `median`, give or take a `factor` (one standard deviation of its logarithm). */
export interface AboutFactor { readonly median: number, readonly factor: number }

/** What is thought of a variogram before any sample; whatever is left out is open: flat in the logarithm, the nugget's share flat from 0 to 1. */
export interface VariogramPrior {
  /** Nugget and partial sill together. */
  readonly sill?: AboutFactor
  readonly range?: AboutFactor
  /** Nugget over sill, Beta(a, b). */
  readonly nuggetShare?: { readonly a: number, readonly b: number }
}

/** @throws InputError on a median, a or b not above zero, or a factor not above 1 */
export function checkPrior({ sill, range, nuggetShare }: VariogramPrior): void {
  for (const [name, about] of [['sill', sill], ['range', range]] as const) {
    if (about === undefined) continue
    positive(about.median, `prior.${name}.median`)
    if (!(about.factor > 1 && Number.isFinite(about.factor))) throw new InputError(`prior.${name}.factor`, about.factor, 'a factor above 1')
  }
  if (nuggetShare !== undefined) {
    positive(nuggetShare.a, 'prior.nuggetShare.a')
    positive(nuggetShare.b, 'prior.nuggetShare.b')
  }
}

/** Log density in (log sill, log range, share), up to a constant. */
export function logPrior(
  { sill, range, nuggetShare }: VariogramPrior, at: { readonly sill: number, readonly range: number, readonly nuggetShare: number },
): number {
  const about = (value: number, prior: AboutFactor | undefined) =>
    prior === undefined ? 0 : -0.5 * (Math.log(value / prior.median) / Math.log(prior.factor)) ** 2
  const share = nuggetShare === undefined ? 0
    : (nuggetShare.a - 1) * Math.log(at.nuggetShare) + (nuggetShare.b - 1) * Math.log(1 - at.nuggetShare)
  return about(at.sill, sill) + about(at.range, range) + share
}
