import { finite, InputError } from '../../core/index.ts'
import type { Point2, Sample, VariogramModel } from '../model.ts'
import { simulateExact } from './simulate-exact.ts'
import { simulateSequential } from './simulate-sequential.ts'
import { placeSimulation } from './places.ts'
import type { Places } from './places.ts'

export interface SimulateOptions {
  readonly realisations: number
  /** A whole number; the same seed gives the same numbers, and realisation r is the same however many are asked for. */
  readonly seed: number
  /** Known mean of the field; 0 unless given, as for Gaussian scores. */
  readonly mean?: number
  /** Variance of each sample's error of measurement, per point; 0 is exact. */
  readonly errorVariance?: readonly number[]
  /** Go from place to place, each from this many nearest places already known. Not given: exact up to 1,200 places, else 32. */
  readonly neighbours?: number
}

export interface Simulation {
  /** One array per realisation: the value at each target, in the order given. */
  readonly realisations: readonly Float64Array[]
  readonly method: 'exact' | 'sequential'
}

/** Samples and targets together up to this many are simulated from one Cholesky factor: below half a second. */
const EXACT = 1200
/** Neighbours in the sequential method unless given. */
const NEIGHBOURS = 32

/**
 * Draws Gaussian fields that have the model's covariance and honour the samples.
 *
 * Exact: one Cholesky factor of all places. Sequential: each realisation is the simple kriging mean from all samples (the 64 nearest,
 * beyond 1,500 of them) plus an error field that is zero at the samples, drawn along a coarse-to-fine path from the nearest places
 * already drawn. So the mean over realisations has no error of the path, only that of chance, whatever the neighbourhood;
 * the neighbourhood touches the covariance of the error field alone.
 * @param points  rows of [x, y, value]; may be empty for a field without data; not modified
 * @param targets  rows of [x, y]; a target at an exact sample takes its value; targets at one place take one value
 * @throws InputError on what is not finite, realisations that are not a whole number >= 0, a seed that is not a whole number;
 *   DegenerateError 'singular' as `krige`
 * Source: Chiles, J.-P. and Delfiner, P. (2012) Geostatistics, 2nd ed., ch. 7 (conditioning by kriging, sequential simulation);
 * order of the path: Guinness, J. (2018) Technometrics 60: 415-429, doi:10.1080/00401706.2018.1437476.
 */
export function simulate(points: readonly Sample[], targets: readonly Point2[], model: VariogramModel, options: SimulateOptions): Simulation {
  const { realisations, seed, neighbours } = options
  if (!(Number.isInteger(realisations) && realisations >= 0)) throw new InputError('realisations', realisations, 'a whole number, 0 or more')
  if (!Number.isSafeInteger(seed)) throw new InputError('seed', seed, 'a whole number')
  if (neighbours !== undefined && !(Number.isInteger(neighbours) && neighbours >= 1)) throw new InputError('neighbours', neighbours, 'a whole number, 1 or more')
  const places = placeSimulation(points, targets, model, finite(options.mean ?? 0, 'mean'), options.errorVariance)
  const exact = neighbours === undefined && places.samples.count + places.count <= EXACT
  const draw = exact ? simulateExact : simulateSequential
  const drawn = draw(places, realisations, seed, neighbours ?? NEIGHBOURS)
  return { realisations: drawn.map(values => atTargets(places, values)), method: exact ? 'exact' : 'sequential' }
}

/** Values at the targets in the order given, from values at the places drawn. */
function atTargets({ target, fixed }: Places, drawn: Float64Array): Float64Array {
  const values = fixed.slice()
  for (let t = 0; t < values.length; t++) {
    const place = target[t]!
    if (place >= 0) values[t] = drawn[place]!
  }
  return values
}
