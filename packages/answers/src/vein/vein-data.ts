import type { Entry } from '@lodebook/book'
import type { Enu } from '@lodebook/reckon'
import type { AttitudeReading, ContactPoint } from '@lodebook/reckon/structure'
import type { Located } from '../places/place-in-space.ts'
import { textOf, valueOf } from '../read.ts'
import type { North } from '../survey/north.ts'

/** Entries with their places, as the vein needs them. */
export interface Sited { readonly entry: Entry, readonly located: Located }

/** Entries that have a place, with it. */
export const sited = (entries: readonly Entry[], at: ReadonlyMap<string, Located>): readonly Sited[] =>
  entries.flatMap((entry) => { const located = at.get(entry.id); return located ? [{ entry, located }] : [] })

/** Strike and dip of a reading from grid north; undefined when it is a line, or half written. */
export function attitudeOf(entry: Entry, north: North): AttitudeReading | undefined {
  const dip = valueOf(entry, 'dip')
  const strike = valueOf(entry, 'strike')
  const dipDirection = valueOf(entry, 'dipDirection')
  if (dip === undefined || (strike === undefined && dipDirection === undefined)) return undefined
  const toGrid = (azimuth: number) => north.toGrid(azimuth, textOf(entry, 'north') ?? 'magnetic', textOf(entry, 'taken'))
  const quality = textOf(entry, 'quality')
  return { strike: strike === undefined ? (toGrid(dipDirection!) + 270) % 360 : toGrid(strike), dip, sigma: quality === 'poor' ? 8 : quality === 'fair' ? 5 : 3 }
}

const square = (s: number) => s * s

/** A place on the vein as a point to fit, its own doubt with it. */
export const contactOf = ({ located: { point, sigma } }: Sited): ContactPoint => ({
  at: point, covariance: [[square(sigma[0]), 0, 0], [0, square(sigma[1]), 0], [0, 0, square(sigma[2])]],
})

/** The name most entries give; undefined when none gives any. */
export function usualName(names: readonly (string | undefined)[]): string | undefined {
  const counts = new Map<string, number>()
  for (const name of names) if (name !== undefined) counts.set(name, (counts.get(name) ?? 0) + 1)
  return [...counts].sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1))[0]?.[0]
}

export const dot = (a: Enu, b: Enu): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
