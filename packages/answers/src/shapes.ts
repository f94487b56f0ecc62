import type { Enu, VeinPoint } from '@lodebook/reckon'
import type { LostPartFamily } from '@lodebook/reckon/structure'
import type { Answer, AnswerOr, NotEnough } from './answer.ts'

export type * from './grade/shapes.ts'
export type * from './grade/study-shapes.ts'

/** A station with its place and its doubt. Coordinates are metres in the book's grid. */
export interface StationAt {
  readonly name: string
  readonly point: Enu
  /** 3 x 3 covariance, rows of east, north, up; m². */
  readonly covariance: readonly (readonly number[])[]
  /** 95 % ellipse in plan: semi-axes in metres, azimuth of the major one in degrees. */
  readonly ellipse: { readonly major: number, readonly minor: number, readonly azimuth: number }
  /** Stations joined by shots share a part. Only parts that hold a tie are placed in the grid. */
  readonly part: number
  readonly tied: boolean
  /** How well it is known beside the first tied station, which is what counts underground; only for surveys that are not very large. */
  readonly beside?: {
    readonly from: string
    readonly covariance: readonly (readonly number[])[]
    readonly ellipse: { readonly major: number, readonly minor: number, readonly azimuth: number }
  }
  /** Placed by steps only, until somebody surveys there. */
  readonly rough: boolean
  readonly answer: Answer<Enu>
}

export interface Leg { readonly entry: string, readonly from: string, readonly to: string, readonly a: Enu, readonly b: Enu, readonly leftOut: string }

/** One heading's shape: its outline in plan and its back and sill as lines, from taped offsets; `rough` where no offsets were taken. */
export interface HeadingShape {
  readonly entry: string
  readonly name: string
  readonly sort: string
  readonly stations: readonly string[]
  readonly left: readonly Enu[]
  readonly right: readonly Enu[]
  readonly back: readonly Enu[]
  readonly sill: readonly Enu[]
  /** The azimuth in which it runs at each of its stations, degrees. */
  readonly courses: readonly number[]
  readonly rough: boolean
}

export interface PlacedEntry {
  readonly entry: string
  readonly kind: string
  readonly title: string
  readonly point: Enu
  /** One standard deviation of east, north, up; m. */
  readonly sigma: Enu
  readonly how: string
  /** A short word the drawing may use to choose a symbol: a sample's role, a target's outcome, a structure's feature, a hazard's sort. */
  readonly tag: string
}

export interface NotPlaced { readonly entry: string, readonly kind: string, readonly title: string, readonly why: string }

/** A reading that the rest of the survey disagrees with. Nothing is taken out; the crew decides. */
export interface Suspect {
  readonly entry: string
  readonly sentence: string
  /** How many standard deviations off. */
  readonly times: number
  readonly reading: string
  /** What `leaveOut` of the entry would say if the crew left this reading out; none for a stepped leg. */
  readonly leave?: string
  /** Readings that would explain it about as well. */
  readonly others: readonly { readonly entry: string, readonly reading: string, readonly leave: string, readonly says: string }[]
}

/** A reading that the crew has left out: it is kept, compared, and can be taken back. */
export interface LeftOut { readonly entry: string, readonly what: string, readonly sentence: string }

/** A part of the survey that no shot or tie joins to the rest. */
export interface Adrift { readonly stations: readonly string[], readonly sentence: string }

/** A stepped leg as a rough outline, until the survey replaces it. */
export interface PacedOutline {
  readonly entry: string
  readonly name: string
  readonly left: readonly Enu[]
  readonly right: readonly Enu[]
  readonly back: readonly Enu[]
  readonly sill: readonly Enu[]
}

export interface Norths {
  /** Degrees clockwise from grid north. */
  readonly trueNorth: number
  readonly magneticNorth: number
  readonly answer: Answer
}

export interface Workings {
  readonly sentence: string
  readonly stations: readonly StationAt[]
  readonly legs: readonly Leg[]
  readonly headings: readonly HeadingShape[]
  readonly placed: readonly PlacedEntry[]
  readonly notPlaced: readonly NotPlaced[]
  readonly workedOut: readonly { readonly entry: string, readonly name: string, readonly corners: readonly Enu[] }[]
  readonly suspects: readonly Suspect[]
  readonly leftOut: readonly LeftOut[]
  readonly adrift: readonly Adrift[]
  /** Rough outlines of what was stepped and not surveyed. */
  readonly paced: readonly PacedOutline[]
  /** What zero elevation is, in the crew's words; '' when nobody said. */
  readonly datum: string
  readonly norths: Norths
  /** Length surveyed, closure and doubt, each a figure that opens. */
  readonly figures: readonly Answer[]
  readonly cautions: readonly string[]
}

/** Where a fault cuts the vein: a line in the vein's coordinates. `keep` is the side of it that holds the portal: the sign of direction × (point - line). */
export interface FaultCut {
  readonly name: string
  readonly strike: Answer
  readonly dip: Answer
  readonly point: VeinPoint
  readonly direction: VeinPoint
  readonly keep: 1 | -1
}

/** The vein as one plane with its own coordinates: `along` the strike (right-hand rule), `down` the dip, from `origin`. */
export interface VeinAt {
  readonly name: string
  readonly strike: Answer
  readonly dip: Answer
  readonly width: AnswerOr
  readonly origin: Enu
  readonly alongAxis: Enu
  readonly downAxis: Enu
  readonly normal: Enu
  readonly rms: number
  readonly widths: readonly WidthAt[]
  /** The fault that ends the vein, if one was measured. */
  readonly fault?: FaultCut
  /** The headings and stations that lie near the vein, in its coordinates, for the long section. */
  readonly headings: readonly {
    readonly name: string
    readonly back: readonly VeinPoint[]
    readonly sill: readonly VeinPoint[]
    /** Its ribs: they bound a raise or winze, whose back and sill lie one behind the other. */
    readonly left: readonly VeinPoint[]
    readonly right: readonly VeinPoint[]
  }[]
  readonly stations: readonly { readonly name: string, readonly at: VeinPoint, readonly off: number }[]
  readonly workedOut: readonly { readonly entry: string, readonly name: string, readonly corners: readonly VeinPoint[] }[]
}

export interface WidthAt { readonly entry: string, readonly at: VeinPoint, readonly width: number, readonly sigma: number, readonly answer: Answer }

/** Where a vein may go on past a fault, on one flat drawing (a plan at a level, an upright cross section). All points are grid points on that sheet. */
export interface LostOnSheet {
  /** The sheet: a point of it and two unit vectors, `up` up the paper. */
  readonly origin: Enu
  readonly across: Enu
  readonly up: Enu
  /** The known part of the vein up to the fault, and the fault; undefined when the sheet does not cut them. */
  readonly here: readonly [Enu, Enu] | undefined
  readonly fault: readonly [Enu, Enu] | undefined
  /** The 80 % band from the fault onward: `low` and `high` are its edges point by point, `middle` halves the cases. */
  readonly band: { readonly low: readonly Enu[], readonly middle: readonly Enu[], readonly high: readonly Enu[] } | undefined
  /** Twenty equally likely continuations, less those that run outside the drawing. */
  readonly cases: readonly (readonly [Enu, Enu])[]
}

/** A straight heading to the lost part of a vein, from a station. */
export interface LostHeading {
  readonly station: string
  readonly from: Enu
  /** Where it would meet the vein in the middle case. */
  readonly to: Enu
  /** Degrees from grid north; inclination up positive. */
  readonly bearing: number
  readonly inclination: number
  /** Metres to drive in the middle case, with the 80 % range where it is met in so many cases. */
  readonly length: Answer
  /** Chance that it is met at all. */
  readonly meets: number
  /** Chance that it is met within so many metres, rising. */
  readonly chance: readonly { readonly within: number, readonly chance: number }[]
}

/** The lost part of a vein past a fault: where it may be, how to reach it, and how much the evidence tells. */
export interface LostPart {
  readonly sentence: string
  readonly vein: string
  readonly fault: string
  /** 'where'; 'which hand' when the distance can't be told; 'nothing' when not even that. Draw the band in any case. */
  readonly tells: 'where' | 'which hand' | 'nothing'
  /** What it rests on, in a few words: 'grooves, sense and one marker'. */
  readonly rests: string
  /** From the known part to the lost part; m. Level across a steep vein, positive to the side it dips to; upright on a flat one, positive up. */
  readonly apart: Answer
  /** As one goes along the vein towards the fault; 'above' and 'below' on a flat vein. */
  readonly hand: 'left' | 'right' | 'above' | 'below'
  /** Chance that it is that hand. */
  readonly handChance: number
  /** What would tell more, best first. */
  readonly wanted: NotEnough['wanted']
  /** The level heading that meets it with four chances in five in the least length, from the best station. */
  readonly heading: LostHeading | NotEnough
  /** The same from that station with any inclination. */
  readonly shortest: LostHeading | NotEnough
  /** Level headings from other stations near by, shortest first. */
  readonly faces: readonly LostHeading[]
  /** The plan at the heading's level, and the cross section square to the vein through its station. */
  readonly plan: LostOnSheet
  readonly section: LostOnSheet
  /** For the long section, in the vein's own coordinates: the edge at which the lost part begins, seen square to the vein. */
  readonly edge: {
    readonly low: readonly VeinPoint[]
    readonly middle: readonly VeinPoint[]
    readonly high: readonly VeinPoint[]
    readonly cases: readonly (readonly [VeinPoint, VeinPoint])[]
  } | undefined
  /** Equally likely cases, for other sheets (`lostPartOn`). */
  readonly family: LostPartFamily
  readonly known: { readonly vein: LostPlane, readonly fault: LostPlane }
  /** What it rests on: grooves, sense, markers, the planes. */
  readonly evidence: readonly Answer<unknown>[]
  readonly cautions: readonly string[]
}

export interface LostPlane { readonly normal: Enu, readonly point: Enu }

export type * from './pay/shapes.ts'
export type * from './next/shapes.ts'
