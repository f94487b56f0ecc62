import { InputError } from '../core/index.ts'

/** Half the equator's diameter, metres, and the flattening. */
export interface Ellipsoid { readonly a: number, readonly f: number }

/**
 * Figures of the earth by name. Changing the ellipsoid does not change the datum: an old map's grid may lie a hundred metres and more from
 * the same figures on WGS84.
 * Source: Snyder, Map Projections: A Working Manual, USGS Professional Paper 1395 (1987), table 1 (M); WGS84 and GRS80 by definition.
 */
export const ellipsoids = {
  WGS84: { a: 6378137, f: 1 / 298.257223563 },
  GRS80: { a: 6378137, f: 1 / 298.257222101 },
  'Clarke 1866': { a: 6378206.4, f: (6378206.4 - 6356583.8) / 6378206.4 },
  'International 1924': { a: 6378388, f: 1 / 297 },
} as const satisfies Record<string, Ellipsoid>

export type EllipsoidName = keyof typeof ellipsoids

/** @throws InputError for a name that is not in the list */
export function ellipsoidOf(name: string): Ellipsoid {
  if (!Object.hasOwn(ellipsoids, name)) throw new InputError('ellipsoid', name, Object.keys(ellipsoids).join(', '))
  return ellipsoids[name as EllipsoidName]
}
