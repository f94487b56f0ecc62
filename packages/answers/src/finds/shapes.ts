import type { Enu } from '@lodebook/reckon'
import type { Answer } from '../answer.ts'
import type { Piece } from './pieces.ts'

/** A line along one side of an opening that the coil went over. */
export interface SweptLine { readonly side: string, readonly points: readonly Enu[] }

/** A stretch that was gone over with the detector. */
export interface SweptAt {
  readonly entry: string
  /** 'A3 to A6, left rib and back'. */
  readonly says: string
  readonly result: 'silent' | 'marks found' | 'noise only'
  readonly marks: readonly string[]
  /** Metres along the opening; undefined when its ends are not placed. */
  readonly length: number | undefined
  readonly lines: readonly SweptLine[]
  /** Parts of legs that it covers. */
  readonly pieces: readonly Piece[]
  readonly with: string
  readonly by: string
  readonly when: string
}

/** One thing that happened to a target, from the signal to the weight. */
export interface TargetStep {
  readonly entry: string
  readonly kind: string
  readonly says: string
  readonly who: string
  /** A day or a moment, as written; '' when nobody wrote it. */
  readonly when: string
}

export type TargetState = 'open' | 'still in the wall' | 'in a piece' | 'in the mortar' | 'gold' | 'no gold in the pan' | 'scrap iron' | 'other metal' | 'hot rock' | 'relic' | 'gone'

/** A target with its whole chain. */
export interface TargetStory {
  readonly entry: string
  readonly mark: string
  readonly state: TargetState
  /** Whether there is still something to look for. */
  readonly open: boolean
  readonly strength: number | undefined
  readonly character: string
  readonly sentence: string
  readonly steps: readonly TargetStep[]
  /** Gold weighed or counted at the end of the chain, mg. */
  readonly gold: Answer | undefined
  /** What is still to be done, when there is something. */
  readonly next: string
}

/** Where a find is, so that it can be found again. */
export interface FindAt {
  readonly entry: string
  readonly kind: string
  readonly title: string
  /** A short word for drawing it: a target's state, a sample's role. */
  readonly tag: string
  /** In the crew's units, as one would tape it again. */
  readonly where: string
  readonly point: Enu | undefined
  /** One standard deviation of the place as taped from its station, metres: how far round it to look. */
  readonly doubt: number | undefined
  /** Metres on foot from the portal, along the shots; undefined when it hangs on no shot. */
  readonly way: number | undefined
  readonly nearestStation: { readonly name: string, readonly metres: number } | undefined
  /** What lies within a metre, nearest first. */
  readonly near: readonly NearBy[]
  /** Pictures that show it, the latest first, with the spot marked where somebody has marked it. */
  readonly photos: readonly { readonly entry: string, readonly x: number | undefined, readonly y: number | undefined }[]
  /** Dangers written down within three metres of it. */
  readonly hazards: readonly NearBy[]
}

export interface NearBy { readonly entry: string, readonly kind: string, readonly title: string, readonly tag: string, readonly metres: number }

/** What was found, where, and what was gone over without finding anything. */
export interface Finds {
  readonly sentence: string
  readonly figures: readonly Answer[]
  readonly sweeps: readonly SweptAt[]
  readonly targets: readonly TargetStory[]
  /** Targets that are still to be followed up, nearest to the portal first: entry ids. */
  readonly open: readonly string[]
  readonly finds: readonly FindAt[]
  /** The station from which ways are counted; '' when there is none. */
  readonly portal: string
  readonly cautions: readonly string[]
}
