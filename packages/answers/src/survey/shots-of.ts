import type { Entry } from '@lodebook/book'
import type { InstrumentErrors, NetworkShot, ShotReading } from '@lodebook/reckon/survey'
import { correctShot } from '@lodebook/reckon/survey'
import { numberOf, textOf, valueOf } from '../read.ts'
import type { North } from './north.ts'

/** Which readings of a shot the crew's words leave out. */
const leavings: Readonly<Record<string, readonly ShotReading[] | 'shot'>> = {
  'whole shot': 'shot', azimuth: ['azimuth'], backsight: ['backAzimuth'], distance: ['distance'], inclination: ['inclination'], 'back inclination': ['backInclination'],
  'both azimuths': ['azimuth', 'backAzimuth'], 'both inclinations': ['inclination', 'backInclination'],
}

/** How the crew would say, in `leaveOut`, that a reading is left out. */
export const leavingOf: Readonly<Record<ShotReading, string>> = {
  azimuth: 'azimuth', backAzimuth: 'backsight', distance: 'distance', inclination: 'inclination', backInclination: 'back inclination',
}

/** What shots of one survey share, by name. */
export type Shared = Record<string, InstrumentErrors>

/** The declination's own error is one for all shots of a time: it turns the whole map and is no check of any shot. */
const needle = 'declination'

/** All that a shot is read with. */
export interface ShotContext {
  readonly north: North
  readonly instruments: ReadonlyMap<string, Entry>
  readonly surveys: ReadonlyMap<string, Entry>
}

export const byName = (entries: readonly Entry[]): ReadonlyMap<string, Entry> => new Map(entries.map(entry => [textOf(entry, 'name') ?? '', entry]))

/** The day of a reading: its own, or the middle of its survey's year. */
export function dayOf(shot: Entry, survey: Entry | undefined): string | undefined {
  const year = survey && numberOf(survey, 'year')
  return textOf(shot, 'taken') ?? (year === undefined ? undefined : `${year}-07-01`)
}

/**
 * A shot as written, as the adjustment takes it: index corrections applied, azimuths from grid north, precision by its instruments, else by
 * its survey, else the standing assumption, and the errors that it shares with others of its survey.
 * @param shared  errors by the name of the set; added to
 */
export function shotOf(shot: Entry, { north, instruments, surveys }: ShotContext, shared: Shared): NetworkShot {
  const survey = surveys.get(textOf(shot, 'survey') ?? ''), compass = instruments.get(textOf(shot, 'compass') ?? '')
  const clinometer = instruments.get(textOf(shot, 'clinometer') ?? '') ?? compass, tape = instruments.get(textOf(shot, 'tape') ?? '')
  const of = (entry: Entry | undefined, field: string) => entry && valueOf(entry, field)
  const read = correctShot({
    distance: valueOf(shot, 'distance')!, azimuth: valueOf(shot, 'azimuth'), backAzimuth: valueOf(shot, 'backAzimuth'),
    inclination: valueOf(shot, 'inclination'), backInclination: valueOf(shot, 'backInclination'), from: '', to: '',
  }, {
    compass: of(compass, 'correction'), clinometer: of(clinometer, 'inclinationCorrection'), tape: lengthCorrection(tape, valueOf(shot, 'distance')!),
    tapeFactor: tape && numberOf(tape, 'lengthFactor'),
  })
  const date = dayOf(shot, survey), from = textOf(shot, 'north') ?? 'magnetic', own = of(survey, 'declination')
  const toGrid = (azimuth: number | undefined) => azimuth === undefined ? undefined : north.toGrid(azimuth, from, date, own)
  const azimuth = of(compass, 'anglePrecision') ?? of(survey, 'compassPrecision')
  const inclination = of(clinometer, 'inclinationPrecision') ?? of(survey, 'clinometerPrecision')
  const distance = of(tape, 'lengthPrecision') ?? of(survey, 'tapePrecision')
  const leftOut = survey && textOf(survey, 'use') === 'left out'
  return {
    ...read, from: textOf(shot, 'from')!, to: textOf(shot, 'to')!, azimuth: toGrid(read.azimuth), backAzimuth: toGrid(read.backAzimuth),
    precision: {
      ...azimuth === undefined ? {} : { azimuth }, ...inclination === undefined ? {} : { inclination }, ...distance === undefined ? {} : { distance },
    },
    instruments: sharedBy({ survey, magnetic: from === 'magnetic' && own === undefined, needleSigma: north.sigmaOn(date) }, shared),
    leaveOut: leftOut ? 'shot' : leavings[textOf(shot, 'leaveOut') ?? ''],
  }
}

/** A correction may not leave less than half of what was read: then it is no missing end but a slip of the pen, and is not applied. */
function lengthCorrection(tape: Entry | undefined, distance: number): number | undefined {
  const correction = tape && valueOf(tape, 'lengthCorrection')
  return correction !== undefined && correction > -distance / 2 ? correction : undefined
}

/** The set of shots with which this one shares its north and the stretch of its tape; undefined when it shares nothing in doubt. */
function sharedBy(
  { survey, magnetic, needleSigma }: { readonly survey: Entry | undefined, readonly magnetic: boolean, readonly needleSigma: number }, shared: Shared,
): string | undefined {
  const doubt = (survey && valueOf(survey, 'northDoubt')) ?? 0, stretch = ((survey && numberOf(survey, 'lengthDoubt')) ?? 0) / 100
  const azimuth = Math.hypot(magnetic ? needleSigma : 0, doubt)
  if (azimuth === 0 && stretch === 0) return undefined
  const name = survey && (doubt > 0 || stretch > 0) ? `${textOf(survey, 'name')!}${magnetic ? '' : ', not magnetic'}` : needle
  const before = shared[name]
  shared[name] = { azimuth: Math.max(azimuth, before?.azimuth ?? 0), ...stretch > 0 ? { distance: stretch } : {} }
  return name
}
