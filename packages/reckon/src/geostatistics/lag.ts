/** One bin of an experimental variogram: how many pairs, their mean distance, and half the mean squared difference. */
export interface Lag {
  readonly pairs: number
  readonly distance: number
  readonly gamma: number
}
