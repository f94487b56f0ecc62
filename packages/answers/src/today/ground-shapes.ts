import type { NetPoint } from '@lodebook/reckon/structure'
import type { Answer } from '../answer.ts'
import type { DistanceIn } from './shapes.ts'

export interface GroundPlace {
  readonly name: string
  readonly distance: DistanceIn
  /** Latest first. */
  readonly notes: readonly {
    readonly entry: string
    readonly taken: string | undefined
    readonly found: readonly string[]
    readonly scaled: boolean
    readonly action: string | undefined
    readonly by: readonly string[]
  }[]
}

export interface RockAt {
  readonly entry: string
  readonly where: string
  readonly distance: DistanceIn
  readonly taken: string | undefined
  /** Width of the heading there, m. */
  readonly width: number | undefined
  readonly rating: Answer | undefined
  readonly quality: Answer | undefined
  /** What each classification suggests at that width, and what is missing. */
  readonly says: readonly string[]
}

/** One block that the joints of a place can cut from one surface of the heading. */
export interface BlockAt {
  readonly surface: 'back' | 'left rib' | 'right rib'
  readonly move: 'falls' | 'slides on one' | 'slides on two'
  /** Tonnes. */
  readonly answer: Answer
  readonly depth: number
  readonly planes: readonly { readonly strike: number, readonly dip: number }[]
}

/** What the joint readings of one stretch of heading can cut loose. */
export interface JointPlace {
  readonly name: string
  readonly distance: DistanceIn
  readonly width: number
  readonly height: number
  /** Azimuth of the heading from grid north. */
  readonly azimuth: number
  readonly sets: readonly { readonly strike: number, readonly dip: number, readonly readings: number }[]
  /** Equal-area net, lower half: poles as read and the mean plane of each set; unit circle, x east, y north. */
  readonly net: { readonly poles: readonly { readonly at: NetPoint, readonly entry: string, readonly feature: string }[]
    readonly circles: readonly (readonly NetPoint[])[] }
  readonly blocks: readonly BlockAt[]
  readonly heldByWeight: number
}

export interface ScalingAt {
  readonly entry: string
  readonly where: string
  readonly distance: DistanceIn
  readonly taken: string
  readonly pieces: number | undefined
  readonly largest: string | undefined
  readonly left: string | undefined
  readonly by: readonly string[]
}

/** What was seen, measured and done about the ground. It finds what was measured; what was not can still fall. */
export interface GroundSeen {
  readonly sentence: string
  readonly places: readonly GroundPlace[]
  readonly rock: readonly RockAt[]
  readonly joints: readonly JointPlace[]
  readonly scaling: readonly ScalingAt[]
  readonly cautions: readonly string[]
}
