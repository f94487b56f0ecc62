// Volumes
export { heightAt, profileAreas, profileBetween } from './profile-areas.ts'
export type { CutAndFill, Profile } from './profile-areas.ts'
export { sectionVolume } from './section-volume.ts'
export type { Section, VolumeRule } from './section-volume.ts'
export { surfaceVolume } from './surface-volume.ts'
export type { SurfaceVolume } from './surface-volume.ts'
export { gullyFill, rampFill } from './ramp.ts'
export type { Ramp } from './ramp.ts'

// What it comes to when it is moved, and where it goes
export { groundMaterial, groundMaterials } from './ground-material.ts'
export type { GroundMaterial } from './ground-material.ts'
export { muck } from './muck.ts'
export type { Muck } from './muck.ts'
export { coneHeap, heapRoom } from './heap.ts'
export type { Heap } from './heap.ts'

// Moving it
export { pushLimit } from './push.ts'
export { loadCycle } from './load-cycle.ts'
export type { CycleGiven, LoadCycle } from './load-cycle.ts'
export { loadRate, timeForLoads } from './tally-rate.ts'
export type { LoadRate } from './tally-rate.ts'

// The way in
export { wayIn } from './way-in.ts'
export type { WayIn, WayLeg, WayStation } from './way-in.ts'
export { openUp } from './opening-up.ts'
export type { Cut, OpenedUp } from './opening-up.ts'
export { timberCount } from './timber-count.ts'
export type { TimberCount } from './timber-count.ts'
export { classForSpan, spanClasses } from './span-classes.ts'
export type { SpanClass } from './span-classes.ts'
