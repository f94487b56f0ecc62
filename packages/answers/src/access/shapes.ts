import type { GroundLine } from '@lodebook/book'
import type { Cut, WayStation } from '@lodebook/reckon/earthwork'
import type { Answer, NotEnough } from '../answer.ts'

/** One taped cross section of a job; lines in metres. */
export interface SectionDrawn {
  readonly entry: string
  readonly at: number
  readonly found: GroundLine['line']
  readonly wanted: GroundLine['line']
  /** Square metres. */
  readonly cut: number
  readonly fill: number
}

/** Loads tipped so far and what their times say. */
export interface Tally {
  readonly sentence: string
  readonly done: number
  /** On the latest day with loads. */
  readonly lastDay: { readonly day: string, readonly loads: number } | undefined
  readonly left: Answer
  /** Minutes from one load to the next. */
  readonly pace: Answer
  /** 20 more loads, or those left when they are fewer; hours. */
  readonly next: { readonly loads: number, readonly answer: Answer } | undefined
}

export interface Digging {
  readonly entry: string
  readonly name: string
  readonly sort: string
  readonly state: 'to do' | 'at it' | 'done'
  readonly sentence: string
  /** Ground in place (or packed fill), m³. */
  readonly volume: Answer
  /** As it is carried, m³. */
  readonly loose: Answer
  readonly loads: Answer
  /** What one load is held to: volume, or weight on that grade; kg. */
  readonly loadMass: Answer
  /** Crew days still to do. */
  readonly days: Answer
  readonly tally: Tally
  /** The heap against its room. */
  readonly heap: Answer
  readonly sections: readonly SectionDrawn[]
  readonly cautions: readonly string[]
}

/** A heading as a way to walk and wheel along, from its first station inward. */
export interface Way {
  readonly heading: string
  readonly entry: string
  readonly rough: boolean
  readonly names: readonly string[]
  readonly stations: readonly WayStation[]
  readonly ponds: readonly { readonly from: number, readonly to: number, readonly depth: number }[]
  readonly sentence: string
  readonly figures: readonly { readonly name: string, readonly answer: Answer }[]
  /** Places too low, too narrow or too steep, from the portal inward. */
  readonly pinches: readonly { readonly at: number, readonly station: string, readonly says: string }[]
}

/** One size of cut at the portal and its four answers. */
export interface OpeningCase {
  /** Metres. */
  readonly depth: number
  /** In the crew's unit, as printed. */
  readonly says: string
  readonly way: readonly WayStation[]
  readonly muck: Answer
  readonly air: Answer
  readonly headRoom: Answer
  readonly span: Answer
  readonly sentence: string
}

export interface Opening {
  readonly heading: string
  readonly cuts: readonly { readonly cut: Cut, readonly name: string, readonly cases: readonly OpeningCase[] }[]
  readonly cautions: readonly string[]
}

export interface Timber {
  readonly sentence: string
  readonly sets: Answer
  readonly lagging: Answer
  readonly round: Answer
  readonly places: readonly { readonly heading: string, readonly from: number, readonly to: number, readonly says: string }[]
}

/** What it takes to get in and out properly. */
export interface Access {
  readonly sentence: string
  /** All that is still to do: m³ in place, loads, crew days. */
  readonly figures: readonly { readonly name: string, readonly answer: Answer }[]
  readonly jobs: readonly Digging[]
  /** Jobs whose size nobody has measured. */
  readonly unsized: readonly { readonly entry: string, readonly name: string, readonly why: string }[]
  readonly ways: readonly Way[]
  readonly opening: Opening | NotEnough
  readonly timber: Timber | NotEnough
  readonly cautions: readonly string[]
}
