import type { VeinPoint } from '@lodebook/reckon'
import type { Answer } from '../answer.ts'

/** One sample as the crew may believe it: a grade with its doubt, on the vein. */
export interface SampleAt {
  readonly entry: string
  readonly bag: string
  readonly at: VeinPoint | undefined
  readonly width: number | undefined
  /** g/t: central value and 80 % range; `below` when nothing was found and only a limit is known. */
  readonly grade: number
  readonly low: number
  readonly high: number
  readonly below: boolean
  /** Standard deviation of ln(grade) from sampling, panning and assay together. */
  readonly logSd: number
  /** Grade times true width, g/t m; and its mean, which is what adds up. */
  readonly accumulation: number | undefined
  readonly meanAccumulation: number | undefined
  readonly used: boolean
  readonly why: string
  readonly answer: Answer
}

export interface Panel {
  readonly name: string
  readonly corners: readonly VeinPoint[]
  readonly centre: VeinPoint
  readonly area: number // m² on the vein, worked-out ground taken away
  readonly width: number // m
  readonly accumulation: number // g/t m
  readonly grade: number // g/t over the vein's width
  readonly tonnes: number
  readonly ounces: number
  /** 80 % range of its ounces. */
  readonly low: number
  readonly high: number
  /** Relative standard deviation of its accumulation. */
  readonly doubt: number
  readonly nearest: number // m to the nearest sample
  readonly answer: Answer
}

export interface VariogramDrawn {
  readonly of: string
  readonly lags: readonly { readonly pairs: number, readonly distance: number, readonly gamma: number }[]
  readonly model: { readonly type: string, readonly nugget: number, readonly partialSill: number, readonly range: number } | undefined
  readonly sentence: string
}

export interface Grade {
  readonly sentence: string
  readonly ounces: Answer
  readonly tonnes: Answer
  readonly grade: Answer
  readonly width: Answer
  /** The same ground by plain averages, as an audit. */
  readonly audit: Answer
  readonly panels: readonly Panel[]
  readonly samples: readonly SampleAt[]
  readonly variograms: readonly VariogramDrawn[]
  readonly spatial: boolean
  readonly cautions: readonly string[]
  /** Outcomes for the reckoning of pay: ounces in place and tonnes of vein, drawn together. */
  readonly outcomes: {
    readonly ounces: readonly number[]
    readonly tonnes: readonly number[]
    /** t/m3, one an outcome. */
    readonly density: readonly number[]
    readonly panels: readonly { readonly name: string, readonly area: number, readonly ounces: Float64Array, readonly width: Float64Array }[]
  }
}

/** A heap of broken rock: its volume, loose density and sampled grade with their errors, counted outcome by outcome. */
export interface Heap {
  readonly entry: string
  readonly name: string
  readonly sort: 'gob' | 'dump' | 'muck' | 'tailings'
  /** How many bags tell of it. */
  readonly bags: number
  readonly tonnes: Answer
  readonly grade: Answer
  readonly ounces: Answer
  /** Equally likely outcomes, tonnes and ounces drawn together; as many as those of Grade. */
  readonly outcomes: { readonly tonnes: Float64Array, readonly ounces: Float64Array }
}

export interface Heaps {
  readonly sentence: string
  readonly heaps: readonly Heap[]
  /** Heaps of which too little is known for a figure, and what would tell. */
  readonly untold: readonly { readonly entry: string, readonly name: string, readonly why: string }[]
  readonly cautions: readonly string[]
}
