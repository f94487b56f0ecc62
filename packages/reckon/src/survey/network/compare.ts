import type { Check } from './checks.ts'
import type { Examined } from './find-blunders.ts'
import type { Model } from './model.ts'
import type { Solution } from './solve-network.ts'
import type { AdjustedReading, AdjustedShot, NetworkShot } from './types.ts'
import type { Enu } from '../../core/index.ts'
import { degrees } from '../../core/index.ts'
import { azimuthOf, signedAngle } from '../angles.ts'
import { controlled, leastRedundancy, ownSigma, power, pull, tieSigma } from './checks.ts'
import { reach, seeCorrected } from './equations.ts'

/** The standard normal quantile of 80 %. */
const powerOf80 = 0.8416212335729143
const tieReadings = ['east', 'north', 'up'] as const

/** Every reading beside what the adjusted points make of it; readings left out are compared too. In the order of the input, shots first. */
export function adjustedReadings(model: Model, solution: Solution, shots: readonly NetworkShot[], tested: Pick<Examined, 'checks' | 'redundancy' | 'critical'>): AdjustedReading[] {
  const { checks } = tested
  const list: AdjustedReading[] = []
  let next = 0 // checks come in the same order
  model.shots.forEach((shot, number) => {
    for (const reading of shot.sight.readings) {
      const sigma = ownSigma(shot.sight, reading)
      const check = reading.leftOut ? undefined : checks[next++]
      const aside = () => seeCorrected(model, shot, reading, solution.state, 'points').seen.residual / reading.sigma
      const off = check ? solution.rows.residual[check.rows[0]!]! : aside()
      const { redundancy, w, detectable } = judge(check, solution, tested)
      list.push({
        shot: number, reading: reading.reading, observed: shots[number]![reading.reading] ?? 0, residual: reading.sign * off * sigma, sigma,
        redundancy, w, detectable, leftOut: reading.leftOut,
      })
    }
  })
  for (const { station, tie, index, held } of model.ties) {
    if (held) continue
    const leftOut = tie.leaveOut === true
    for (const c of [0, 1, 2] as const) {
      const sigma = tieSigma(tie, c)
      if (!Number.isFinite(sigma)) continue
      const residual = tie.point[c] - model.origin[c] - solution.state.points[3 * station + c]!
      const check = leftOut ? undefined : checks[next++]
      list.push({ tie: index, reading: tieReadings[c], observed: tie.point[c], residual, sigma, ...judge(check, solution, tested), leftOut })
    }
  }
  return list
}

function judge(check: Check | undefined, { rows }: Solution, { redundancy: all, critical }: Pick<Examined, 'redundancy' | 'critical'>): Pick<AdjustedReading, 'redundancy' | 'w' | 'detectable'> {
  if (!check) return { redundancy: null, w: null, detectable: null }
  const redundancy = controlled(check, all)
  if (redundancy < leastRedundancy) return { redundancy, w: null, detectable: null }
  const root = Math.sqrt(power(check, all))
  return { redundancy, w: pull(check, rows.residual) / root, detectable: (critical + powerOf80) / root }
}

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
