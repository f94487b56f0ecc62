import type { NetworkShot, ShotReading } from './types.ts'
import type { Precision } from '../precision.ts'
import type { Enu } from '../../core/index.ts'
import { signedRadians } from '../angles.ts'

/** One reading in use, turned to the forward sense: radians, or length for a distance. */
export interface SightReading {
  readonly reading: ShotReading
  readonly value: number
  /** One standard deviation. Of an azimuth: of the angle across the line of sight, which is cos(inclination) times the azimuth's own. */
  readonly sigma: number
  readonly leftOut: boolean
  /** A clinometer's index error enters a backsight with the other sign. */
  readonly sign: 1 | -1
}

/** A shot's line of sight as its readings have it, and the readings themselves. */
export interface Sight {
  readonly distance: number
  /** Unit vectors along the sight, level across it to the right, and square to both, upward. */
  readonly along: Enu
  readonly across: Enu
  readonly rise: Enu
  readonly azimuth: number
  readonly inclination: number
  readonly cosine: number
  /** So steep that angles are taken as offsets square to the sight; see `steepCosine`. */
  readonly steep: boolean
  /** Steep and without an azimuth: taken as plumb, both level offsets zero. Its sigma, radians. */
  readonly plumb?: number
  readonly readings: readonly SightReading[]
}

/** Steeper than this (87.1°) an azimuth turns too fast to be linearised; the angle across the sight does not. */
export const steepCosine = 0.05

const rad = Math.PI / 180

/** Turns a shot into its line of sight. Nothing is refused here: see checkNetworkInput. */
export function sightOf(shot: NetworkShot, precision: Precision): Sight {
  const out = (reading: ShotReading) => shot.leaveOut !== undefined && (shot.leaveOut === 'shot' || shot.leaveOut.includes(reading))
  const azimuths = [
    ...shot.azimuth === undefined ? [] : [{ reading: 'azimuth' as const, value: shot.azimuth * rad, sign: 1 as const }],
    ...shot.backAzimuth === undefined ? [] : [{ reading: 'backAzimuth' as const, value: signedRadians((shot.backAzimuth - 180) * rad), sign: 1 as const }],
  ].map(r => ({ ...r, leftOut: out(r.reading) }))
  const inclinations = [
    ...shot.inclination === undefined ? [] : [{ reading: 'inclination' as const, value: shot.inclination * rad, sign: 1 as const }],
    ...shot.backInclination === undefined ? [] : [{ reading: 'backInclination' as const, value: -shot.backInclination * rad, sign: -1 as const }],
  ].map(r => ({ ...r, leftOut: out(r.reading) }))
  const level = inclinations.length === 0
  if (level) inclinations.push({ reading: 'inclination', value: 0, sign: 1, leftOut: shot.leaveOut === 'shot' })

  const inclination = middle(inclinations)
  const hasAzimuth = azimuths.some(r => !r.leftOut)
  const steep = Math.cos(inclination) < steepCosine
  const plumb = steep && !hasAzimuth
  const azimuth = azimuths.length === 0 ? 0 : middle(azimuths)
  const [cosine, sine] = plumb ? [0, Math.sign(inclination)] : [Math.cos(inclination), Math.sin(inclination)]
  const [east, north] = [Math.sin(azimuth), Math.cos(azimuth)]

  const { distance } = shot
  const centring = 2 * precision.centring ** 2 // at both ends
  const distanceSigma = Math.sqrt(precision.distance ** 2 + (precision.distancePerLength * distance) ** 2 + centring)
  const acrossSigma = Math.sqrt((precision.azimuth * rad * cosine) ** 2 + (precision.levelling * rad * sine) ** 2 + centring / distance ** 2)
  const angleSigma = level ? precision.assumedLevel : precision.inclination
  const inclinationSigma = Math.sqrt((angleSigma * rad) ** 2 + centring / distance ** 2)
  const plumbSigma = Math.hypot(inclinationSigma, Math.cos(inclination)) // where it leans to is not known
  return {
    distance, azimuth, inclination, cosine, steep,
    along: [east * cosine, north * cosine, sine],
    across: [north, -east, 0],
    rise: [-east * sine, -north * sine, cosine],
    ...plumb ? { plumb: plumbSigma } : {},
    readings: [
      { reading: 'distance', value: distance, sigma: distanceSigma, leftOut: out('distance'), sign: 1 },
      ...azimuths.map(r => ({ ...r, sigma: acrossSigma })),
      ...inclinations.map(r => ({ ...r, sigma: plumb ? plumbSigma : inclinationSigma })),
    ],
  }
}

/** The middle of the readings in use, or of all when none is; the first one where two are more than a right angle apart. */
function middle(readings: readonly { value: number, leftOut: boolean }[]): number {
  const used = readings.filter(r => !r.leftOut)
  const [first, second] = used.length > 0 ? used : readings
  if (!first) return 0
  if (!second) return first.value
  const turn = signedRadians(second.value - first.value)
  return Math.abs(turn) > Math.PI / 2 ? first.value : first.value + turn / 2
}
