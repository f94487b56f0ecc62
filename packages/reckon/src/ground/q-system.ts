import { finite, InputError, positive } from '../core/index.ts'

export const qSource = 'Barton, Lien and Lunde, Rock Mechanics 6 (1974) 189-236 (Jn, Jr, Ja read in a printed copy, scribd.com/document/605497152; Jw, SRF, ESR from memory)'

/** Joint set number. */
export const setNumbers = { 'none or few': 1, one: 2, 'one and random': 3, two: 4, 'two and random': 6, three: 9, 'three and random': 12, 'four or more': 15, crushed: 20 } as const
/** Joint roughness number. Broken: the trace does not run on. */
export const roughnessNumbers = {
  'rough and broken': 4, 'smooth and broken': 3, 'slickensided and broken': 2, 'rough and wavy': 3, 'smooth and wavy': 2, 'slickensided and wavy': 1.5,
  'rough and flat': 1.5, 'smooth and flat': 1, 'slickensided and flat': 0.5, 'gouge, no contact': 1,
} as const
/** Joint alteration number, walls in touch but for the last. */
export const alterationNumbers = { healed: 0.75, 'stained only': 1, 'slightly altered': 2, 'silty or sandy coat': 3, 'soft clay coat': 4, 'clay, thick': 8 } as const
/** Joint water reduction. */
export const waterNumbers = { dry: 1, damp: 1, wet: 0.66, dripping: 0.66, flowing: 0.5 } as const
/** Stress reduction factor. */
export const stressNumbers = { 'near the surface, loose': 2.5, medium: 1, 'single crushed zone near the surface': 5, 'many crushed zones': 10 } as const

/** Excavation support ratio: temporary mine openings 3 to 5, permanent ones 1.6. */
export const supportRatios = { temporary: 3, permanent: 1.6 } as const

export interface QInput { readonly rqd: number, readonly jn: number, readonly jr: number, readonly ja: number, readonly jw: number, readonly srf: number }

/**
 * Rock mass quality Q = RQD/Jn x Jr/Ja x Jw/SRF. RQD below 10 counts as 10.
 * @throws InputError for values that are not above zero
 */
export function rockQuality({ rqd, jn, jr, ja, jw, srf }: QInput): number {
  if (!(finite(rqd, 'rqd') >= 0 && rqd <= 100)) throw new InputError('rqd', rqd, '0 to 100 per cent')
  for (const [field, value] of Object.entries({ jn, jr, ja, jw, srf })) positive(value, field)
  return Math.max(10, rqd) / jn * (jr / ja) * (jw / srf)
}

/** Widest span left without support, metres: 2 ESR Q^0.4 (Barton and others; formula as quoted by Hoek, from memory). */
export const unsupportedSpan = (q: number, esr: number): number => 2 * positive(esr, 'esr') * positive(q, 'q') ** 0.4

/** RMR that a Q stands for, 9 ln Q + 44 (Bieniawski, as quoted by Palmstrom 2008; read). A rough likeness. */
export const ratingFromQuality = (q: number): number => 9 * Math.log(positive(q, 'q')) + 44
