import type { NetworkShot, ShotReading } from './types.ts'
import type { Precision } from '../precision.ts'
import type { Degrees, Enu } from '../../core/index.ts'
import { radians } from '../../core/index.ts'
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

/** Turns a shot into its line of sight. Nothing is refused here: see checkNetworkInput. */
export function sightOf(shot: NetworkShot, precision: Precision): Sight {
  const { distance, leaveOut, azimuth, backAzimuth, inclination, backInclination } = shot
  const out = (reading: ShotReading) => leaveOut !== undefined && (leaveOut === 'shot' || leaveOut.includes(reading))
  const turned = (reading: ShotReading, angle: Degrees | undefined): Turned[] =>
    angle === undefined ? [] : [{ reading, value: radians(angle), leftOut: out(reading) }]
  const level = inclination === undefined && backInclination === undefined
  const azimuths = [...turned('azimuth', azimuth), ...turned('backAzimuth', backAzimuth === undefined ? undefined : backAzimuth - 180)]
  const tilts = [...turned('inclination', level ? 0 : inclination), ...turned('backInclination', backInclination === undefined ? undefined : 0 - backInclination)]

  const tilt = middle(tilts)
  const turn = middle(azimuths)
  const steep = Math.cos(tilt) < steepCosine
  const plumb = steep && azimuths.every(r => r.leftOut)
  const [cosine, sine] = plumb ? [0, Math.sign(tilt)] : [Math.cos(tilt), Math.sin(tilt)]
  const [east, north] = [Math.sin(turn), Math.cos(turn)]

  const centring = 2 * precision.centring ** 2 // at both ends
  const distanceSigma = Math.sqrt(precision.distance ** 2 + (precision.distancePerLength * distance) ** 2 + centring)
  const acrossSigma = Math.sqrt((radians(precision.azimuth) * cosine) ** 2 + (radians(precision.levelling) * sine) ** 2 + centring / distance ** 2)
  const riseSigma = Math.sqrt(radians(level ? precision.assumedLevel : precision.inclination) ** 2 + centring / distance ** 2)
  const plumbSigma = Math.hypot(riseSigma, Math.cos(tilt)) // where it leans to is not known
  const readings: SightReading[] = [{ reading: 'distance', value: distance, sigma: distanceSigma, leftOut: out('distance'), sign: 1 }]
  for (const { reading, value, leftOut } of azimuths) readings.push({ reading, value, sigma: acrossSigma, leftOut, sign: 1 })
  for (const { reading, value, leftOut } of tilts) {
    readings.push({ reading, value, sigma: plumb ? plumbSigma : riseSigma, leftOut, sign: reading === 'inclination' ? 1 : -1 })
  }
  return {
    distance, azimuth: turn, inclination: tilt, cosine, steep,
    along: [east * cosine, north * cosine, sine],
    across: [north, -east, 0],
    rise: [-east * sine, -north * sine, cosine],
    ...plumb && { plumb: plumbSigma },
    readings,
  }
}

interface Turned { readonly reading: ShotReading, readonly value: number, readonly leftOut: boolean }

/** The middle of the readings in use, or of all when none is; the first one where two are more than a right angle apart. 0 without any. */
function middle(readings: readonly Turned[]): number {
  const used = readings.some(r => !r.leftOut) ? readings.filter(r => !r.leftOut) : readings
  const [first, second] = used
  if (!first) return 0
  if (!second) return first.value
  const turn = signedRadians(second.value - first.value)
  return Math.abs(turn) > Math.PI / 2 ? first.value : first.value + turn / 2
}

/**
 * Standard deviations of a shot's vector along, across and square to the sight, from the readings in use. Undefined for what none of them gives.
 */
export function vectorErrors({ readings, distance, plumb }: Sight): readonly [along: number | undefined, across: number | undefined, rise: number | undefined] {
  const mean = (...names: ShotReading[]): number | undefined => {
    const used = readings.filter(r => !r.leftOut && names.includes(r.reading))
    return used[0] && used[0].sigma / Math.sqrt(used.length) // foresight and backsight are equally good
  }
  const across = mean('azimuth', 'backAzimuth') ?? plumb
  const rise = mean('inclination', 'backInclination')
  return [mean('distance'), across && distance * across, rise && distance * rise]
}
