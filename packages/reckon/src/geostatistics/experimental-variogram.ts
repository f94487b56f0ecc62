import { finite, InputError, positive, radians } from '../core/index.ts'
import type { Degrees } from '../core/index.ts'
import type { Lag } from './lag.ts'
import type { Sample } from './model.ts'
import { sumPairs } from './variogram-pairs.ts'

export interface VariogramOptions {
  /** Pairs further apart than this are left out; same length unit as the coordinates. */
  readonly cutoff: number
  /** Bin width: bins are (0, w], (w, 2w] ... up to the cutoff. */
  readonly width: number
  /** Only pairs along this direction, degrees clockwise from +y (and its opposite); all directions unless given. */
  readonly azimuth?: Degrees
  /** Half the angle of the fan about `azimuth`, degrees, in (0, 90]; 22.5 unless given. A pair on the very edge is in. */
  readonly tolerance?: Degrees
  /** 'classical' (Matheron, half the mean square) unless given; 'robust' is Cressie and Hawkins' fourth power of mean root differences. */
  readonly estimator?: 'classical' | 'robust'
}

/**
 * The experimental variogram of samples: pairs in bins (0, w], (w, 2w] ..., each with its pair count, mean distance and gamma.
 *
 * Bins without pairs are left out. Pairs at distance zero are in no bin. Fewer than two samples give no lags.
 * @param points  rows of [x, y, value], any length unit; not modified
 * @returns lags by increasing distance
 * @throws InputError on a coordinate or value that is not finite, a cutoff or width not above zero, a tolerance outside (0, 90]
 * Source: Matheron, G. (1963) Principles of geostatistics, Econ. Geol. 58: 1246-1266; robust form: Cressie, N. and Hawkins, D. M.
 * (1980) Robust estimation of the variogram, Math. Geol. 12: 115-125, doi:10.1007/BF01035243.
 */
export function experimentalVariogram(points: readonly Sample[], options: VariogramOptions): Lag[] {
  const { cutoff, width, azimuth, tolerance = 22.5, estimator = 'classical' } = options
  positive(cutoff, 'cutoff', 'a distance above zero')
  positive(width, 'width', 'a bin width above zero')
  if (!(tolerance > 0 && tolerance <= 90)) throw new InputError('tolerance', tolerance, 'degrees above 0 and at most 90')
  points.forEach((point, i) => point.forEach((value, j) => { if (!Number.isFinite(value)) finite(value, `points[${i}][${j}]`) }))
  const fan = azimuth === undefined || tolerance === 90 ? undefined : {
    sin: Math.sin(radians(finite(azimuth, 'azimuth', 'degrees clockwise from +y'))), cos: Math.cos(radians(azimuth)), limit: Math.cos(radians(tolerance)),
  }
  const sums = sumPairs(points, cutoff, width, fan, estimator === 'robust')
  const lags: Lag[] = []
  for (let bin = 0; bin < sums.pairs.length; bin++) {
    const pairs = sums.pairs[bin]!
    if (pairs === 0) continue
    const mean = sums.differences[bin]! / pairs
    const gamma = estimator === 'robust' ? 0.5 * mean ** 4 / (0.457 + 0.494 / pairs) : 0.5 * mean
    lags.push({ pairs, distance: sums.distances[bin]! / pairs, gamma })
  }
  return lags
}
