import { DegenerateError, InputError } from '../../core/index.ts'

/** A width taped so far along a vein, with one standard deviation of its own. */
export interface WidthAlong { readonly at: number, readonly width: number, readonly sigma: number }

export interface SmoothPoint { readonly at: number, readonly mean: number, /** One standard deviation of the mean. */ readonly sigma: number }

export interface SmoothWidth {
  /** Reach of the average, one standard deviation of its bell; Infinity when an average over all foretells as well as any. */
  readonly reach: number
  /** Plain weighted mean of all. */
  readonly overall: number
  /** How far single widths stand from the running mean, one standard deviation. */
  readonly scatter: number
  readonly points: readonly SmoothPoint[]
}

const reaches = [1 / 32, 1 / 16, 1 / 8, 1 / 4, 1 / 2] // of the stretch

/**
 * A running mean of widths along a vein, whose reach is the one that best foretells each width from the others.
 *
 * A width counts by a bell about the place, and less for its own doubt. If no reach foretells better than the plain mean by more than
 * one standard error, the plain mean stands: the widths then do not show that the vein swells or pinches.
 * @param steps  how many even places between the first and the last
 * @throws DegenerateError("too few") for none; InputError
 * Source: kernel regression, Nadaraya, Theory Probab. Appl. 9, 1964, 141 and Watson, Sankhya A 26, 1964, 359 (from memory); left out one at a time.
 */
export function smoothAlong(widths: readonly WidthAlong[], steps = 80): SmoothWidth {
  if (widths.length === 0) throw new DegenerateError('too few', 'widths', 0, 'one width or more')
  widths.forEach(({ at, width, sigma }, i) => {
    if (!Number.isFinite(at)) throw new InputError(`widths[${i}].at`, at, 'a finite number')
    if (!(width >= 0 && Number.isFinite(width))) throw new InputError(`widths[${i}].width`, width, 'zero or more')
    if (!(sigma >= 0 && Number.isFinite(sigma))) throw new InputError(`widths[${i}].sigma`, sigma, 'zero or more')
  })
  const places = widths.map(w => w.at)
  const [first, last] = [Math.min(...places), Math.max(...places)]
  const plain = widths.reduce((sum, w) => sum + w.width, 0) / widths.length
  const spread = widths.reduce((sum, w) => sum + (w.width - plain) ** 2, 0) / Math.max(1, widths.length - 1)
  const own = widths.map(w => 1 / (spread + w.sigma ** 2 || 1)) // all alike when nothing is in doubt
  const leftOut = (reach: number) => widths.map((w, i) => w.width - meanAt(widths, own, w.at, reach, i).mean)
  const base = leftOut(Infinity)
  let best = { reach: Infinity, errors: base }
  if (widths.length >= 6 && last > first) {
    for (const share of reaches) {
      const errors = leftOut(share * (last - first))
      if (errors.every(Number.isFinite) && sum2(errors) < sum2(best.errors)) best = { reach: share * (last - first), errors }
    }
    const gains = base.map((e, i) => e * e - best.errors[i]! ** 2)
    const gain = gains.reduce((sum, g) => sum + g, 0) / gains.length
    const error = Math.sqrt(gains.reduce((sum, g) => sum + (g - gain) ** 2, 0) / (gains.length * (gains.length - 1)))
    if (!(gain > error)) best = { reach: Infinity, errors: base }
  }
  const scatter = Math.sqrt(sum2(best.errors.filter(Number.isFinite)) / Math.max(1, widths.length))
  return {
    reach: best.reach, overall: meanAt(widths, own, first, Infinity).mean, scatter,
    points: Array.from({ length: last > first ? steps : 1 }, (_, i) => {
      const at = steps > 1 ? first + (last - first) * i / (steps - 1) : first
      const { mean, share } = meanAt(widths, own, at, best.reach)
      return { at, mean, sigma: scatter * Math.sqrt(share) }
    }),
  }
}

const sum2 = (values: readonly number[]): number => values.reduce((sum, v) => sum + v * v, 0)

interface MeanAt { readonly mean: number, readonly share: number }

/** Weighted mean about a place, and the sum of squared weights: 1 over the number of widths that really count. */
function meanAt(widths: readonly WidthAlong[], own: readonly number[], at: number, reach: number, leave = -1): MeanAt {
  let [total, sum, squares] = [0, 0, 0]
  widths.forEach((w, i) => {
    if (i === leave) return
    const weight = own[i]! * (reach === Infinity ? 1 : Math.exp(-(((w.at - at) / reach) ** 2) / 2))
    total += weight
    sum += weight * w.width
    squares += weight * weight
  })
  return { mean: sum / total, share: squares / (total * total) }
}
