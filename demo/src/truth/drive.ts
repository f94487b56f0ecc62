import type { Enu } from '@lodebook/reckon'
import type { Random } from '../random.ts'
import type { Path } from './path.ts'
import type { Vein } from './vein.ts'
import { add, dot, minus, rightOf, times } from './vectors.ts'
import type { Station, Working, WorkingSort } from './working.ts'

export interface Drive {
  readonly name: string
  readonly sort: WorkingSort
  readonly letter: string
  readonly path: Path
  readonly width: number
  readonly height: number
  readonly step: number
  /** A vein that the working follows: its stations are then painted on the vein in the back. */
  readonly vein?: Vein
  /** Stations that already stand where it starts and where it ends. */
  readonly first?: string
  readonly last?: string
  readonly firstNumber?: number
}

/** Sets stations along a working, a few steps apart, each with its true distances to the walls. */
export function drive(rng: Random, d: Drive): { readonly working: Working, readonly stations: readonly Station[] } {
  const marks = chainages(rng, d), stations: Station[] = [], names: string[] = []
  let number = d.firstNumber ?? (d.first === undefined ? 0 : 1)
  marks.forEach((mark, i) => {
    const standing = i === 0 ? d.first : i === marks.length - 1 ? d.last : undefined
    if (standing === undefined) stations.push(setStation(rng, d, `${d.letter}${number++}`, mark))
    names.push(standing ?? stations.at(-1)!.name)
  })
  return {
    working: { name: d.name, sort: d.sort, path: d.path, stations: names, onVein: d.vein !== undefined, chainage: marks, width: d.width, height: d.height },
    stations,
  }
}

function chainages(rng: Random, d: Drive): number[] {
  const legs = Math.max(1, Math.round(d.path.length / d.step)), even = d.path.length / legs
  return Array.from({ length: legs + 1 }, (_, i) => i === 0 || i === legs ? i * even : i * even + rng.uniform(-0.25, 0.25) * even)
}

function setStation(rng: Random, d: Drive, name: string, mark: number): Station {
  const { point: sill, azimuth } = d.path.at(mark)
  if (d.sort === 'surface') return { name, point: add(sill, [0, 0, rng.uniform(0.1, 0.5)]) }
  const width = d.width * rng.uniform(0.9, 1.15), right = rightOf(azimuth)
  if (d.sort === 'raise' || d.sort === 'winze') {
    // The path itself lies in the vein; the mark is on it, and only the side walls are taped.
    const aside = rng.uniform(-0.15, 0.15), across = times(right, aside)
    return { name, point: add(sill, across), offsets: { left: width / 2 + aside, right: width / 2 - aside, up: d.height / 2, down: d.height / 2 } }
  }
  const height = d.height * rng.uniform(0.94, 1.08)
  const up = d.vein === undefined ? height - rng.uniform(0.9, 1.6) : rng.uniform(0.04, 0.15), down = height - up
  const aside = d.vein === undefined ? rng.uniform(-0.4, 0.4) : veinAside(d.vein, add(sill, [0, 0, down]), right) + rng.normal(0, 0.08)
  const held = Math.max(-width / 2 + 0.1, Math.min(width / 2 - 0.1, aside))
  return {
    name, point: add(add(sill, times(right, held)), [0, 0, down]),
    offsets: { left: width / 2 + held, right: width / 2 - held, up, down },
  }
}

/** How far to the right of a point, on the level, the vein is met (as if no fault had moved it). */
function veinAside(vein: Vein, from: Enu, right: Enu): number {
  const d = minus(from, vein.origin), off = dot(d, vein.normal) - vein.undulation({ along: dot(d, vein.alongAxis), down: dot(d, vein.downAxis) })
  return -off / dot(right, vein.normal)
}
