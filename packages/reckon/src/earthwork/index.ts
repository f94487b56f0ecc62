export { muck } from './muck.ts'
export type { Muck } from './muck.ts'
export { sectionVolume } from './section-volume.ts'
export type { Section, VolumeRule } from './section-volume.ts'
