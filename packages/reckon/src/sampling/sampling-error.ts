import { InputError, positive } from '../core/index.ts'

/** What was taken from what. Sizes in centimetres, masses in grams, grade in grams per tonne. */
export interface GoldLot {
  /** Size that 95 % of the broken rock passes. */
  readonly nominalSizeCm: number
  /** Mass of the sample. */
  readonly massG: number
  /** Mass it was split from; leave out when that is very large beside the sample. */
  readonly lotMassG?: number
  readonly gradeGPerT: number
  /** Size at which the gold comes free: about that of its largest grains. */
  readonly liberationSizeCm: number
  /** Volume of a piece over that of its cube: 0.5 for most broken rock, 0.2 for flat gold. */
  readonly shape?: number
  /** 0.25 for unsized broken rock, 0.5 for sized. */
  readonly granulometric?: number
  readonly goldDensity?: number
  /** How fast liberation falls as pieces grow: (dl/d) to this power. */
  readonly exponent?: number
}

export interface SamplingError {
  /** One standard deviation of the sample's grade over the lot's, as a share. */
  readonly relativeSd: number
  /** C = c f g l, g/cm³: relative variance is C d³ (1/sample - 1/lot). */
  readonly samplingConstant: number
  readonly liberationFactor: number
}

/** Usual factors for gold in quartz, and the density of native gold used throughout, g/cm³. */
export const usualGold = { shape: 0.5, granulometric: 0.25, density: 19.3, exponent: 1.5 } as const

/**
 * The smallest error that taking a sample of broken ore can have, because gold is in few grains (Gy's fundamental error, gold form).
 *
 * Real samples are worse: this takes every piece as equally likely to be taken.
 * @returns relative standard deviation; above about 0.3 a lognormal or a count of grains tells more than this number
 * @throws InputError
 * Source: Gy's formula in Francois-Bongarcon's form for gold, s² = c f g l d³ (1/Ms - 1/Ml), l = (dl/d)^b, c = density/grade (from memory; form cited in
 * Minnitt et al., J. SAIMM 117, 2017).
 */
export function samplingError(lot: GoldLot): SamplingError {
  const { nominalSizeCm: size, massG: mass, liberationSizeCm: free } = lot
  const { shape = usualGold.shape, granulometric = usualGold.granulometric, goldDensity = usualGold.density, exponent = usualGold.exponent } = lot
  const checks = { nominal_size_cm: size, mass_g: mass, grade_g_t: lot.gradeGPerT, liberation_size_cm: free, shape, granulometric, gold_density: goldDensity }
  for (const [field, value] of Object.entries(checks)) positive(value, field)
  if (!(exponent >= 0 && exponent <= 3)) throw new InputError('exponent', exponent, '0 to 3')
  if (lot.lotMassG !== undefined && !(lot.lotMassG >= mass)) throw new InputError('lot_mass_g', lot.lotMassG, `at least the sample's mass (${mass})`)
  const liberationFactor = size <= free ? 1 : (free / size) ** exponent
  const samplingConstant = goldDensity / (lot.gradeGPerT * 1e-6) * shape * granulometric * liberationFactor
  return {
    relativeSd: Math.sqrt(fundamentalVariance({ samplingConstant, sizeCm: size, massG: mass, ...lot.lotMassG !== undefined && { lotMassG: lot.lotMassG } })),
    samplingConstant, liberationFactor,
  }
}

/** A sample of broken rock whose sampling constant C is known. */
export interface BrokenSample {
  readonly samplingConstant: number
  readonly sizeCm: number
  readonly massG: number
  readonly lotMassG?: number
}

/** Relative variance of a sample from a sampling constant: C d³ (1/sample - 1/lot). */
export function fundamentalVariance({ samplingConstant, sizeCm, massG, lotMassG }: BrokenSample): number {
  return samplingConstant * sizeCm ** 3 * (1 / massG - (lotMassG === undefined ? 0 : 1 / lotMassG))
}

/** Mass in grams that brings the relative standard deviation down to `relativeSd`, from a lot that is very large beside it. */
export function massForError(samplingConstant: number, sizeCm: number, relativeSd: number): number {
  positive(samplingConstant, 'sampling_constant')
  positive(sizeCm, 'size_cm')
  positive(relativeSd, 'relative_sd')
  return samplingConstant * sizeCm ** 3 / relativeSd ** 2
}
