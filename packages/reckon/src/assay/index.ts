// One sample, all looks together
export { sampleBelief } from './sample-belief.ts'
export type { GoldLook, GradePrior, SampleBelief } from './sample-belief.ts'
