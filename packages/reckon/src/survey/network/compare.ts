import type { Check } from './checks.ts'
import type { Model } from './model.ts'
import type { Solution } from './solve-network.ts'
import type { AdjustedReading, AdjustedShot, NetworkInput, NetworkShot, TieReading } from './types.ts'
import type { Enu } from '../../core/index.ts'
import { degrees } from '../../core/index.ts'
import { azimuthOf, signedAngle } from '../angles.ts'
import { controlled, leastRedundancy, ownSigma, power, pull } from './checks.ts'
import { reach, seeCorrected } from './equations.ts'

/** Every reading beside what the adjusted points make of it; readings left out are compared too. In the order of the input. */
export function adjustedReadings(model: Model, solution: Solution, { shots }: NetworkInput, checks: readonly Check[], redundancies: readonly Float64Array[], critical: number): AdjustedReading[] {
  const tested = new Map(checks.map((check, i) => [key(check), i]))
  const judge = (named: Pick<AdjustedReading, 'shot' | 'tie' | 'reading'>): Pick<AdjustedReading, 'redundancy' | 'w' | 'detectable'> => {
    const i = tested.get(key(named))
    if (i === undefined) return { redundancy: null, w: null, detectable: null }
    const check = checks[i]!
    const redundancy = controlled(check, redundancies[i]!)
    if (redundancy < leastRedundancy) return { redundancy, w: null, detectable: null }
    const root = Math.sqrt(power(check, redundancies[i]!))
    return { redundancy, w: pull(check, solution.rows.residual) / root, detectable: (critical + powerOf80) / root }
  }
  const fromShots = model.shots.flatMap((shot, s) => shot.sight.readings.map((reading): AdjustedReading => {
    const named = { shot: s, reading: reading.reading }
    const sigma = ownSigma(shot.sight, reading)
    const { seen } = seeCorrected(model, shot, reading, solution.state)
    const residual = reading.sign * seen.residual / reading.sigma * sigma
    return { ...named, observed: shots[s]![reading.reading] ?? 0, residual, sigma, leftOut: reading.leftOut, ...judge(named) }
  }))
  const fromTies = model.ties.filter(tie => !tie.held).flatMap(({ station, tie, index }) => tieReadings.flatMap((reading, c): AdjustedReading[] => {
    const sigma = tie.covariance ? Math.sqrt(tie.covariance[c]![c]!) : typeof tie.sigma === 'number' ? tie.sigma : tie.sigma?.[c] ?? 0
    if (!Number.isFinite(sigma)) return []
    const named = { tie: index, reading }
    const residual = tie.point[c]! - model.origin[c]! - solution.state.points[3 * station + c]!
    return [{ ...named, observed: tie.point[c]!, sigma, residual, leftOut: tie.leaveOut === true, ...judge(named) }]
  }))
  return [...fromShots, ...fromTies]
}

/** The standard normal quantile of 80 %. */
const powerOf80 = 0.8416212335729143
const tieReadings: readonly TieReading[] = ['east', 'north', 'up']
const key = ({ shot, tie, reading }: Pick<AdjustedReading, 'shot' | 'tie' | 'reading'>): string => `${shot ?? ''}/${tie ?? ''}/${reading}`

/** Each shot from the adjusted points, and how its own foresight and backsight agree. */
export function adjustedShots(model: Model, { state }: Solution, shots: readonly NetworkShot[], loose: ReadonlySet<number>): AdjustedShot[] {
  return model.shots.map((shot, i): AdjustedShot => {
    const { azimuth, backAzimuth, inclination, backInclination } = shots[i]!
    const [a, b] = [model.partOf[shot.from]!, model.partOf[shot.to]!]
    const joined = a === b || (model.parts[a]!.located && model.parts[b]!.located)
    const leg = joined && !loose.has(shot.from) && !loose.has(shot.to) ? polar(reach(state, shot)) : { distance: null, azimuth: null, inclination: null }
    return {
      shot: i, ...leg,
      azimuthDifference: azimuth === undefined || backAzimuth === undefined ? null : signedAngle(azimuth - backAzimuth + 180),
      inclinationDifference: inclination === undefined || backInclination === undefined ? null : inclination + backInclination,
    }
  })
}

function polar(d: Enu): Pick<AdjustedShot, 'distance' | 'azimuth' | 'inclination'> {
  const distance = Math.hypot(...d)
  if (distance === 0) return { distance: null, azimuth: null, inclination: null }
  return { distance, azimuth: azimuthOf(degrees(Math.atan2(d[0], d[1]))), inclination: degrees(Math.atan2(d[2], Math.hypot(d[0], d[1]))) }
}
