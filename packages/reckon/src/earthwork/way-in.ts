import { finite, InputError } from '../core/index.ts'

/** One place along a way in, from the portal inward: distance along it, sill and back as heights, and width. */
export interface WayStation {
  readonly at: number
  readonly sill: number
  readonly back: number
  readonly width: number
}

export interface WayLeg {
  readonly from: number
  readonly to: number
  /** Rise over run of the sill, inward up positive. */
  readonly grade: number
}

export interface WayIn {
  readonly length: number
  readonly legs: readonly WayLeg[]
  /** Fall of the whole sill towards the portal, rise over run; negative when it falls inward. */
  readonly fall: number
  /** Where water stands when it can only run out along the sill: from, to, and the greatest depth. */
  readonly ponds: readonly { readonly from: number, readonly to: number, readonly depth: number }[]
  /** Least head room and least width, and where. */
  readonly lowest: { readonly at: number, readonly headRoom: number }
  readonly narrowest: { readonly at: number, readonly width: number }
  readonly steepest: WayLeg
}

/**
 * What a barrow and a person meet along a way in: its grades, where water stands, the low and the narrow places.
 *
 * Between stations sill, back and width run straight; a pond reaches inward from a rise in the sill until the sill stands as high again.
 * @param stations  two or more from the portal inward, `at` rising; heights in one datum; metres or feet throughout
 * @throws InputError for fewer than two, `at` that does not rise, or a back below its sill
 */
export function wayIn(stations: readonly WayStation[]): WayIn {
  checkWay(stations)
  const [first, last] = [stations[0]!, stations.at(-1)!]
  const legs = stations.slice(1).map((next, i): WayLeg => {
    const own = stations[i]!
    return { from: own.at, to: next.at, grade: (next.sill - own.sill) / (next.at - own.at) }
  })
  const lowest = least(stations, s => s.back - s.sill), narrowest = least(stations, s => s.width)
  return {
    length: last.at - first.at, legs, fall: (last.sill - first.sill) / (last.at - first.at), ponds: pondsOf(stations),
    lowest: { at: lowest.at, headRoom: lowest.back - lowest.sill }, narrowest: { at: narrowest.at, width: narrowest.width },
    steepest: legs.reduce((most, leg) => Math.abs(leg.grade) > Math.abs(most.grade) ? leg : most),
  }
}

/** Throws InputError unless the stations are a way that can be followed. */
export function checkWay(stations: readonly WayStation[]): void {
  if (stations.length < 2) throw new InputError('stations', stations, 'two or more places along the way')
  for (const [i, { at, sill, back, width }] of stations.entries()) {
    for (const [name, value] of [['at', at], ['sill', sill], ['back', back], ['width', width]] as const) finite(value, `stations[${i}].${name}`)
    const before = stations[i - 1]
    if (before && at <= before.at) throw new InputError(`stations[${i}].at`, at, `a distance beyond the place before it, ${before.at}`)
    if (back < sill) throw new InputError(`stations[${i}].back`, back, `a height above the sill, ${sill}`)
    if (width < 0) throw new InputError(`stations[${i}].width`, width, 'a width of zero or more')
  }
}

const least = (stations: readonly WayStation[], of: (s: WayStation) => number): WayStation => stations.reduce((low, s) => of(s) < of(low) ? s : low)

function pondsOf(stations: readonly WayStation[]): WayIn['ponds'] {
  const ponds: { from: number, to: number, depth: number }[] = []
  let rim = stations[0]!, open: { from: number, to: number, depth: number } | undefined
  for (const [i, s] of stations.entries()) {
    if (s.sill >= rim.sill) {
      if (open) {
        const before = stations[i - 1]!
        open.to = s.sill === before.sill ? before.at : before.at + (s.at - before.at) * (rim.sill - before.sill) / (s.sill - before.sill)
        ponds.push(open)
        open = undefined
      }
      rim = s
      continue
    }
    open ??= { from: rim.at, to: s.at, depth: 0 }
    open.depth = Math.max(open.depth, rim.sill - s.sill)
    open.to = s.at
  }
  return open ? [...ponds, open] : ponds
}
