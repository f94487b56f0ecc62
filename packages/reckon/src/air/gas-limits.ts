import type { Gas } from './gas.ts'

/**
 * What sort of limit it is.
 * immediate danger: life or health at once; explosive: burns or explodes; effect: what such air does to a person;
 * withdraw, act: what a mine rule asks for; minimum, maximum: outside it nobody works; ceiling: not to be passed at any moment;
 * short-term: average of some minutes; shift average: average of a working shift, which one reading can't tell.
 */
export type LimitKind = 'immediate danger' | 'explosive' | 'effect' | 'withdraw' | 'minimum' | 'ceiling' | 'act' | 'short-term' | 'maximum' | 'shift average'

/** V: figure read in the source; V-part: part read, rest from memory; V-secondary: read in a later copy; M: from memory, check before leaning on it. */
export type Standing = 'V' | 'V-part' | 'V-secondary' | 'M'

export interface GasLimit {
  readonly gas: Gas
  readonly kind: LimitKind
  /** In the gas's own unit. */
  readonly limit: number
  /** Which values are outside: below it, above it, or at it and above. */
  readonly outside: 'below' | 'above' | 'from'
  readonly rule: string
  readonly section: string
  readonly source: string
  readonly status: Standing
  /** What the rule or the air does at that value. */
  readonly says: string
}

type Row = readonly [kind: LimitKind, limit: number, outside: GasLimit['outside'], rule: string, section: string, status: Standing, says: string, source: string]

const niosh = (page: string): string => `https://www.cdc.gov/niosh/idlh/${page}.html`
const card = 'mine-rescue study cards, studystack.com/flashcard-751370'
const slides = 'mine-rescue training slides, docest.com/doc/214024'
const chart = 'mine gas chart, scribd.com/document/361817085'
const hydrogenSulphide = 'https://pmc.ncbi.nlm.nih.gov/articles/PMC5777517/table/T3'

const rows: Readonly<Record<Gas, readonly Row[]>> = {
  O2: [
    ['minimum', 19.5, 'below', 'oxygen in underground metal and nonmetal mines', '30 CFR 57.5015', 'M', 'at least 19.5 % where people work', 'section number from memory; same figure read in 30 CFR 75.321(a)(1), Ariz. R11-1-407 and 8 CCR 8437(e)'],
    ['maximum', 22, 'above', 'oxygen in tunnels and mines, California', '8 CCR 8437(f)', 'V', 'no more than 22 %; rich air feeds fire', 'https://www.dir.ca.gov/Title8/8437.html'],
    ['effect', 17, 'below', 'effects of low oxygen', 'mine-rescue teaching', 'V-secondary', 'panting', card],
    ['effect', 15, 'below', 'effects of low oxygen', 'mine-rescue teaching', 'V-secondary', 'dizziness and headache', card],
    ['effect', 9, 'below', 'effects of low oxygen', 'mine-rescue teaching', 'V-secondary', 'unconsciousness', card],
    ['effect', 6, 'below', 'effects of low oxygen', 'mine-rescue teaching', 'V-secondary', 'death', card],
  ],
  CO: [
    ['shift average', 25, 'above', 'ACGIH average of a shift', 'as printed by NIOSH', 'V', 'average of 8 hours', niosh('630080')],
    ['shift average', 35, 'above', 'NIOSH recommended limit', 'REL', 'V', 'average of a shift', niosh('630080')],
    ['shift average', 50, 'above', 'OSHA permissible limit', '29 CFR 1910.1000', 'V', 'average of 8 hours', niosh('630080')],
    ['ceiling', 200, 'above', 'NIOSH recommended ceiling', 'REL', 'V', 'not to be passed at any time; headache in 2 to 3 hours', niosh('630080')],
    ['immediate danger', 1200, 'from', 'NIOSH immediately dangerous to life or health', 'IDLH', 'V-part', 'escape may fail', niosh('630080')],
    ['effect', 800, 'from', 'effects of carbon monoxide', 'mine-rescue teaching', 'V-secondary', 'collapse in about 2 hours', slides],
    ['effect', 1600, 'from', 'effects of carbon monoxide', 'mine-rescue teaching', 'V-secondary', 'collapse in about 20 minutes', slides],
    ['effect', 3200, 'from', 'effects of carbon monoxide', 'mine-rescue teaching', 'V-secondary', 'collapse in 5 to 10 minutes, death in about 30', slides],
    ['effect', 6400, 'from', 'effects of carbon monoxide', 'mine-rescue teaching', 'V-secondary', 'collapse in 1 to 2 minutes, death in 10 to 15', slides],
    ['effect', 12800, 'from', 'effects of carbon monoxide', 'mine-rescue teaching', 'V-secondary', 'death in 1 to 3 minutes', slides],
    ['explosive', 125_000, 'from', 'lower explosive limit', '12.5 % by volume', 'V', 'explosive from 12.5 to 74.2 %', chart],
  ],
  CO2: [
    ['shift average', 5000, 'above', 'OSHA permissible limit; NIOSH the same', '29 CFR 1910.1000', 'V', 'average of a shift; 30 CFR 75.321(a) has 0.5 % for coal workings', niosh('124389')],
    ['short-term', 30_000, 'above', 'NIOSH recommended short-term limit', 'REL', 'V', 'average of 15 minutes', niosh('124389')],
    ['immediate danger', 40_000, 'from', 'NIOSH immediately dangerous to life or health', 'IDLH', 'V-part', 'escape may fail', niosh('124389')],
    ['effect', 50_000, 'from', 'effects of carbon dioxide', 'as printed by NIOSH', 'V', 'intoxication in 30 minutes', niosh('124389')],
    ['effect', 70_000, 'from', 'effects of carbon dioxide', 'as printed by NIOSH', 'V', 'unconsciousness in a few minutes (7 to 10 %)', niosh('124389')],
  ],
  CH4: [
    ['act', 0.5, 'from', 'methane in underground metal and nonmetal mines', '30 CFR 57.22232, 57.22233', 'V', 'change the ventilation, cut the power, no other work', 'https://www.msha.gov/30cfr/57.22232.htm'],
    ['withdraw', 1, 'from', 'methane in underground metal and nonmetal mines', '30 CFR 57.22234 to 57.22236', 'V', 'all out but those who mend the air; it is 20 % of the lower explosive limit', 'lexbuild.dev/ecfr, part 57, 57.22234'],
    ['explosive', 5, 'from', 'explosive range of methane', '5 to 15 % by volume', 'V', 'explodes from 5 to 15 %; richer gas explodes where it thins out', chart],
  ],
  H2S: [
    ['shift average', 1, 'above', 'ACGIH average of a shift', 'as printed', 'V', 'average of 8 hours', hydrogenSulphide],
    ['short-term', 5, 'above', 'ACGIH short-term limit', 'as printed', 'V', 'average of 15 minutes', hydrogenSulphide],
    ['shift average', 10, 'above', 'OSHA limit for construction', '29 CFR 1926.55', 'V', 'average of 8 hours', hydrogenSulphide],
    ['short-term', 10, 'above', 'NIOSH recommended limit', 'REL', 'V', 'ceiling of 10 minutes', hydrogenSulphide],
    ['ceiling', 20, 'above', 'OSHA permissible ceiling', '29 CFR 1910.1000', 'V', 'not to be passed, but for one peak of 50 ppm', hydrogenSulphide],
    ['ceiling', 50, 'above', 'OSHA permissible peak', '29 CFR 1910.1000', 'V', 'once, for 10 minutes at most', hydrogenSulphide],
    ['immediate danger', 100, 'from', 'NIOSH immediately dangerous to life or health', 'IDLH', 'V', 'escape may fail; the nose no longer smells it', hydrogenSulphide],
    ['explosive', 43_000, 'from', 'lower explosive limit', '4.3 % by volume', 'V', 'explosive from 4.3 to 45.5 %', chart],
  ],
  NO2: [
    ['short-term', 1, 'above', 'NIOSH recommended short-term limit', 'REL', 'V', 'average of 15 minutes', niosh('10102440')],
    ['ceiling', 5, 'above', 'OSHA permissible ceiling', '29 CFR 1910.1000', 'V', 'not to be passed at any time', niosh('10102440')],
    ['immediate danger', 13, 'from', 'NIOSH immediately dangerous to life or health', 'IDLH, as revised', 'M', 'escape may fail; lungs can fill hours later', 'from memory'],
    ['immediate danger', 20, 'from', 'NIOSH immediately dangerous to life or health', 'IDLH, 1994', 'V', 'escape may fail; lungs can fill hours later', niosh('10102440')],
  ],
}

/**
 * Published limits for the gases of a small mine, as data, each with where it was read. United States rules and public health values;
 * values of the ACGIH only as government pages print them. OSHA section numbers are from memory; the figures are as marked.
 */
export const gasLimits: readonly GasLimit[] = (Object.keys(rows) as Gas[]).flatMap(gas =>
  rows[gas].map(([kind, limit, outside, rule, section, status, says, source]) => ({ gas, kind, limit, outside, rule, section, status, says, source })))
