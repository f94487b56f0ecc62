import type { Answer, NotEnough } from '../answer.ts'

export interface MonthShown {
  readonly month: string
  /** °C. */
  readonly low: number
  readonly high: number
  /** m3/s each way at the low and at the high of the day. */
  readonly atLow: number
  readonly atHigh: number
  readonly topAtLow: 'in' | 'out' | 'none'
  readonly topAtHigh: 'in' | 'out' | 'none'
  readonly turns: boolean
}

/** How the workings get their air. Every flow here is reckoned, not measured, unless it says so. */
export interface Breathing {
  readonly sentence: string
  readonly openings: readonly {
    readonly name: string
    readonly station: string
    readonly width: number
    readonly height: number
    readonly state: string
    readonly entry?: string
  }[]
  /** Inside temperature, °C. */
  readonly inside: Answer | NotEnough
  /** Flow in use for what follows, m3/s: through the network with two openings or more, each way through the portal with one. */
  readonly flow: Answer | NotEnough
  readonly months: readonly MonthShown[]
  readonly monthsWanted: NotEnough | undefined
  /** With two openings or more: the flow in each leg. */
  readonly legs: readonly { readonly from: string, readonly to: string, readonly flow: number, readonly speed: number }[]
  readonly people: Answer | undefined
  readonly volume: Answer | undefined
  readonly clearing: readonly Answer[]
  /** Speeds read times the section there. */
  readonly measured: readonly Answer[]
  readonly fans: readonly Answer[]
  readonly cautions: readonly string[]
}
