// Variograms
export { Covariance, variogramAt } from './covariance.ts'
export { experimentalVariogram } from './experimental-variogram.ts'
export type { VariogramOptions } from './experimental-variogram.ts'
export { fitVariogram } from './fit-variogram.ts'
export type { FitOptions, VariogramFit } from './fit-variogram.ts'
export type { Lag } from './lag.ts'
export { checkModel, sillOf } from './model.ts'
export type { Point2, Sample, Structure, StructureType, VariogramModel } from './model.ts'

// Kriging
export type { Covariates, KrigingKind } from './drift.ts'
export { krige } from './kriging/krige.ts'
export type { Kriged } from './kriging/krige.ts'
export { krigePanels, totalOver } from './kriging/krige-panels.ts'
export type { KrigedPanels, PanelOptions } from './kriging/krige-panels.ts'
export type { KrigeOptions } from './kriging/options.ts'
export { polygonPanel, rectangularPanels } from './kriging/panel.ts'
export type { Panel } from './kriging/panel.ts'
export { gatherSamples } from './samples.ts'
export type { Samples } from './samples.ts'
export { blockSupport } from './support.ts'
export type { Discretisation, Support } from './support.ts'
export { crossValidate } from './kriging/cross-validate.ts'
export type { CrossValidateOptions, CrossValidation } from './kriging/cross-validate.ts'

// Simulation
export { simulate } from './simulation/simulate.ts'
export type { SimulateOptions, Simulation } from './simulation/simulate.ts'
