import type { NetworkInput, NetworkShot, ShotReading, Tie } from './types.ts'
import { finite, InputError, positive } from '../../core/index.ts'
import { cholesky3 } from '../matrix3.ts'

const shotReadings: readonly ShotReading[] = ['distance', 'azimuth', 'backAzimuth', 'inclination', 'backInclination']

/**
 * Refuses a network that cannot be meant as written: readings out of range, a shot to its own station, a station held at two points.
 * A network that merely closes badly or hangs on nothing is not refused.
 * @throws InputError naming the field, such as `shots[3].azimuth`
 */
export function checkNetworkInput({ shots, ties, options = {} }: NetworkInput): void {
  shots.forEach((shot, i) => checkShot(shot, `shots[${i}].`))
  ties.forEach((tie, i) => checkTie(tie, `ties[${i}]`))
  checkHeld(ties)
  const sets = Object.keys(options.instruments ?? {})
  shots.forEach(({ instruments }, i) => {
    if (instruments !== undefined && !sets.includes(instruments)) throw new InputError(`shots[${i}].instruments`, instruments, 'a name among options.instruments')
  })
  checkSigmas(options.precision ?? {}, 'options.precision')
  for (const [name, errors] of Object.entries(options.instruments ?? {})) checkSigmas(errors, `options.instruments.${name}`)
  const { falseAlarm } = options
  if (falseAlarm !== undefined && !(falseAlarm > 0 && falseAlarm < 1)) throw new InputError('options.falseAlarm', falseAlarm, 'a chance between 0 and 1')
}

/** Throws InputError unless the readings of one shot are in range; `path` stands before the field's name. */
export function checkShot(shot: NetworkShot, path: string): void {
  checkName(shot.from, `${path}from`)
  checkName(shot.to, `${path}to`)
  if (shot.from === shot.to) throw new InputError(`${path}to`, shot.to, 'a station other than the one the shot starts from')
  positive(shot.distance, `${path}distance`, 'a distance above zero')
  checkAngle(shot.azimuth, `${path}azimuth`, 0, 360)
  checkAngle(shot.backAzimuth, `${path}backAzimuth`, 0, 360)
  checkAngle(shot.inclination, `${path}inclination`, -90, 90)
  checkAngle(shot.backInclination, `${path}backInclination`, -90, 90)
  checkSigmas(shot.precision ?? {}, `${path}precision`)
  const { leaveOut } = shot
  if (leaveOut === undefined || leaveOut === 'shot') return
  const stray = leaveOut.find(reading => !shotReadings.includes(reading))
  if (stray !== undefined) throw new InputError(`${path}leaveOut`, stray, `one of ${shotReadings.join(', ')}, or 'shot'`)
}

function checkTie(tie: Tie, path: string): void {
  checkName(tie.station, `${path}.station`)
  if (tie.point.length !== 3) throw new InputError(`${path}.point`, tie.point, 'east, north and up')
  tie.point.forEach((x, i) => finite(x, `${path}.point[${i}]`))
  const { sigma, covariance } = tie
  if (typeof sigma === 'number') positive(sigma, `${path}.sigma`, 'a standard deviation above zero')
  else if (sigma) sigma.forEach((s, i) => { if (!(s > 0)) throw new InputError(`${path}.sigma[${i}]`, s, 'a standard deviation above zero') })
  if (!covariance) return
  const lopsided = [[0, 1], [0, 2], [1, 2]].some(([i, j]) => covariance[i!]![j!] !== covariance[j!]![i!])
  if (lopsided || !cholesky3(covariance)) throw new InputError(`${path}.covariance`, covariance, 'a symmetric positive definite 3 by 3 matrix')
}

function checkHeld(ties: readonly Tie[]): void {
  const held = new Map<string, Tie>()
  ties.forEach((tie, i) => {
    if (tie.leaveOut || tie.sigma !== undefined || tie.covariance) return
    const earlier = held.get(tie.station)
    if (earlier?.point.some((x, k) => x !== tie.point[k])) {
      throw new InputError(`ties[${i}].point`, tie.point, `the point station ${tie.station} is already held at, or a sigma with either`)
    }
    held.set(tie.station, tie)
  })
}

function checkName(name: string, field: string): void {
  if (typeof name !== 'string' || name.trim() === '') throw new InputError(field, name, 'a station name')
}

function checkAngle(angle: number | undefined, field: string, low: number, high: number): void {
  if (angle !== undefined && !(angle >= low && angle <= high)) throw new InputError(field, angle, `degrees from ${low} to ${high}`)
}

function checkSigmas(sigmas: object, path: string): void {
  for (const [name, sigma] of Object.entries(sigmas)) {
    if (sigma !== undefined && !(Number.isFinite(sigma) && sigma >= 0)) throw new InputError(`${path}.${name}`, sigma, 'a standard deviation, zero or above')
  }
}
