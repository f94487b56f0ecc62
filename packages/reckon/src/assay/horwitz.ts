import { InputError } from '../core/index.ts'

/**
 * Relative standard deviation between laboratories, per cent, that is usual at a concentration: 2^(1 - 0.5 log10 C).
 *
 * A yardstick for fine, even material. Coarse gold does far worse for reasons that are not the laboratory's.
 * @param massFraction of the metal, in (0, 1]: 1 g/t is 1e-6
 * Source: Horwitz, as in AOAC guidance (table read).
 */
export function horwitzPct(massFraction: number): number {
  if (!(massFraction > 0 && massFraction <= 1)) throw new InputError('mass_fraction', massFraction, 'above 0, at most 1')
  return 2 ** (1 - 0.5 * Math.log10(massFraction))
}
