import type { VeinPoint } from '@lodebook/reckon'
import type { Answer, AnswerRange } from '../answer.ts'

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

/** How a panel is known, in the old words: sides on which an opening shows the vein, and how far the nearest sample is. */
export interface Known { readonly word: 'positive' | 'probable' | 'possible', readonly sides: number, readonly sentence: string }

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
  /** 80 % and 95 % range of its ounces. */
  readonly low: number
  readonly high: number
  readonly low95: number
  readonly high95: number
  /** Width of the 80 % range, ounces. */
  readonly rangeWidth: number
  /** Relative standard deviation of its accumulation. */
  readonly doubt: number
  readonly nearest: number // m to the nearest sample
  readonly known: Known
  /** Broken at the least working width, wall rock with it: m, t, g/t. */
  readonly broken: { readonly width: number, readonly tonnes: number, readonly grade: number }
  /** Chance that it runs above each of the grade's cut-offs, as broken. */
  readonly chances: Float32Array
  readonly answer: Answer
}

/** What is left above a cut-off: panels whose expected grade as broken is above it, taken together. */
export interface AboveCutOff {
  /** g/t as broken. */
  readonly cutOff: number
  readonly panels: number
  readonly tonnes: Answer
  readonly ounces: Answer
  readonly grade: Answer
}

/** The same ground's outcome, one number a panel: g/t over the vein's width, m, g/t m. */
export interface Realisation { readonly grade: Float32Array, readonly width: Float32Array, readonly accumulation: Float32Array }

export interface VariogramDrawn {
  readonly of: string
  readonly lags: readonly { readonly pairs: number, readonly distance: number, readonly gamma: number }[]
  readonly model: { readonly type: string, readonly nugget: number, readonly partialSill: number, readonly range: number } | undefined
  readonly sentence: string
}

export interface Grade {
  readonly sentence: string
  readonly ounces: Answer
  /** 95 % range of the ounces, beside the 80 % one of `ounces`. */
  readonly ounces95: AnswerRange
  readonly tonnes: Answer
  readonly grade: Answer
  readonly width: Answer
  /** All the panels broken at the least working width: rock, and its grade. */
  readonly broken: { readonly tonnes: Answer, readonly grade: Answer }
  /** The same ground by plain averages, as an audit. */
  readonly audit: Answer
  readonly panels: readonly Panel[]
  /** Panels that the crew drew: other cuts of the same ground, in no total. */
  readonly drawn: readonly Panel[]
  /** Cut-offs rising, as broken. */
  readonly cutOffs: readonly AboveCutOff[]
  /** A few equally likely outcomes of all panels, to be looked at one after another. */
  readonly realisations: readonly Realisation[]
  readonly samples: readonly SampleAt[]
  /** Whether there are samples enough for a variogram. */
  readonly spatial: boolean
  readonly cautions: readonly string[]
  /** Outcomes for the reckoning of pay: ounces in place and tonnes of vein, drawn together. */
  readonly outcomes: {
    readonly ounces: readonly number[]
    readonly tonnes: readonly number[]
    /** t/m3, one an outcome. */
    readonly density: readonly number[]
    readonly panels: readonly PanelOutcomes[]
    /** Of the panels that the crew drew. */
    readonly drawn: readonly PanelOutcomes[]
  }
}

/** One panel outcome by outcome: ounces in place, true width in metres. */
export interface PanelOutcomes { readonly name: string, readonly area: number, readonly ounces: Float64Array, readonly width: Float64Array }

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
