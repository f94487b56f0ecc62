import { radians, type Enu } from '@lodebook/reckon'
import { stated } from './stated.ts'

/** WGS 84: half the equator's diameter in metres, and the square of the eccentricity. Source: NGA.STND.0036 (from memory). */
const a = 6378137
const e2 = 0.00669437999014

/**
 * Latitude and longitude of a point of the mine's frame, degrees, by the two radii of curvature at its origin. Within 200 m of the origin
 * that is good to 3 mm.
 */
export function geographic([east, north]: Enu): { readonly latitude: number, readonly longitude: number } {
  const s = Math.sin(radians(stated.latitude)), w = Math.sqrt(1 - e2 * s * s)
  const meridian = a * (1 - e2) / w ** 3, parallel = a / w * Math.cos(radians(stated.latitude))
  return { latitude: stated.latitude + north / meridian * 180 / Math.PI, longitude: stated.longitude + east / parallel * 180 / Math.PI }
}
