import { InputError, positive } from '../core/index.ts'

/**
 * Density of air-free water at atmospheric pressure, t/m³.
 * @param celsius  0 to 100
 * Source: Kell, J. Chem. Eng. Data 20, 1975, 97 (from memory); table values 0.999975 at 4 C, 0.99821 at 20 C (from memory).
 */
export function waterDensity(celsius: number): number {
  if (!(celsius >= 0 && celsius <= 100)) throw new InputError('temperature_C', celsius, '0 to 100')
  const t = celsius
  const top = 999.83952 + t * (16.945176 + t * (-7.9870401e-3 + t * (-46.170461e-6 + t * (105.56302e-9 - t * 280.54253e-12))))
  return top / (1 + 16.879850e-3 * t) / 1000
}

/** A lump weighed dry and hanging in water. Masses in any one unit. */
export interface Immersion {
  readonly dry: number
  readonly inWater: number
  /** Of the water; 15 unless said. */
  readonly celsius?: number
  /** One standard deviation of a weighing, in the unit of the masses; 0 unless said. */
  readonly weighingSd?: number
}

/**
 * Density of a lump by what it loses in water, t/m³, with one standard deviation from the weighing.
 *
 * A lump that soaks up water while it hangs reads too dense: wax or wrap it so that pores count.
 * @throws InputError
 * Source: Archimedes' principle; water as in `waterDensity`.
 */
export function immersionDensity({ dry, inWater, celsius = 15, weighingSd = 0 }: Immersion): { readonly density: number, readonly sd: number } {
  positive(dry, 'dry')
  if (!(inWater >= 0 && inWater < dry)) throw new InputError('in_water', inWater, `zero or more and less than the dry mass (${dry}); a lump that floats needs another way`)
  if (!(weighingSd >= 0 && Number.isFinite(weighingSd))) throw new InputError('weighing_sd', weighingSd, 'zero or more')
  const water = waterDensity(celsius), loss = dry - inWater
  // d(rho)/d(dry) = -rho_w inWater / loss², d(rho)/d(inWater) = rho_w dry / loss²
  return { density: water * dry / loss, sd: water * weighingSd * Math.hypot(dry, inWater) / loss ** 2 }
}

/** One part of a mixture: its share of the mass, its density in t/m³. */
export interface Part { readonly share: number, readonly density: number }

/**
 * Density of a mixture from the masses of its parts, with empty room between them: (1 - voids) / sum of share over density.
 *
 * Use for quartz with sulphides, and, with voids, for broken rock or a vuggy vein.
 * @param parts  shares of the mass; they are taken in proportion
 * @param voids  share of the whole volume that is empty, 0 unless said
 * @throws InputError
 * Source: volumes add.
 */
export function mixtureDensity(parts: readonly Part[], voids = 0): number {
  if (parts.length === 0) throw new InputError('parts', parts, 'one or more parts')
  if (!(voids >= 0 && voids < 1)) throw new InputError('voids', voids, 'a share from 0 to less than 1')
  parts.forEach(({ share, density }, i) => { positive(share, `parts[${i}].share`); positive(density, `parts[${i}].density`) })
  const mass = parts.reduce((sum, p) => sum + p.share, 0)
  return (1 - voids) * mass / parts.reduce((sum, p) => sum + p.share / p.density, 0)
}

/** Share of the volume that is empty when rock of a density fills a space with so much mass a volume. */
export function voidsOf(bulk: number, solid: number): number {
  positive(bulk, 'bulk')
  positive(solid, 'solid')
  if (bulk > solid) throw new InputError('bulk', bulk, `no more than the rock itself (${solid})`)
  return 1 - bulk / solid
}
