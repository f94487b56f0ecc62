import type { Enu } from '@lodebook/reckon'

/** A point of a drawing, metres: to the right and up the paper. */
export interface OnSheet { readonly x: number, readonly y: number }

/** One way of looking at the mine. */
export interface View {
  readonly is: 'plan' | 'long section' | 'developed section'
  /** 'Long section along 038°, looking south-east'. */
  readonly title: string
  /** The azimuth that runs to the right; undefined for a developed section, which has none. */
  readonly right: number | undefined
  /** Where a point of the mine falls; undefined when it does not belong on the drawing. */
  readonly project: (p: Enu) => OnSheet | undefined
}

const text = (azimuth: number): string => `${String(Math.round(wrap(azimuth)) % 360).padStart(3, '0')}°`
const wrap = (azimuth: number): number => ((azimuth % 360) + 360) % 360
const winds = ['north', 'north-east', 'east', 'south-east', 'south', 'south-west', 'west', 'north-west']

/** Looking down. @param right  azimuth that runs to the right; 90 for grid north up the paper */
export function planView(right = 90): View {
  const a = right * Math.PI / 180, s = Math.sin(a), c = Math.cos(a)
  return { is: 'plan', title: wrap(right) === 90 ? 'Plan, grid north up' : `Plan, ${text(right)} to the right`, right: wrap(right), project: ([e, n]) => ({ x: e * s + n * c, y: n * s - e * c }) }
}

/** Looking level, square to an azimuth that runs to the right; everything is projected onto one upright sheet. */
export function sectionView(right: number): View {
  const a = right * Math.PI / 180, s = Math.sin(a), c = Math.cos(a)
  return {
    is: 'long section', title: `Long section along ${text(right)}, looking ${winds[Math.round(wrap(right + 270) / 45) % 8]!}`, right: wrap(right),
    project: ([e, n, u]) => ({ x: e * s + n * c, y: u }),
  }
}

/** Things further than this from the line of a developed section are not on it, metres. */
const besideLine = 4

/**
 * A section along a heading as it bends, unrolled: to the right the level distance along its stations, up the elevation.
 * @param line  its stations in order, two or more
 */
export function developedView(name: string, line: readonly Enu[]): View {
  let at = 0
  const legs = line.slice(1).flatMap((b, i) => {
    const a = line[i]!, e = b[0] - a[0], n = b[1] - a[1], level = Math.hypot(e, n), from = at
    at += level
    return level > 0 ? [{ a, e: e / level, n: n / level, level, from }] : []
  })
  return {
    is: 'developed section', title: `Section along ${name} as it bends, unrolled`, right: undefined,
    project: (p) => {
      let best: OnSheet | undefined, least = besideLine
      legs.forEach(({ a, e, n, level, from }, i) => {
        const d = [p[0] - a[0], p[1] - a[1]] as const, along = d[0] * e + d[1] * n
        // Beyond its ends the line goes on straight.
        const low = i === 0 ? -besideLine : 0, high = i === legs.length - 1 ? level + besideLine : level, on = Math.min(high, Math.max(low, along))
        const off = Math.hypot(d[0] - on * e, d[1] - on * n)
        if (off <= least) { least = off; best = { x: from + on, y: p[2] } }
      })
      return best
    },
  }
}
