import type { VeinPoint } from '@lodebook/reckon'
import type { Attitude, Line, NetPoint, PoleDensity } from '@lodebook/reckon/structure'
import type { Answer, AnswerOr } from '../answer.ts'
import type { LostPlane } from '../shapes.ts'

/** What the vein does, how thick it is and what it is made of: all that is shown of a vein besides its lost part. */
export interface VeinSheet {
  readonly sentence: string
  readonly name: string
  /** One plane, two that meet, a step or a curve. */
  readonly lie: VeinLie
  readonly thickness: Thickness
  /** What the crew named, the commonest first. */
  readonly materials: readonly MaterialSeen[]
  /** Clay gouge where it was taped on its own. */
  readonly gouge: AnswerOr
  /** Hanging wall and footwall rock, each as the crew named it. */
  readonly walls: readonly Answer<string>[]
  readonly net: Net
  readonly faults: readonly FaultRead[]
  readonly cautions: readonly string[]
}

export interface VeinLie {
  readonly kind: 'plane' | 'bend' | 'step' | 'curve' | 'not enough'
  readonly answer: AnswerOr<string>
  /** Where it breaks, across the vein, and how far to either side the break may as well be (metres). */
  readonly breakLine?: readonly [VeinPoint, VeinPoint]
  readonly breakRange?: { readonly low: number, readonly high: number }
  readonly sides?: readonly [Attitude, Attitude]
  /** How well each kind foretells places left out, root mean square metres. */
  readonly trials: readonly { readonly kind: string, readonly rms: number, readonly better: number }[]
}

export interface Thickness {
  readonly answer: AnswerOr
  /** Running mean along the vein with its 80 % range; one even line when the widths do not show a swell. */
  readonly along: readonly { readonly at: number, readonly mean: number, readonly low: number, readonly high: number }[]
  readonly swells: Answer<string> | undefined
  readonly stretches: readonly Stretch[]
}

/** A stretch along the vein where it is wider or narrower than on the whole. */
export interface Stretch {
  readonly is: 'swells' | 'pinches'
  readonly from: number
  readonly to: number
  /** The most or least of the running mean there, metres. */
  readonly width: number
  readonly between: string
}

export interface MaterialSeen {
  readonly word: string
  readonly at: readonly { readonly entry: string, readonly at: VeinPoint }[]
  readonly answer: Answer
}

/** The net: lower hemisphere, equal area. Places are on the unit disc, x east, y north. */
export interface Net {
  readonly groups: readonly NetGroup[]
  /** The fitted planes, as curves. */
  readonly planes: readonly { readonly name: string, readonly is: 'vein' | 'fault', readonly attitude: Attitude, readonly circle: readonly NetPoint[], readonly pole: NetPoint }[]
  /** The line in which vein and fault meet. */
  readonly cutoff: { readonly line: Line, readonly xy: NetPoint, readonly answer: Answer } | undefined
}

export interface NetGroup {
  /** Feature and name, such as 'vein Lantern vein'. */
  readonly key: string
  readonly feature: string
  readonly label: string
  readonly readings: readonly NetReading[]
  readonly mean: NetMean | undefined
  /** Why there is no mean, when there is none. */
  readonly noMean: string | undefined
  readonly density: PoleDensity | undefined
}

export interface NetReading {
  readonly entry: string
  readonly is: 'pole' | 'line'
  readonly xy: NetPoint
  readonly attitude: Attitude | undefined
  readonly line: Line
  readonly says: string
}

export interface NetMean {
  readonly answer: Answer
  readonly line: Line
  readonly xy: NetPoint
  /** The plane whose pole it is, for readings of planes, as a curve. */
  readonly circle: readonly NetPoint[]
  /** The 95 % cone; one curve, or two across the rim. */
  readonly cone: readonly (readonly NetPoint[])[]
}

/** One fault that was read: its plane, and what tells how it moved. */
export interface FaultRead {
  readonly name: string
  readonly readings: number
  readonly strike: Answer
  readonly dip: Answer
  readonly grooves: Answer | undefined
  readonly sense: Answer<string> | undefined
  readonly infill: readonly string[]
  /** The one that cuts the vein off: the others are left out of the reckoning. */
  readonly cuts: boolean
  readonly plane: LostPlane
  /** Its places, as placed. */
  readonly entries: readonly string[]
}
