import type { Answer, Assumed } from '../answer.ts'

/** What a plan for taking a sample is asked for. Lengths in metres, masses in grams, grade in g/t. */
export interface PlanWish {
  readonly grade: number
  /** Size of the largest gold grain seen. */
  readonly grain: number
  /** Size of the largest pieces as they come off. */
  readonly fragment: number
  /** One standard deviation over the grade, as a share. */
  readonly precision: number
  /** What is panned or sent in the end, at most. */
  readonly finalMass: number
  /** How fine it must be then. */
  readonly finalSize: number
  /** A cut across the face, or rock thrown into the bag as it fell. */
  readonly cut: boolean
}

/** How much to take and how to bring it down, for one wish. */
export interface SamplePlanFound {
  readonly sentence: string
  readonly reached: boolean
  /** g. */
  readonly bag: Answer
  /** One standard deviation over the grade of bag and splits together. */
  readonly precision: Answer
  /** One line a stage, in the crew's units. */
  readonly steps: readonly string[]
  readonly minutes: number
  /** What bags of several masses can have at best. */
  readonly bags: readonly { readonly mass: number, readonly atBest: number, readonly asBroken: number, readonly grains: number, readonly none: number }[]
  readonly assumed: readonly Assumed[]
  readonly cautions: readonly string[]
}

/** How much to take, and how, for what the crew has seen of its own material. */
export interface SamplePlanning extends SamplePlanFound {
  /** What it was worked out for; a screen may put other figures in and ask again with `planFor`. */
  readonly wish: PlanWish
  /** Where each of them came from, in a few words. */
  readonly whence: Readonly<Record<keyof PlanWish, string>>
}
