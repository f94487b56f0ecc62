/** How warm it is outside, with the words that say which moment is meant. */
export interface OutsideNow {
  readonly celsius: number
  readonly says: string
  readonly from: readonly string[]
}
