import type { Entry } from '@lodebook/book'
import { gases, gasWays } from '@lodebook/reckon/air'
import type { Gas } from '@lodebook/reckon/air'
import { textOf } from '../read.ts'
import { plural } from '../words.ts'

/** After so many days a meter wants calibrating, where its maker says nothing else. Common practice, no source. */
const calibratedWithin = 180

const daysBetween = (a: string, b: string): number => Math.round((Date.parse(b.slice(0, 10)) - Date.parse(a.slice(0, 10))) / 86_400_000)

/** What is to be said of the meter that read, on the day that it read, and of where it was held. */
export function meterWords(reading: Entry, instruments: readonly Entry[], read: readonly Gas[]): readonly string[] {
  const taken = textOf(reading, 'taken') ?? '', named = textOf(reading, 'meter'), bump = textOf(reading, 'bumpTested'), held = textOf(reading, 'heldAt')
  const meter = instruments.find(entry => textOf(entry, 'name') === named), calibrated = meter && textOf(meter, 'calibrated')
  const said: string[] = []
  if (read.length > 0) {
    if (named === undefined) said.push('Which meter read it is not written.')
    else if (meter === undefined) said.push(`The meter "${named}" is not among the instruments, so its calibration is not known.`)
    else if (calibrated === undefined) said.push(`No calibration date is written for ${named}: nobody can say how far it is to be trusted.`)
    else if (daysBetween(calibrated, taken) > calibratedWithin) said.push(`${named} had been calibrated ${daysBetween(calibrated, taken)} days before; six months is usual.`)
    if (bump === undefined) said.push('No bump test is written: a cell that has died reads nought.')
    else if (daysBetween(bump, taken) > 0) said.push(`Bump-tested ${plural(daysBetween(bump, taken), 'day')} before, not on the day.`)
    else if (daysBetween(bump, taken) < 0) said.push('The bump test is dated after the reading.')
    if (held === undefined) said.push('Where the meter was held is not written; heavy gas lies at the sill, methane at the back.')
    else {
      const missed = read.filter(gas => gas !== 'O2' && !(gasWays[gas].hold as readonly string[]).includes(held))
      if (missed.length > 0) said.push(`Held at ${held === 'back' ? 'the back' : held === 'sill' ? 'the sill' : `${held} height`}: ${missed.map(gas => `${gases[gas].name} gathers at ${gasWays[gas].hold.map(h => h === 'back' || h === 'sill' ? `the ${h}` : `${h} height`).join(' or ')}`).join('; ')}.`)
    }
  }
  if (textOf(reading, 'smell') === 'rotten eggs') said.push('A smell of rotten eggs was noted. Hydrogen sulphide deadens the nose: when the smell goes, the gas may not have.')
  return said
}
