import type { Enu, VeinPoint } from '@lodebook/reckon'
import { random, type Random } from './random.ts'
import type { Grains } from './truth/grains.ts'
import type { Ore } from './truth/ore.ts'
import type { Diary } from './write/diary.ts'

/** A mistake that the crew has made and not noticed. */
export interface Mistake {
  readonly sort: 'backsight' | 'bags swapped' | 'blank carries gold' | 'width down the dip' | 'unit slip'
  /** The entries in which it stands. */
  readonly entries: readonly string[]
  readonly sentence: string
  /** What should have been written, where one value says it. */
  readonly right?: string
}

/** Where something written down really is. */
export interface Spot { readonly point: Enu, readonly vein?: VeinPoint }

/** What a bag really holds. */
export interface BagTruth {
  readonly bag: string
  readonly entry: string
  readonly method: string
  readonly vein?: VeinPoint
  /** What the ground there carries, g/t over the material sampled, and its true width across, metres. */
  readonly grade: number
  readonly width?: number
  /** What went into the bag: dry grams, and the grains of gold that happened to be in them. */
  readonly grams: number
  readonly grains: Grains
  /** Role: an ordinary sample or a duplicate from the wall. */
  readonly role: 'ordinary' | 'duplicate'
}

/** All that the parts of the crew's season share while it is being made. */
export interface Making {
  readonly ore: Ore
  readonly diary: Diary
  /** Numbers for one part; independent of every other part. */
  readonly numbers: (stream: string) => Random
  /** Whether the crew makes mistakes, and those made so far. */
  readonly careless: boolean
  readonly mistakes: Mistake[]
  readonly spots: Map<string, Spot>
  readonly bags: Map<string, BagTruth>
  /** Digging jobs by name: what there really is to move, m³ in place. */
  readonly dug: Map<string, number>
  readonly loose: LooseEnds
}

/** Numbers of bags that a careless crew can't account for; '' for a careful one. */
export interface LooseEnds { passedOver: string, twice: string, lost: string }

export const makeMaking = (seed: number, ore: Ore, diary: Diary, careless: boolean): Making =>
  ({ ore, diary, numbers: stream => random(seed, stream), careless, mistakes: [], spots: new Map(), bags: new Map(), dug: new Map(), loose: { passedOver: '', twice: '', lost: '' } })
