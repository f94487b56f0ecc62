import type { Gas } from './gas.ts'

export interface GasWay {
  /** Weight beside air of the same warmth. */
  readonly specificGravity: number
  /** Where the meter is to be held for it. */
  readonly hold: readonly ('sill' | 'waist' | 'head' | 'back')[]
  /** Where it gathers and what the nose makes of it. */
  readonly says: string
}

const chart = 'mine gas chart, scribd.com/document/361817085 (V)'
/** Where the weights were read. */
export const gasWaysSource = chart

/** Heavier or lighter than air, where to hold the meter, and what smells lie about. Weights as read in a mine gas chart; the rest is common teaching. */
export const gasWays: Readonly<Record<Gas, GasWay>> = {
  O2: { specificGravity: 1.1054, hold: ['sill', 'waist', 'head'], says: 'Lack of it has no smell and no warning. It is short wherever something heavier or lighter has taken its place.' },
  CO: { specificGravity: 0.9672, hold: ['waist', 'head'], says: 'As heavy as air, mixes with it, no smell. What smells in powder smoke or exhaust is something else: smoke that has lost its smell can still kill.' },
  CO2: { specificGravity: 1.5291, hold: ['sill'], says: 'Half again as heavy as air: it lies at the sill, in winzes and down-going dead ends. A sharp taste at best; no smell to trust.' },
  CH4: { specificGravity: 0.5545, hold: ['back'], says: 'Half as heavy as air: it gathers at the back, in raises and roof holes. No smell.' },
  H2S: { specificGravity: 1.1906, hold: ['sill', 'waist'], says: 'Heavier than air, carried in mine water and set free when it is stirred. Smells of rotten eggs at first, then kills the sense of smell: when the smell goes, the gas may not have.' },
  NO2: { specificGravity: 1.5894, hold: ['sill', 'waist'], says: 'Heavier than air, from shots and engines; reddish, sharp. Little is felt at first: lungs can fill hours later.' },
}
