import { finite, InputError, positive } from '../core/index.ts'

export interface LoadCycle {
  /** Person-minutes that one load takes, by what they go on. */
  readonly loosen: number
  readonly fill: number
  readonly walk: number
  readonly tip: number
  readonly rest: number
  readonly personMinutes: number
  /** Minutes from one load to the next with that many people who never wait for each other. */
  readonly minutes: number
}

export interface CycleGiven {
  /** In place, per load, m3. */
  readonly bank: number
  /** Loosened ground in place a person loosens in an hour, m3; Infinity for what is loose. */
  readonly loosenPerHour: number
  /** Loose muck a person shovels in an hour, m3. */
  readonly shovelPerHour: number
  /** Loose muck in one load, m3. */
  readonly load: number
  /** One way, metres. */
  readonly distance: number
  /** Empty and on the level, m/s. */
  readonly speed: number
  /** Rise over run of the way, loaded. */
  readonly grade: number
  /** Each part of grade, up or down, slows the loaded way by so many times itself. */
  readonly slowing: number
  readonly tipMinutes: number
  /** Share of the time that goes on rest and small delays, [0, 1). */
  readonly restShare: number
  readonly people: number
}

/**
 * Time that one load takes by hand: loosen, fill, wheel there and back, tip, and rest.
 * @throws InputError for values out of bounds
 * Source: the sum of F. W. Taylor, Shop Management, 1911, p. 166, B = (p + [a + b + d + f + (distance/100)(c + e)] 27/L)(1 + P), read there; his
 * constants are from memory and not used.
 */
export function loadCycle(given: CycleGiven): LoadCycle {
  const { bank, loosenPerHour, shovelPerHour, load, distance, speed, grade, slowing, tipMinutes, restShare, people } = given
  for (const name of ['bank', 'shovelPerHour', 'load', 'speed', 'people'] as const) positive(given[name], name)
  if (!(loosenPerHour > 0)) throw new InputError('loosenPerHour', loosenPerHour, 'above zero')
  for (const name of ['distance', 'slowing', 'tipMinutes'] as const) if (finite(given[name], name) < 0) throw new InputError(name, given[name], 'zero or more')
  finite(grade, 'grade')
  if (!(restShare >= 0 && restShare < 1)) throw new InputError('restShare', restShare, 'a share from 0 to less than 1')
  const loosen = 60 * bank / loosenPerHour, fill = 60 * load / shovelPerHour
  const walk = distance / speed / 60 * (2 + slowing * Math.abs(grade))
  const busy = loosen + fill + walk + tipMinutes, personMinutes = busy / (1 - restShare)
  return { loosen, fill, walk, tip: tipMinutes, rest: personMinutes - busy, personMinutes, minutes: personMinutes / people }
}
