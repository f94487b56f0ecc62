import { DegenerateError } from '../../core/index.ts'
import { across, fitSurface, misfitOf } from './surface-model.ts'
import type { BreakLine, FittedSurface, SurfaceData, SurfaceKind } from './surface-model.ts'

/** How one kind of surface foretells places that were left out. */
export interface SurfaceTrial {
  readonly kind: SurfaceKind
  /** Root mean square error of foretold contacts, metres. */
  readonly rms: number
  /** How much less it errs than one plane, in standard errors of the log of that between stretches; negative when it errs more. 0 for the plane itself. */
  readonly better: number
  /** Fitted to everything. */
  readonly surface: FittedSurface
}

export interface SurfaceChoice {
  readonly chosen: SurfaceTrial
  /** Every kind that could be tried, the plane first. */
  readonly trials: readonly SurfaceTrial[]
  /** For a bend or a step: the other places on the same line's heading where the break may as well be, from low to high `at`. */
  readonly breakRange?: { readonly low: number, readonly high: number }
  readonly stretches: number
}

/** Kinds beside the plane, the one that costs least first. A step is a fault that nobody read; a bend is two planes that meet. */
const kinds = ['bend', 'step', 'curve'] as const
const leastPlaces = 12
const mostStretches = 12
/** Observations needed on each side of a break. */
const leastSide = 4
/** Standard errors by which another kind must beat the plane. On planes with swells and nothing else chance alone passes this fewer than one time in ten. */
export const convincing = 2.5
const [coarse, fine] = [{ turns: 4, places: 9 }, { turns: 12, places: 25 }]
const likely = 1.642 // chi-square, one degree of freedom, 80 %

/**
 * Whether a vein is one plane, two planes that meet, a plane broken by a step, or gently curved: the kind that best foretells places that were left out.
 *
 * The vein is cut into stretches along its longer way; each is left out in turn and foretold from the rest, the break being sought anew each time,
 * because neighbouring places share the same swell and would foretell each other. Errors are compared by their logarithm, stretch by stretch, so
 * that one bad stretch does not decide. One plane stands unless another kind errs less by two and a half standard errors of that.
 * @throws DegenerateError("too few") for fewer than 12 places; ("collinear") when the places do not settle a plane
 * Source: cross-validation by blocks with a rule of standard errors: Breiman, Friedman, Olshen and Stone, Classification and Regression Trees, 1984
 * (from memory; the threshold is ours).
 */
export function chooseSurface(data: SurfaceData): SurfaceChoice {
  const count = data.points.length
  if (count < leastPlaces) throw new DegenerateError('too few', 'points', count, `${leastPlaces} or more places on the vein`)
  const plane = fitSurface({ kind: 'plane' }, data)
  if (!plane) throw new DegenerateError('collinear', 'points', count, 'places that settle a plane')
  const folds = stretchesOf(data)
  const errors = new Map<SurfaceKind, readonly FoldError[]>()
  for (const kind of ['plane', ...kinds] as const) {
    const found = folds.map(({ rest, out }): FoldError | undefined => {
      const surface = bestOf(kind, rest, coarse)
      if (!surface) return undefined
      return { all: misfitOf(surface, out), places: misfitOf(surface, { points: out.points.map(p => ({ ...p, variance: 1 })), slopes: [] }) }
    })
    if (found.every(e => e !== undefined)) errors.set(kind, found)
  }
  const base = errors.get('plane')
  const trials = [...errors].flatMap(([kind, found]): SurfaceTrial[] => {
    const surface = kind === 'plane' ? plane : bestOf(kind, data, fine)
    if (!surface || !base) return []
    const gains = found.map((e, i) => Math.log(base[i]!.all / e.all))
    const mean = gains.reduce((sum, g) => sum + g, 0) / gains.length
    const error = Math.sqrt(gains.reduce((sum, g) => sum + (g - mean) ** 2, 0) / (gains.length * (gains.length - 1)))
    return [{ kind, surface, rms: Math.sqrt(found.reduce((sum, e) => sum + e.places, 0) / count), better: kind === 'plane' || error === 0 ? 0 : mean / error }]
  })
  const first = trials[0] ?? { kind: 'plane', surface: plane, rms: Math.sqrt(plane.misfit / count), better: 0 }
  const misfit = (t: SurfaceTrial) => (errors.get(t.kind) ?? []).reduce((sum, e) => sum + Math.log(e.all), 0)
  const rivals = trials.filter(t => t.kind !== 'plane' && t.better >= convincing).sort((a, b) => misfit(a) - misfit(b))
  const chosen = rivals[0] ?? first
  const { line } = chosen.surface
  return { chosen, trials, stretches: folds.length, ...(line ? { breakRange: rangeOfBreak(chosen.surface, line, data) } : {}) }
}

interface FoldError { readonly all: number, readonly places: number }

/** Cuts the data into stretches of about as many places each, along the way in which they reach furthest. */
function stretchesOf(data: SurfaceData): readonly { readonly rest: SurfaceData, readonly out: SurfaceData }[] {
  const extent = (key: 'along' | 'down') => Math.max(...data.points.map(p => p[key])) - Math.min(...data.points.map(p => p[key]))
  const key = extent('along') >= extent('down') ? 'along' : 'down'
  const sorted = data.points.map(p => p[key]).sort((a, b) => a - b)
  const stretches = Math.min(mostStretches, Math.floor(sorted.length / 3))
  const edges = Array.from({ length: stretches - 1 }, (_, i) => sorted[Math.floor((i + 1) * sorted.length / stretches)]!)
  const stretch = (p: { readonly along: number, readonly down: number }) => edges.filter(edge => p[key] >= edge).length
  return Array.from({ length: stretches }, (_, i) => ({
    rest: { points: data.points.filter(p => stretch(p) !== i), slopes: data.slopes.filter(s => stretch(s) !== i) },
    out: { points: data.points.filter(p => stretch(p) === i), slopes: data.slopes.filter(s => stretch(s) === i) },
  })).filter(({ out }) => out.points.length > 0)
}

interface Search { readonly turns: number, readonly places: number }

/** The surface of a kind with the least misfit, over break lines where the kind has one. */
function bestOf(kind: SurfaceKind, data: SurfaceData, search: Search): FittedSurface | undefined {
  if (kind === 'plane' || kind === 'curve') return fitSurface({ kind }, data)
  let best: FittedSurface | undefined
  for (const line of linesFor(data, search)) {
    const found = fitSurface({ kind, line }, data)
    if (found && (!best || found.misfit < best.misfit)) best = found
  }
  return best
}

/** Break lines worth trying: even turns, and places between the observations. */
function linesFor(data: SurfaceData, { turns, places }: Search): readonly BreakLine[] {
  return Array.from({ length: turns }, (_, i) => i * 180 / turns).flatMap((turn): BreakLine[] => {
    const values = [...data.points, ...data.slopes].map(o => across({ turn, at: 0 }, o.along, o.down)).sort((a, b) => a - b)
    const [low, high] = [values[leastSide]!, values[values.length - 1 - leastSide]!]
    if (!(high > low)) return []
    return Array.from({ length: places }, (_, k) => ({ turn, at: low + (high - low) * k / (places - 1) }))
  })
}

/** Where along its own heading a break may be moved before the misfit says no: 80 %. */
function rangeOfBreak(surface: FittedSurface, line: BreakLine, data: SurfaceData): { readonly low: number, readonly high: number } {
  const spare = Math.max(1, surface.misfit / Math.max(1, data.points.length + 2 * data.slopes.length - 5))
  const held = sameTurn(data, line)
    .filter((at) => {
      const found = fitSurface({ kind: surface.kind, line: { ...line, at } }, data)
      return found && (found.misfit - surface.misfit) / spare <= likely
    })
  return { low: Math.min(line.at, ...held), high: Math.max(line.at, ...held) }
}

function sameTurn(data: SurfaceData, { turn }: BreakLine): readonly number[] {
  const values = [...data.points, ...data.slopes].map(o => across({ turn, at: 0 }, o.along, o.down)).sort((a, b) => a - b)
  const [low, high] = [values[leastSide]!, values[values.length - 1 - leastSide]!]
  return high > low ? Array.from({ length: 60 }, (_, k) => low + (high - low) * k / 59) : []
}
