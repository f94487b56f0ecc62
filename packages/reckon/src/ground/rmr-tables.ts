/**
 * Rating bands of the rock mass rating RMR of 1989, as data. From memory (M) of Bieniawski, Engineering Rock Mass Classifications, 1989;
 * government copy: Tunnel design by rock mass classifications, US Army Corps of Engineers TR GL-79-19, 1990 (DTIC AD-A219783), located, not read.
 */
export const rmrSource = 'Bieniawski, Engineering Rock Mass Classifications, 1989 (tables from memory; check against USACE TR GL-79-19)'

/** [at least, rating], highest first; the last row holds below the others. */
type Bands = readonly (readonly [least: number, rating: number])[]

/** Unconfined strength, MPa. */
export const strengthBands: Bands = [[250, 15], [100, 12], [50, 7], [25, 4], [5, 2], [1, 1], [0, 0]]
/** Point load index, MPa; below 1 the test says nothing. */
export const pointLoadBands: Bands = [[10, 15], [4, 12], [2, 7], [1, 4]]
/** RQD, %. */
export const rqdBands: Bands = [[90, 20], [75, 17], [50, 13], [25, 8], [0, 3]]
/** Joint spacing, m. */
export const spacingBands: Bands = [[2, 20], [0.6, 15], [0.2, 10], [0.06, 8], [0, 5]]

/** The rating of a value; undefined below the lowest band. */
export const ratingIn = (bands: Bands, value: number): number | undefined => bands.find(([least]) => value >= least)?.[1]

/** Field strength by nail, knife and hammer, as an unconfined strength in MPa: middle of the band that the test stands for (ISRM grades, from memory). */
export const fieldStrengths = {
  'a nail scratches it': 3, 'a knife scrapes it': 15, 'one hammer blow': 37, 'several blows': 75, 'many blows': 175, 'hammer rings': 260,
} as const

export const conditionRatings = {
  'very rough, tight, fresh': 30, 'slightly rough, under 1 mm, slightly weathered': 25, 'slightly rough, under 1 mm, highly weathered': 20,
  'slickensided or gouge under 5 mm': 10, 'soft gouge over 5 mm': 0,
} as const
export const waterRatings = { dry: 15, damp: 10, wet: 7, dripping: 4, flowing: 0 } as const
/** For tunnels. */
export const orientationRatings = { 'very favourable': 0, favourable: -2, fair: -5, unfavourable: -10, 'very unfavourable': -12 } as const

export interface RmrClass { readonly name: string, readonly least: number, readonly says: string, readonly spanM: number, readonly standUpHours: number }

/** Class by total; the span and how long it stood unsupported, as published for that class. */
export const rmrClasses: readonly RmrClass[] = [
  { name: 'I', least: 81, says: 'very good', spanM: 15, standUpHours: 20 * 8766 }, { name: 'II', least: 61, says: 'good', spanM: 10, standUpHours: 8766 },
  { name: 'III', least: 41, says: 'fair', spanM: 5, standUpHours: 168 }, { name: 'IV', least: 21, says: 'poor', spanM: 2.5, standUpHours: 10 }, { name: 'V', least: 0, says: 'very poor', spanM: 1, standUpHours: 0.5 },
]
