import type { Model } from './model.ts'
import type { Solution } from './solve-network.ts'
import type { AdjustedStation, GlobalTest, NetworkInput, NetworkPart, NetworkResult, StationPair } from './types.ts'
import type { BlockMatrix } from '../sparse/block-cholesky.ts'
import type { Enu } from '../../core/index.ts'
import type { Covariance3 } from '../matrix3.ts'
import chiSquareCdf from '@stdlib/stats-base-dists-chisquare-cdf'
import { degrees } from '../../core/index.ts'
import { errorEllipse } from '../error-ellipse.ts'
import { add3, scale3, transpose3 } from '../matrix3.ts'
import { adjustedReadings, adjustedShots } from './compare.ts'
import { cautionsOf } from './cautions.ts'
import { checkNetworkInput } from './check-input.ts'
import { blockCovariances, covarianceOf, rowCovariance } from './cofactors.ts'
import { orderUnknowns } from './elimination-order.ts'
import { listRows } from './equations.ts'
import { adjustAndExamine } from './find-blunders.ts'
import { looseStations } from './loose.ts'
import { buildModel } from './model.ts'
import { nameSuspects } from './name-suspects.ts'

/**
 * Adjusts a whole network of hand survey by least squares in three dimensions: every distance, azimuth, inclination and backsight is an
 * observation of its own, so that a blunder can be named down to the reading. Nothing that is wrong with the survey is thrown and nothing
 * is taken out: loops that miss, parts that hang on nothing and readings that disagree are all in the result.
 *
 *     adjustNetwork({ shots, ties, options }) ->
 *       { stations: Map name -> { point, covariance, sigma, ellipse, part, held }, floating, undetermined, parts,
 *         shots, readings, suspects, test, instruments, pairs, converged, iterations, cautions }
 *
 * @param shots  slope distances and grid azimuths with index corrections applied; see NetworkShot
 * @param ties   what places the network; a tie without sigma is held exactly. At least one in each part that is to be located
 * @param options  precision of the readings (metres by default), errors that a set of instruments shares, pairs of stations to compare
 * @returns points in the frame of the ties. Covariances are a priori: they come from the stated precision and not from how well loops close
 * @throws InputError naming the field when a reading is out of range (`shots[3].azimuth`), a shot goes to its own station, or a station is
 *         held at two points
 * Steep sights: an azimuth's error grows with the tangent of the inclination (the compass is held out of level), and beyond 87.1° angles are
 * taken as offsets square to the sight; a plumbed shot needs no azimuth.
 * Accuracy: the least squares solution to 1e-8 of the usual shot length. Where readings are so far off that there is no settling on one,
 * `converged` is false and points are one linear step about the readings that agree.
 * Cost: near linear in the number of stations for the loops mines have; see docs/methods/survey.md.
 * Source: Ghilani, Adjustment Computations, ch. 11 to 21 (M); Baarda (1968) for the test of single readings.
 */
export function adjustNetwork(input: NetworkInput): NetworkResult {
  checkNetworkInput(input)
  const { shots, ties, options = {} } = input
  const model = buildModel(input)
  const examined = adjustAndExamine(orderUnknowns(model, listRows(model)), {
    falseAlarm: options.falseAlarm ?? 0.05, maxSuspects: options.maxSuspects ?? 20, maxIterations: options.maxIterations ?? 30,
  })
  const { solution, cofactors, checks, findings } = examined
  const loose = looseStations(solution.factor, solution.rows, solution.problem.blockOf, model.names.length)

  const { stations, floating } = placeStations(model, solution, cofactors, loose)
  const parts = describeParts(model, solution, cofactors)
  const result = {
    stations, floating, parts,
    undetermined: [...loose].map(i => model.names[i]!),
    shots: adjustedShots(model, solution, shots, loose),
    readings: adjustedReadings(model, solution, shots, examined),
    suspects: nameSuspects(findings, checks, shots, ties),
    test: globalTest(solution),
    instruments: describeInstruments(model, solution, cofactors),
    pairs: (options.pairs ?? []).map(([a, b]) => comparePair({ model, solution, cofactors }, { stations, floating }, a, b)),
    converged: solution.converged, iterations: solution.iterations,
  }
  return { ...result, cautions: cautionsOf(result, shots) }
}

function placeStations(model: Model, { state, problem: { blockOf } }: Solution, cofactors: BlockMatrix, loose: ReadonlySet<number>) {
  const stations = new Map<string, AdjustedStation>()
  const floating = new Map<string, AdjustedStation>()
  model.names.forEach((name, i) => {
    if (loose.has(i)) return
    const part = model.partOf[i]!
    const { located } = model.parts[part]!
    const [e, n, u] = located ? model.origin : [0, 0, 0]
    const { points } = state
    const covariance = covarianceOf(cofactors, blockOf[i]!)
    const sigma: Enu = [Math.sqrt(covariance[0][0]), Math.sqrt(covariance[1][1]), Math.sqrt(covariance[2][2])]
    const point: Enu = [points[3 * i]! + e, points[3 * i + 1]! + n, points[3 * i + 2]! + u]
    ;(located ? stations : floating).set(name, { point, covariance, sigma, ellipse: errorEllipse(covariance), part, held: located && model.held.has(i) })
  })
  return { stations, floating }
}

function describeParts(model: Model, { list, rows }: Solution, cofactors: BlockMatrix): NetworkPart[] {
  const chiSquare = new Float64Array(model.parts.length)
  const redundancy = new Float64Array(model.parts.length)
  list.forEach((row, i) => {
    if (row.is === 'prior') return
    const part = model.partOf['shot' in row ? model.shots[row.shot]!.from : row.tie.station]!
    chiSquare[part]! += rows.residual[i]! ** 2
    redundancy[part]! += 1 - rowCovariance(rows, cofactors, i, i)
  })
  return model.parts.map(({ members, located, assumed }, part): NetworkPart => ({
    stations: members.map(i => model.names[i]!), located, assumed,
    ...located ? {} : { anchor: model.names[members[0]!]! },
    redundancy: Math.max(0, redundancy[part]!), chiSquare: chiSquare[part]!,
  }))
}

function globalTest({ rows, factor }: Solution): GlobalTest {
  const chiSquare = rows.residual.reduce((sum, r) => sum + r * r, 0)
  const redundancy = rows.count - (3 * factor.pattern.size - factor.loose.length)
  if (redundancy <= 0) return { chiSquare, redundancy: 0, varianceFactor: null, p: null }
  return { chiSquare, redundancy, varianceFactor: chiSquare / redundancy, p: 1 - chiSquareCdf(chiSquare, redundancy) }
}

function describeInstruments(model: Model, { state, problem: { blockOf } }: Solution, cofactors: BlockMatrix): NetworkResult['instruments'] {
  return new Map(model.instruments.map((name, i) => {
    const { errors } = state
    const covariance = covarianceOf(cofactors, blockOf[model.names.length + i]!)
    const spread = (c: 0 | 1 | 2) => model.priors[i]![c] > 0 ? Math.sqrt(covariance[c][c]) : 0
    return [name, {
      errors: [degrees(errors[3 * i]!), degrees(errors[3 * i + 1]!), errors[3 * i + 2]!] as const,
      sigma: [degrees(spread(0)), degrees(spread(1)), spread(2)] as const,
    }]
  }))
}

function comparePair({ model, solution, cofactors }: { model: Model, solution: Solution, cofactors: BlockMatrix }, placed: Pick<NetworkResult, 'stations' | 'floating'>, a: string, b: string): StationPair | null {
  const [first, second] = [a, b].map(name => placed.stations.get(name) ?? placed.floating.get(name))
  if (!first || !second) return null
  const oneFrame = first.part === second.part || (placed.stations.has(a) && placed.stations.has(b))
  if (!oneFrame) return null
  const [blockA, blockB] = [a, b].map(name => solution.problem.blockOf[model.numberOf.get(name)!]!) as [number, number]
  const covariance: Covariance3 = a === b ? covarianceOf(cofactors, blockA) : blockCovariances(solution, blockA)(blockB)
  const relative = add3(add3(first.covariance, second.covariance), scale3(add3(covariance, transpose3(covariance)), -1))
  return { a, b, covariance, relative }
}
