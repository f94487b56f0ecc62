import type { VeinPoint } from '../../core/index.ts'

/** One sample of a positive quantity on the vein, on logs: what was measured, and the variance of its own error (not of the ground). */
export interface LogSample {
  readonly at: VeinPoint
  readonly logValue: number
  readonly errorVariance: number
}

/** One candidate description of the ground, and how believable it is beside the others. */
export interface FieldNode {
  readonly variance: number
  readonly nuggetShare: number
  readonly range: number
  readonly weight: number
}
