import { gases } from './gas.ts'
import { gasLimits, type GasLimit } from './gas-limits.ts'

/** What air can be held against a limit for, and the unit it is read in. */
export const substances = {
  oxygen: '%', 'carbon monoxide': 'ppm', 'carbon dioxide': 'ppm', methane: '%', 'hydrogen sulphide': 'ppm', 'nitrogen dioxide': 'ppm',
  'radon progeny': 'WL', 'respirable quartz dust': 'µg/m³', 'wet bulb': '°C',
} as const
export type Substance = keyof typeof substances

/** Whose rule a limit is. `health`: published values for people, which stand under every law. `own`: the crew's. */
export type LimitSet = 'health' | '30 CFR 57' | '30 CFR 60' | '30 CFR 75' | '29 CFR' | '8 CCR' | 'Arizona' | 'own'

export interface AirLimit extends Omit<GasLimit, 'gas'> {
  readonly substance: Substance
  readonly set: LimitSet
}

type Row = readonly [Substance, AirLimit['kind'], number, AirLimit['outside'], LimitSet, rule: string, section: string, AirLimit['status'], says: string, source: string]

const rows: readonly Row[] = [
  ['oxygen', 'minimum', 19.5, 'below', '8 CCR', 'oxygen in tunnels and mines, California', '8 CCR 8437(e)', 'V', 'at least 19.5 %', 'https://www.dir.ca.gov/Title8/8437.html'],
  ['oxygen', 'minimum', 19.5, 'below', 'Arizona', 'oxygen in underground mines, Arizona', 'R11-1-407', 'V', 'at least 19.5 %', 'Arizona Administrative Code, R11-1-407'],
  ['radon progeny', 'ceiling', 1, 'above', '30 CFR 57', 'radon progeny in active workings', '30 CFR 57.5039', 'V', 'no more than 1.0 working level where people are', 'https://www.msha.gov/30cfr/57.5039.htm'],
  ['radon progeny', 'act', 0.3, 'above', '30 CFR 57', 'sampling of radon progeny', '30 CFR 57.5037', 'M', 'sample weekly above 0.3 working level', 'from memory; the same scheme read in Arizona R11-1-472'],
  ['radon progeny', 'shift average', 0.1, 'above', '30 CFR 57', 'sampling of radon progeny', '30 CFR 57.5037', 'M', 'sample above 0.1 working level; no one may take up more than 4 working level months in a year (57.5038)', 'from memory; the same scheme read in Arizona R11-1-472'],
  ['respirable quartz dust', 'shift average', 50, 'above', '30 CFR 60', 'respirable crystalline silica in mines', '30 CFR 60.10', 'V', 'average of a full shift, as 8 hours', 'lexbuild.dev, 30 CFR part 60, section 60.10'],
  ['respirable quartz dust', 'act', 25, 'from', '30 CFR 60', 'respirable crystalline silica in mines, action level', '30 CFR 60.10', 'V', 'sample, and find what makes the dust', 'msha.gov, part 60, questions and answers'],
  ['wet bulb', 'act', 25, 'above', 'health', 'heat underground', 'Western Australian mines rules as remembered', 'M', 'work only in moving air, at least 0.5 m/s', 'from memory'],
  ['wet bulb', 'withdraw', 32, 'above', 'health', 'heat underground', 'common practice', 'M', 'the body can no longer shed its heat; sweat does not dry', 'from memory'],
]

const setOf = ({ section }: GasLimit): LimitSet =>
  section.startsWith('30 CFR 57') ? '30 CFR 57' : section.startsWith('29 CFR') ? '29 CFR' : section.startsWith('8 CCR') ? '8 CCR' : 'health'

/** Every published limit of the table, gases first. */
export const airLimits: readonly AirLimit[] = [
  ...gasLimits.map(({ gas, ...limit }): AirLimit => ({ ...limit, substance: gases[gas].name, set: setOf({ gas, ...limit }) })),
  ...rows.map(([substance, kind, limit, outside, set, rule, section, status, says, source]): AirLimit =>
    ({ substance, kind, limit, outside, set, rule, section, status, says, source })),
]

/** Which sets of limits a crew works under, by the name it chose. Health values stand under all of them. Local law decides, not this table. */
export const profiles = {
  'all in the table': ['health', '30 CFR 57', '30 CFR 60', '29 CFR', '8 CCR', 'Arizona'],
  'United States metal mines': ['health', '30 CFR 57', '30 CFR 60'],
  California: ['health', '30 CFR 57', '30 CFR 60', '29 CFR', '8 CCR'],
  Arizona: ['health', '30 CFR 57', '30 CFR 60', 'Arizona'],
} as const satisfies Readonly<Record<string, readonly LimitSet[]>>
export type Profile = keyof typeof profiles

/** Explosive, immediately dangerous and disabling values stay whatever a crew writes. */
const always: readonly AirLimit['kind'][] = ['immediate danger', 'explosive', 'effect']

/** A limit of the crew's own; `instead` sets aside the table's limits of the same substance and sort, but never those that kill. */
export interface OwnLimit { readonly limit: AirLimit, readonly instead: boolean }

/** The limits in force: those of a profile, and the crew's own. */
export function limitsInForce(profile: Profile, own: readonly OwnLimit[] = []): readonly AirLimit[] {
  const sets: readonly LimitSet[] = profiles[profile]
  const aside = (row: AirLimit): boolean => !always.includes(row.kind)
    && own.some(({ instead, limit }) => instead && limit.substance === row.substance && limit.kind === row.kind)
  return [...airLimits.filter(row => sets.includes(row.set) && !aside(row)), ...own.map(({ limit }) => limit)]
}
