import type { Blob } from '@lodebook/book'
import type { AirFinding, Profile, Substance } from '@lodebook/reckon/air'
import type { Answer } from '../answer.ts'

/** How far in something lies: metres along the surveyed way from the portal; undefined when it is not placed yet. */
export type DistanceIn = number | undefined

/** A caution with where it comes from; `topic` says what calls for it. */
export interface Caution { readonly topic: Topic, readonly says: string, readonly source: string }
export type Topic = 'explosives' | 'animals' | 'bats' | 'droppings' | 'water' | 'winze or shaft' | 'timber' | 'alone' | 'heat or cold' | 'mercury or lead' | 'air' | 'ground' | 'wires or machines'

/** One reading of the air, with what is outside a limit. */
export interface AirReadingAt {
  readonly entry: string
  readonly taken: string
  readonly values: Readonly<Partial<Record<Substance, number>>>
  readonly heldAt: string | undefined
  readonly smell: string | undefined
  readonly findings: readonly Finding[]
  /** Readings that look like a slip, as questions. */
  readonly doubts: readonly string[]
  /** Of the six gases, those the meter did not give. */
  readonly notRead: readonly string[]
  /** What is to be said of the meter and of how it was held. */
  readonly meter: readonly string[]
  readonly dryBulb: number | undefined
}

/** A reading outside a published limit: an answer whose value is the reading. */
export interface Finding extends AirFinding { readonly entry: string, readonly where: string, readonly taken: string, readonly answer: Answer }

/** All readings at one place, latest last. */
export interface AirPlace {
  readonly name: string
  readonly station: string | undefined
  readonly distance: DistanceIn
  readonly readings: readonly AirReadingAt[]
  readonly latest: AirReadingAt
}

export interface AirSeen {
  readonly places: readonly AirPlace[]
  /** Outside a limit at the latest reading of a place, worst first. */
  readonly findings: readonly Finding[]
  readonly profile: Profile
  /** Every limit in force, for a page that shows them. */
  readonly limits: readonly LimitShown[]
  readonly notRead: readonly string[]
  readonly ways: readonly { readonly gas: string, readonly weight: number, readonly hold: readonly string[], readonly says: string }[]
}

export interface LimitShown {
  readonly substance: string
  readonly kind: string
  readonly text: string
  readonly rule: string
  readonly section: string
  readonly status: string
  readonly source: string
  readonly says: string
  /** The crew's own entry, when it is one. */
  readonly entry?: string
}

export interface HazardMet {
  readonly entry: string
  readonly sort: string
  readonly where: string
  readonly distance: DistanceIn
  /** Along the line from the portal, a word on which heading it is in. */
  readonly heading: string | undefined
  readonly state: string
  readonly seen: string | undefined
  readonly action: string | undefined
  readonly note: string | undefined
}

/** One item of the check before going in. */
export interface CheckItem {
  readonly item: string
  readonly part: 'before leaving' | 'at the portal' | 'on the way in'
  readonly asks: string
  /** The words under the two answers. */
  readonly good: string
  readonly bad: string
  /** Why this mine asks it, when it is not asked everywhere. */
  readonly why: string
  readonly station: string | undefined
  readonly distance: DistanceIn
  readonly about: string | undefined
  /** An entry of this kind at this station also answers it. */
  readonly byEntry: 'air' | 'ground' | undefined
  readonly topic: Topic | undefined
  /** Every answer ever given, latest first. */
  readonly answers: readonly CheckAnswered[]
}

export interface CheckAnswered {
  readonly entry: string
  readonly taken: string
  readonly answer: 'as it should be' | 'something found' | 'not looked at' | 'read'
  readonly note: string | undefined
  readonly picture: Blob | undefined
  readonly by: string
}

/** One going in, as written. Times are moments as written. */
export interface GoingInAt {
  readonly entry: string
  readonly people: readonly string[]
  readonly in: string
  readonly due: string
  readonly out: string | undefined
  readonly outside: string | undefined
  readonly reach: string | undefined
  readonly going: string | undefined
  readonly call: string | undefined
  /** Hours after the time due at which help is called for. */
  readonly callAfter: number
  readonly heard: string | undefined
  readonly heardBy: string | undefined
  readonly called: string | undefined
}

/** Something that was left open the last time. */
export interface LeftOpen { readonly entry: string, readonly says: string, readonly distance: DistanceIn, readonly since: string | undefined }

export interface WayIn {
  readonly portal: string
  /** Stations underground by distance from the portal, metres along the survey. */
  readonly stations: readonly { readonly name: string, readonly distance: number, readonly heading: string | undefined }[]
}

/** Today: what the book says before anybody goes in. It never says whether they may. */
export interface Today {
  readonly sentence: string
  /** The latest moment written down of anything it rests on; '' for none. */
  readonly asOf: string
  readonly way: WayIn | undefined
  readonly items: readonly CheckItem[]
  readonly hazards: readonly HazardMet[]
  readonly leftOpen: readonly LeftOpen[]
  readonly air: AirSeen
  /** Goings in, latest first. */
  readonly goings: readonly GoingInAt[]
  /** When somebody last came out of the mine, as far as it is written. */
  readonly lastTime: string | undefined
  readonly rescue: RescueFacts
  readonly cautions: readonly Caution[]
}

/** Where the mine is, in every form a rescuer may ask for, and what waits there. */
export interface RescueFacts {
  readonly mine: string
  readonly district: string | undefined
  readonly position: readonly { readonly form: string, readonly text: string }[]
  readonly note: string
}
