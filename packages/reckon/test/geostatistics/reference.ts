import { readFileSync } from 'node:fs'
import type { Point2, Sample, Structure, StructureType, VariogramModel } from '@lodebook/reckon/geostatistics'

/** Reads what stands in checks/: reference results (gstat 2.1-0 under R 4.2.2, the scripts beside them) and data sets. */
const at = (path: string) => new URL(`../../../../checks/${path}`, import.meta.url)

export const json = <T>(name: string): T => JSON.parse(readFileSync(at(`reference/${name}.json`), 'utf8')) as T

/** A CSV file as columns of numbers, by header. */
export function columns(path: string): (name: string) => number[] {
  const [head, ...lines] = readFileSync(at(path), 'utf8').trim().split(/\r?\n/)
  const names = head!.split(',').map(name => name.replaceAll('"', ''))
  const rows = lines.map(line => line.split(','))
  return name => rows.map(row => Number(row[names.indexOf(name)]))
}

export function samplesOf(path: string, value: string, map: (value: number) => number = v => v): Sample[] {
  const column = columns(path)
  const [xs, ys, vs] = [column('x'), column('y'), column(value)]
  return xs.map((x, i) => [x, ys[i]!, map(vs[i]!)])
}

export function placesOf(path: string): Point2[] {
  const column = columns(path)
  const ys = column('y')
  return column('x').map((x, i) => [x, ys[i]!])
}

export const logZinc = (): Sample[] => samplesOf('reference/meuse.csv', 'zinc', Math.log)

interface GstatModel { models: { model: string, psill: number, range: number, kappa: number, ang1: number, anis1: number }[] }

const TYPES: Record<string, StructureType> = { Sph: 'spherical', Exp: 'exponential', Gau: 'gaussian', Mat: 'matern' }

/** A model as gstat writes it, in our terms. */
export function modelOf({ models }: GstatModel): VariogramModel {
  const structures = models.filter(m => m.model !== 'Nug').map((m): Structure => ({
    type: TYPES[m.model]!, partialSill: m.psill, range: m.range, azimuth: m.ang1, ratio: m.anis1,
    ...(m.model === 'Mat' && { smoothness: m.kappa as 0.5 | 1.5 | 2.5 }),
  }))
  return { nugget: models.find(m => m.model === 'Nug')?.psill ?? 0, structures }
}

export interface PredictionCase { pred: number[], var: number[] }
export interface VariogramCase { np: number[], dist: number[], gamma: number[], 'dir.hor': number[] }

/** The largest relative difference, |a - b| / max(|b|, floor). */
export function worst(actual: ArrayLike<number>, expected: readonly number[], floor = 1): number {
  if (actual.length !== expected.length) return Infinity
  return expected.reduce((most, value, i) => Math.max(most, Math.abs(actual[i]! - value) / Math.max(Math.abs(value), floor)), 0)
}
