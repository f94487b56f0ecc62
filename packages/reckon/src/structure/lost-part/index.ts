// What is known
export { doubtfulPlane } from './doubtful-plane.ts'
export type { DoubtfulPlane } from './doubtful-plane.ts'
export { grooveMean } from './groove-mean.ts'
export type { GrooveMean, GrooveReading } from './groove-mean.ts'
export { markerBetween } from './marker-offset.ts'
export type { MarkerLook, MarkerOffset } from './marker-offset.ts'
export { markerWalls } from './marker-walls.ts'
export type { MarkerPlaces } from './marker-walls.ts'
export type { SlipAmount } from './slip-amount.ts'
export type { Grooves, SlipEvidence, SlipSense } from './slip-evidence.ts'

// What follows
export { lostPartFamily } from './lost-part-family.ts'
export type { FarSide, LostPartDraw, LostPartFamily, LostPartInput } from './lost-part-family.ts'
export { tooWide, whatItTells } from './what-it-tells.ts'
export type { Separation, Tells } from './what-it-tells.ts'

// How to reach it
export { chanceWithin, lengthFor } from './lengths.ts'
export { bearingOf, meetHeading } from './meet-heading.ts'
export type { Heading, HeadingMeets } from './meet-heading.ts'
export { shortestHeading, thinned } from './shortest-heading.ts'
export type { HeadingChoice, ShortestHeading } from './shortest-heading.ts'

// How to draw it
export { crossSheet, edgeOf, edgesOn, fromSheet, onSheet, planeOnSheet, planSheet, tracesOn } from './trace.ts'
export type { Sheet, SheetLine, SheetPoint } from './trace.ts'
export { stretchOf, traceBand } from './trace-band.ts'
export type { SheetWindow, TraceBand } from './trace-band.ts'
