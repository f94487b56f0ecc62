import type { Answer } from '../answer.ts'

/** One bag on a chart: its entry opens. */
export interface BagPoint { readonly bag: string, readonly entry: string }

export interface VariogramShown {
  readonly of: string
  /** Half the mean squared difference of the logs, with how many pairs made it; and the same by a form that one odd pair does not move. */
  readonly lags: readonly { readonly pairs: number, readonly distance: number, readonly gamma: number, readonly robust: number }[]
  /** Along the vein, down it, and the two diagonals; azimuth clockwise from up the dip. */
  readonly ways: readonly { readonly name: string, readonly lags: readonly { readonly pairs: number, readonly distance: number, readonly gamma: number }[] }[]
  /** The most believable curve, drawn at even distances, and the middle 80 % of curves still believable. */
  readonly curve: readonly { readonly distance: number, readonly gamma: number, readonly low: number, readonly high: number }[]
  /** Pairs of samples, those furthest apart in value first. */
  readonly cloud: readonly { readonly a: BagPoint, readonly b: BagPoint, readonly distance: number, readonly gamma: number, readonly says: string }[]
  readonly answer: Answer
}

/** A sample that was told by the others. */
export interface LeftOut extends BagPoint {
  readonly told: number
  readonly measured: number
  readonly z: number
}

/** What stands beside the headline: bunched samples, high values, how far the gold carries, each sample told from the others, and plain averages. */
export interface GradeStudy {
  readonly sentence: string
  /** The ounces of the same ground by other ways of averaging: plain, cells, polygons, and the mean of few lognormal values. */
  readonly averages: readonly Answer[]
  readonly topCut: {
    readonly sentence: string
    /** The uncut plain figure, ounces. */
    readonly uncut: Answer
    readonly tenths: readonly { readonly from: number, readonly to: number, readonly share: number }[]
    readonly cuts: readonly { readonly cut: number, readonly values: number, readonly answer: Answer }[]
    /** Samples by rank: g/t and the standard normal value of the rank. */
    readonly points: readonly (BagPoint & { readonly grade: number, readonly z: number })[]
  } | undefined
  /** Undefined below the number of samples at which a variogram means anything; `sentence` says so. */
  readonly variogram: VariogramShown | undefined
  readonly leftOut: { readonly answer: Answer, readonly points: readonly LeftOut[] } | undefined
  /** Panels where kriging and the field part most, each with the sample that does it. */
  readonly parted: readonly { readonly panel: string, readonly bag: BagPoint, readonly sentence: string }[]
  readonly cautions: readonly string[]
}
