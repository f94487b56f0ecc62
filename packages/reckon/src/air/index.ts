// Gases
export { gases, gasNames } from './gas.ts'
export type { Gas, GasReadings } from './gas.ts'
export { gasLimits } from './gas-limits.ts'
export type { GasLimit, LimitKind, Standing } from './gas-limits.ts'
export { gasCheck } from './gas-check.ts'
export type { GasCheck, GasFinding } from './gas-check.ts'
export type { GasDoubt } from './gas-doubts.ts'

// Moving air
export { airway } from './airway.ts'
export type { Airway, AirwayInput } from './airway.ts'
export { naturalDraught } from './natural-draught.ts'
export type { NaturalDraught } from './natural-draught.ts'
export { portalExchange } from './portal-exchange.ts'
export type { PortalExchange } from './portal-exchange.ts'

// Thinning out
export { clearingTime } from './clearing-time.ts'
export type { ClearingTime } from './clearing-time.ts'
export { contaminantBuildUp } from './contaminant-build-up.ts'

// Limits in force
export { airLimits, limitsInForce, profiles, substances } from './air-limits.ts'
export type { AirLimit, LimitSet, OwnLimit, Profile, Substance } from './air-limits.ts'
export { airCheck, workingLevelsAtMost } from './air-check.ts'
export type { AirFinding, AirReadings } from './air-check.ts'
export { isOutside, worstFirst } from './worst-first.ts'
export { gasDoubts } from './gas-doubts.ts'
export { gasWays, gasWaysSource } from './gas-ways.ts'
export type { GasWay } from './gas-ways.ts'

// Air in headings
export { frictionFactors, shockFactors } from './friction-factors.ts'
export type { FrictionFactor } from './friction-factors.ts'
export { middleToMean, smokeSpeed, traverse } from './traverse.ts'
export type { Traverse } from './traverse.ts'
export { airNetwork } from './air-network.ts'
export type { AirBranch, AirNetwork, SolvedBranch } from './air-network.ts'
export { fanDuct, jointGaps } from './fan-duct.ts'
export type { FanDuct, FanDuctInput } from './fan-duct.ts'
export { airPerPerson, breathingOutlook } from './breathing-outlook.ts'
export type { MonthBreathing, MonthOutside } from './breathing-outlook.ts'
