import type { Entry } from '@lodebook/book'
import { airCheck, gasDoubts, gasNames, gases, gasWays, limitsInForce, profiles, substances, workingLevelsAtMost, worstFirst } from '@lodebook/reckon/air'
import type { AirFinding, AirLimit, Gas, OwnLimit, Profile, Substance } from '@lodebook/reckon/air'
import { buildAnswer } from '../build-answer.ts'
import type { Located } from '../places/place-in-space.ts'
import { numberOf, placeOf, textOf, valueOf } from '../read.ts'
import { figure } from '../words.ts'
import { meterWords } from './meter-words.ts'
import { placeName } from './place-name.ts'
import type { AirPlace, AirReadingAt, AirSeen, Finding, LimitShown } from './shapes.ts'
import type { Way } from './way-in.ts'

const field: Readonly<Record<Gas, string>> = { O2: 'oxygen', CO: 'carbonMonoxide', CO2: 'carbonDioxide', CH4: 'methane', H2S: 'hydrogenSulphide', NO2: 'nitrogenDioxide' }

export interface AirInput {
  readonly readings: readonly Entry[]
  readonly at: ReadonlyMap<string, Located>
  readonly limits: readonly Entry[]
  readonly instruments: readonly Entry[]
  readonly mine: Entry | undefined
  readonly way: Way | undefined
}

/** What the air readings of the book say against the limits in force. */
export function airSeen({ readings, at, limits, instruments, mine, way }: AirInput): AirSeen {
  const profile = profileOf(mine), own = limits.map(ownLimit), inForce = limitsInForce(profile, own)
  const entryOf = new Map(own.map(({ limit }, i) => [limit, limits[i]!.id]))
  const byPlace = new Map<string, Entry[]>()
  for (const entry of readings) {
    const name = placeName(placeOf(entry))
    byPlace.set(name, [...byPlace.get(name) ?? [], entry])
  }
  const places = [...byPlace].map(([name, entries]): AirPlace => {
    const inTime = [...entries].sort((a, b) => Date.parse(textOf(a, 'taken') ?? '') - Date.parse(textOf(b, 'taken') ?? ''))
    const all = inTime.map(entry => readingAt(entry, name, inForce, entryOf, instruments)), place = placeOf(inTime[0]!)
    return { name, station: place?.by === 'station' ? place.station : undefined, distance: way?.distanceOf(place, at.get(inTime[0]!.id)), readings: all, latest: all.at(-1)! }
  }).sort((a, b) => (a.distance ?? Infinity) - (b.distance ?? Infinity))
  const latest = places.map(p => p.latest)
  return {
    places, profile, limits: inForce.map(limit => shown(limit, entryOf.get(limit))),
    findings: worstFirst(latest.flatMap(r => r.findings), ({ substance, where }) => `${substance} ${where}`),
    notRead: gasNames.filter(gas => latest.every(r => r.notRead.includes(gases[gas].name))).map(gas => gases[gas].name),
    ways: gasNames.map(gas => ({ gas: gases[gas].name, weight: gasWays[gas].specificGravity, hold: gasWays[gas].hold, says: gasWays[gas].says })),
  }
}

const profileOf = (mine: Entry | undefined): Profile => {
  const named = mine && textOf(mine, 'rules')
  return named !== undefined && named in profiles ? named as Profile : 'all in the table'
}

const outsideWords = { 'below it': 'below', 'above it': 'above', 'at it and above': 'from' } as const

function ownLimit(entry: Entry): OwnLimit {
  return {
    instead: entry.fields.instead === true,
    limit: {
      substance: textOf(entry, 'substance') as Substance, kind: textOf(entry, 'sort') as AirLimit['kind'], limit: numberOf(entry, 'value') ?? 0,
      outside: outsideWords[textOf(entry, 'outside') as keyof typeof outsideWords] ?? 'above', set: 'own', rule: textOf(entry, 'rule') ?? 'the crew\'s own', section: textOf(entry, 'section') ?? 'written by the crew',
      source: textOf(entry, 'source') ?? 'the crew\'s own entry', status: 'M', says: textOf(entry, 'note') ?? 'the crew\'s own limit',
    },
  }
}

function readingAt(
  entry: Entry, where: string, limits: readonly AirLimit[], entryOf: ReadonlyMap<AirLimit, string>, instruments: readonly Entry[],
): AirReadingAt {
  const values: Partial<Record<Substance, number>> = {}, gasValues: Partial<Record<Gas, number>> = {}
  for (const gas of gasNames) {
    const value = valueOf(entry, field[gas])
    if (value !== undefined) { values[gases[gas].name] = value; gasValues[gas] = value }
  }
  const radon = valueOf(entry, 'radon'), dust = numberOf(entry, 'quartzDust'), wet = valueOf(entry, 'wetBulb')
  if (radon !== undefined) values['radon progeny'] = workingLevelsAtMost(radon)
  if (dust !== undefined) values['respirable quartz dust'] = dust
  if (wet !== undefined) values['wet bulb'] = wet
  const taken = textOf(entry, 'taken') ?? ''
  const found = airCheck(values, limits).map((finding): Finding => {
    const limitEntry = [...entryOf].find(([limit]) => limit.set === 'own' && limit.substance === finding.substance && limit.limit === finding.limit && limit.rule === finding.rule)?.[1]
    return { ...finding, entry: entry.id, where, taken, answer: findingAnswer(finding, entry, where, radon, limitEntry) }
  })
  return {
    entry: entry.id, taken, values, heldAt: textOf(entry, 'heldAt'), smell: textOf(entry, 'smell'), findings: found,
    doubts: gasDoubts(gasValues).map(({ gas, question }) => `${gases[gas].name}: ${question}`), notRead: gasNames.filter(gas => gasValues[gas] === undefined).map(gas => gases[gas].name),
    meter: meterWords(entry, instruments, Object.keys(gasValues) as Gas[]), dryBulb: valueOf(entry, 'dryBulb'),
  }
}

const sideWords = { below: 'below', above: 'above', from: 'at or above' } as const
const unitOf = (f: Pick<AirLimit, 'substance'>): string => substances[f.substance]

function findingAnswer(f: AirFinding, entry: Entry, where: string, radon: number | undefined, limitEntry: string | undefined): Finding['answer'] {
  const unit = unitOf(f), asGas = f.substance === 'radon progeny' && radon !== undefined
  return buildAnswer({
    id: `today.air.${entry.id}.${f.substance.replaceAll(' ', '-')}.${f.limit}`, value: f.value, unit,
    sentence: `${where}: ${f.substance} read ${figure(f.value, 3)} ${unit}, ${sideWords[f.outside]} ${figure(f.limit, 4)} ${unit} (${f.rule}, ${f.section}: ${f.says}). ${f.action}`,
    method: { name: 'reading against a published limit', page: 'gas-check', working: [
      ...asGas ? [`${figure(radon, 4)} Bq/m3 / 3700 = ${figure(f.value, 3)} working level at most, if its progeny have grown in fully`] : [],
      `${figure(f.value, 4)} ${unit} is ${sideWords[f.outside]} ${figure(f.limit, 4)} ${unit}: ${f.kind}`] },
    sources: [`${f.rule}, ${f.section}; ${f.source} (${statusWords[f.status]})`], from: [entry.id, ...limitEntry === undefined ? [] : [limitEntry]],
    cautions: ['One reading of one moment at one place. Local rules and licensed people decide.'],
  })
}

export const statusWords: Readonly<Record<AirLimit['status'], string>> = { V: 'figure read in the source', 'V-part': 'partly read in the source, partly from memory', 'V-secondary': 'read in a later copy', M: 'from memory, check it' }

function shown(limit: AirLimit, entry: string | undefined): LimitShown {
  const { substance, kind, rule, section, source, status, says } = limit
  return { substance, kind, text: `${sideWords[limit.outside]} ${figure(limit.limit, 6)} ${unitOf(limit)}`, rule, section, source, says, status: entry === undefined ? statusWords[status] : 'the crew\'s own', ...entry === undefined ? {} : { entry } }
}
