// Before going in
export type * from './shapes.ts'
export type * from './breathing-shapes.ts'
export type * from './ground-shapes.ts'
export { cautionsOf } from './cautions.ts'
export { todayAt } from './today-at.ts'
export type { CheckNow, TodayNow } from './today-at.ts'

// The call-out clock
export { callOutAt, reminder } from './call-out.ts'
export type { CallOut, CallOutState } from './call-out.ts'
