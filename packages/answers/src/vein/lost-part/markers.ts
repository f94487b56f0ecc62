import { DegenerateError } from '@lodebook/reckon'
import type { Degrees, Enu, Matrix3 } from '@lodebook/reckon'
import { attitudeOf as attitudeOfNormal, fitVeinPlane, markerWalls, normalCovariance } from '@lodebook/reckon/structure'
import type { AttitudeReading, FarSide, FittedVein, MarkerLook, MarkerOffset } from '@lodebook/reckon/structure'
import type { Answer } from '../../answer.ts'
import { buildAnswer } from '../../build-answer.ts'
import { textOf } from '../../read.ts'
import type { North } from '../../survey/north.ts'
import { azimuth, angle, figure, length, plural } from '../../words.ts'
import type { CrewUnits } from '../../words.ts'
import { attitudeOf, contactOf, dot } from '../vein-data.ts'
import type { Sited } from '../vein-data.ts'
import { bySide } from './sides.ts'

export interface MarkerRead { readonly marker: MarkerOffset, readonly name: string, readonly answer: Answer }

export interface MarkerInput {
  readonly fault: FittedVein
  readonly far: FarSide
  readonly structures: readonly Sited[]
  /** The lost vein's own name: it is no marker for itself. */
  readonly vein: string
  readonly north: North
  readonly units: CrewUnits
}

/** With no reading of strike and dip on a marker its first attitude is good to this; its places then say more. */
const roughly: Degrees = 20

/** How far the wall of a dyke or a bed wanders from a plane, metres. Common practice, no source; the places themselves say more. */
const wander = 0.15

const features = new Set(['contact', 'vein', 'stringer'])

/** Everything named that was read on both sides of the fault, but for the lost vein: contacts of a dyke or a bed, other veins. */
export function markersAcross(input: MarkerInput): readonly MarkerRead[] {
  const groups = new Map<string, Sited[]>()
  for (const s of input.structures) {
    const [feature, name] = [textOf(s.entry, 'feature')!, textOf(s.entry, 'name')]
    if (!features.has(feature) || name === undefined || name === input.vein) continue
    const key = `${feature} ${name}`
    const group = groups.get(key) ?? []
    group.push(s)
    groups.set(key, group)
  }
  return [...groups.values()].flatMap((group) => {
    const { near, beyond } = bySide(input.fault, input.far, group)
    return near.length > 0 && beyond.length > 0 ? markerFrom(textOf(group[0]!.entry, 'name')!, near, beyond, input) : []
  })
}

function markerFrom(name: string, near: readonly Sited[], beyond: readonly Sited[], { north, units }: MarkerInput): readonly MarkerRead[] {
  const all = [...near, ...beyond]
  const readings = all.flatMap((s) => { const read = attitudeOf(s.entry, north); return read ? [read] : [] })
  const plane = attitudeFirst(readings, near)
  if (!plane) return []
  const spread = all.reduce((sum, { located }) => sum + squareTo(plane.normal, located.sigma), 0) / all.length
  const sigma = Math.sqrt(wander ** 2 + spread)
  const [before, past] = [near, beyond].map(side => side.map(s => s.located.point))
  const looks = markerWalls({ ...plane, near: before!, far: past!, sigma })
  return [{ name, marker: { looks }, answer: offsetAnswer(name, looks, all, units) }]
}

/** How a marker lies before its places have their say: by the readings on it, or, without any, by its places on the near side as a rough start. */
function attitudeFirst(readings: readonly AttitudeReading[], near: readonly Sited[]): { readonly normal: Enu, readonly covariance: Matrix3 } | undefined {
  try {
    // One place alone: the plane is then that of the readings.
    const read = readings.length > 0
    const plane = fitVeinPlane({ points: (read ? near.slice(0, 1) : near).map(contactOf), readings })
    const rough = normalCovariance(attitudeOfNormal(plane.normal), { strike: roughly, dip: roughly })
    return { normal: plane.normal, covariance: read ? plane.doubt!.normal : rough }
  } catch (error) {
    if (error instanceof DegenerateError) return undefined // nothing tells how it lies
    throw error
  }
}

const squareTo = (normal: Enu, sigma: Enu) => [0, 1, 2].reduce((sum, k) => sum + (normal[k]! * sigma[k]!) ** 2, 0)

function offsetAnswer(name: string, looks: readonly MarkerLook[], used: readonly Sited[], units: CrewUnits): Answer {
  const mean = looks.reduce((sum, look) => sum + look.chance * look.offset, 0)
  const sigma = Math.sqrt(looks.reduce((sum, look) => sum + look.chance * (turning(look) + look.sigma ** 2 + (look.offset - mean) ** 2), 0))
  const { strike, dip } = attitudeOfNormal(looks[0]!.normal)
  return buildAnswer({
    id: `lost-part.marker.${name}`, value: mean, unit: 'm',
    sentence: `The ${name} is set off by ${length(Math.abs(mean), units)} square to itself past the fault (±${length(sigma, units, 2)}), from ${plural(used.length, 'place')}.`,
    range: { low: mean - 1.2816 * sigma, high: mean + 1.2816 * sigma, confidence: 0.8, because: ['where it was touched', 'how it lies', ...(looks.length > 1 ? ['which of its walls was seen'] : [])] },
    method: {
      name: 'offset of a marker', page: 'lost-part',
      working: [
        `it strikes ${azimuth(strike)} and dips ${angle(dip)}; positive is along its upward normal`,
        ...looks.slice(0, 3).map(look => `${figure(look.offset, 3)} m ± ${figure(Math.sqrt(look.sigma ** 2 + turning(look)), 2)} m, chance ${figure(look.chance, 2)}`),
      ],
    },
    from: used.map(s => s.entry.id),
  })
}

/** What the doubt of the normal adds to the variance of the offset. */
const turning = ({ arm, covariance }: MarkerLook): number => covariance ? Math.max(0, dot(arm, covariance.map(row => dot(row, arm)) as unknown as Enu)) : 0

/** The lost vein found again beyond the fault: a marker that is itself. Undefined while nobody has seen it there. */
export function veinBeyond(vein: FittedVein, beyond: readonly Sited[]): MarkerOffset | undefined {
  if (beyond.length === 0) return undefined
  const count = beyond.length
  const middle = [0, 1, 2].map(k => beyond.reduce((sum, s) => sum + s.located.point[k]!, 0) / count) as unknown as Enu
  const arm: Enu = [middle[0] - vein.centroid[0], middle[1] - vein.centroid[1], middle[2] - vein.centroid[2]]
  const variance = beyond.reduce((sum, { located }) => sum + squareTo(vein.normal, located.sigma) + vein.unevenness ** 2, 0)
  return { isVein: true, looks: [{ normal: vein.normal, offset: dot(vein.normal, arm), sigma: Math.sqrt(variance) / count, arm, chance: 1 }] }
}
