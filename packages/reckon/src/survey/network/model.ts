import type { NetworkInput, NetworkPart, Tie } from './types.ts'
import type { Precision } from '../precision.ts'
import type { Sight } from './sight.ts'
import { InputError } from '../../core/index.ts'
import { handPrecision } from '../precision.ts'
import { joinedParts } from './parts.ts'
import { sightOf } from './sight.ts'

/** A network made ready for computing: names turned into numbers, readings into sights, parts found. */
export interface Model {
  readonly names: readonly string[]
  readonly numberOf: ReadonlyMap<string, number>
  readonly shots: readonly ModelShot[]
  readonly ties: readonly ModelTie[]
  readonly instruments: readonly string[]
  /** Prior sigma of each set's azimuth (radians), inclination (radians) and distance (ratio); 0 for an error that it does not have. */
  readonly priors: readonly (readonly [number, number, number])[]
  readonly parts: readonly ModelPart[]
  readonly partOf: Int32Array
  /** Points that are held, by station, in the frame below. */
  readonly held: ReadonlyMap<number, readonly [number, number, number]>
  /** Taken off every tie, so that large grid numbers cost no digits. */
  readonly origin: readonly [number, number, number]
  /** The usual length of a shot: the scale that thresholds are relative to. */
  readonly scale: number
}

export interface ModelShot { readonly from: number, readonly to: number, readonly instruments: number, readonly active: boolean, readonly sight: Sight }
export interface ModelPart extends Pick<NetworkPart, 'located' | 'assumed'> {
  readonly members: readonly number[]
  readonly firstTie?: ModelTie
}
export interface ModelTie { readonly station: number, readonly tie: Tie, readonly index: number, readonly held: boolean }

const components = ['east', 'north', 'up'] as const

/** Numbers stations in order of appearance, ties first. The input has been checked. */
export function buildModel({ shots, ties, options = {} }: NetworkInput): Model {
  const names: string[] = []
  const numberOf = new Map<string, number>()
  const number = (name: string): number => {
    const known = numberOf.get(name)
    if (known !== undefined) return known
    numberOf.set(name, names.length)
    names.push(name)
    return names.length - 1
  }
  const precision: Precision = { ...handPrecision, ...defined(options.precision) }
  const instruments = Object.keys(options.instruments ?? {})

  const modelTies = ties.map((tie, index): ModelTie => {
    return { station: number(tie.station), tie, index, held: !tie.leaveOut && tie.sigma === undefined && !tie.covariance }
  })
  const modelShots = shots.map((shot, i): ModelShot => {
    const sight = sightOf(shot, { ...precision, ...defined(shot.precision) })
    if (!sight.readings.every(r => r.sigma > 0)) {
      throw new InputError(`shots[${i}].precision`, shot.precision ?? options.precision, 'some standard deviation above zero for every reading')
    }
    return {
      from: number(shot.from), to: number(shot.to), instruments: shot.instruments === undefined ? -1 : instruments.indexOf(shot.instruments),
      active: sight.readings.some(r => !r.leftOut), sight,
    }
  })

  const { partOf, parts } = joinedParts(names.length, modelShots.filter(s => s.active).map(s => [s.from, s.to]))
  const used = modelTies.filter(t => !t.tie.leaveOut)
  const origin = [0, 1, 2].map(c => used[0]?.tie.point[c] ?? 0) as unknown as readonly [number, number, number]
  const held = new Map<number, readonly [number, number, number]>()
  for (const { station, tie, held: isHeld } of used) {
    if (isHeld) held.set(station, [tie.point[0] - origin[0], tie.point[1] - origin[1], tie.point[2] - origin[2]])
  }
  const tiesOf = new Map<number, ModelTie[]>()
  for (const tie of used) tiesOf.set(partOf[tie.station]!, [...tiesOf.get(partOf[tie.station]!) ?? [], tie])
  const described = parts.map((members, part): ModelPart => {
    const own = tiesOf.get(part) ?? []
    if (own.length === 0) held.set(members[0]!, [0, 0, 0])
    const [firstTie] = own
    if (!firstTie) return { members, located: false, assumed: [] }
    return { members, located: true, assumed: components.filter((_, c) => !own.some(t => gives(t.tie, c))), firstTie }
  })
  const lengths = shots.map(s => s.distance)
  return {
    names, numberOf, shots: modelShots, ties: modelTies, instruments, parts: described, partOf, held, origin,
    priors: instruments.map((name) => {
      const { azimuth = 0, inclination = 0, distance = 0 } = options.instruments![name]!
      return [azimuth * Math.PI / 180, inclination * Math.PI / 180, distance]
    }),
    scale: lengths.length === 0 ? 1 : lengths.reduce((sum, l) => sum + l, 0) / lengths.length,
  }
}

const gives = (tie: Tie, component: number): boolean => !Array.isArray(tie.sigma) || Number.isFinite((tie.sigma as readonly number[])[component])

/** An object without the fields that are there but undefined, so that they do not hide a default. */
function defined<T extends object>(value: T | undefined): Partial<T> {
  return Object.fromEntries(Object.entries(value ?? {}).filter(([, v]) => v !== undefined)) as Partial<T>
}
