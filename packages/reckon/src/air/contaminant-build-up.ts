import { finite, InputError, positive } from '../core/index.ts'

/**
 * Strength of a gas given off steadily into a ventilated place: c = q / (n V) (1 - exp(-n t)), from clean air, mixing perfectly.
 * @param sourceM3H  gas given off, m3/h, zero or more
 * @param volumeM3  air in the place, above zero
 * @param changesPerHour  fresh air, volumes of the place an hour, zero or more
 * @param hours  since it began, zero or more
 * @returns share by volume, m3/m3
 * @throws InputError for values outside those
 * Source: engineeringtoolbox.com, room pollution concentration (table for q = V = 1).
 */
export function contaminantBuildUp(sourceM3H: number, volumeM3: number, changesPerHour: number, hours: number): number {
  positive(volumeM3, 'volume_m3', 'cubic metres above zero')
  for (const [field, value] of [['source_m3_h', sourceM3H], ['changes_per_hour', changesPerHour], ['hours', hours]] as const) {
    if (finite(value, field) < 0) throw new InputError(field, value, 'zero or more')
  }
  const still = hours * sourceM3H / volumeM3
  return changesPerHour === 0 ? still : -Math.expm1(-changesPerHour * hours) * sourceM3H / (changesPerHour * volumeM3)
}
