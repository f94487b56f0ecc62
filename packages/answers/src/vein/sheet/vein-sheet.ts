import type { Entry } from '@lodebook/book'
import type { Assume } from '../../assumptions.ts'
import { isAnswer } from '../../answer.ts'
import { textOf } from '../../read.ts'
import type { Survey } from '../../survey/survey.ts'
import { angle, azimuth, length } from '../../words.ts'
import type { CrewUnits } from '../../words.ts'
import type { VeinSheet } from '../shapes.ts'
import { offFault } from '../fault.ts'
import { named } from '../lost-part/told.ts'
import type { Sited } from '../vein-data.ts'
import type { VeinFound } from '../vein.ts'
import { faultsRead } from './faults-read.ts'
import { lieOf } from './lie.ts'
import { gougeOf, materialsOf, wallsOf } from './materials.ts'
import { netOf } from './net.ts'
import { thicknessOf } from './thickness.ts'

export interface VeinSheetInput {
  readonly vein: VeinFound
  readonly survey: Survey
  /** Every structure reading, placed or not. */
  readonly entries: readonly Entry[]
  readonly structures: readonly Sited[]
  readonly widths: readonly Sited[]
  readonly samples: readonly Sited[]
  readonly assume: Assume
  readonly units: CrewUnits
}

/** All that is told of a vein besides its lost part. */
export function veinSheetOf({ vein, survey, entries, structures, widths, samples, assume, units }: VeinSheetInput): VeinSheet {
  const { name } = vein.at
  const others = new Set(vein.ofOthers)
  const seen = [...widths, ...samples, ...structures.filter(s => textOf(s.entry, 'feature') === 'vein')].filter(s => !others.has(s.entry.id) && vein.thisSide(s))
  const lie = lieOf(vein, units)
  const thickness = thicknessOf(vein.at, units)
  const { fault } = vein
  const origin = structures[0] && { ...structures[0], located: { ...structures[0].located, point: vein.frame.origin } }
  const far = fault && origin ? offFault(fault, origin) >= 0 ? -1 : 1 : undefined
  return {
    name, lie, thickness, sentence: sentenceOf(vein, lie, thickness, units),
    materials: materialsOf(vein, seen, units), gouge: gougeOf(seen, units), walls: wallsOf(seen),
    net: netOf({ structures: entries, north: survey.north, vein: { name, plane: vein.plane }, fault: fault && { name: fault.name, plane: fault.plane } }),
    faults: faultsRead(structures, survey.north, assume, far),
    cautions: cautionsOf(vein, lie),
  }
}

function sentenceOf({ at }: VeinFound, lie: VeinSheet['lie'], { answer }: VeinSheet['thickness'], units: CrewUnits): string {
  const who = named(at.name, /vein|lode|reef/i, 'vein').replace(/^./, c => c.toUpperCase())
  const lies = `${who} strikes ${azimuth(at.strike.value)} and dips ${angle(at.dip.value)} toward ${azimuth(at.strike.value + 90)}`
  const how = lie.kind === 'bend' ? ', but bends on the way' : lie.kind === 'step' ? ', but steps on the way' : lie.kind === 'curve' ? ', curving as it goes' : ''
  const thick = isAnswer(answer) && answer.range
    ? `; it is ${length(answer.value, units, 2)} thick on average, ${length(answer.range.low, units, 2)} to ${length(answer.range.high, units, 2)} in four places of five`
    : '; nobody has taped how thick it is'
  return `${lies}${how}${thick}.`
}

function cautionsOf({ at, plane, read }: VeinFound, lie: VeinSheet['lie']): readonly string[] {
  const wild = plane.readingTimes.filter(t => t > 3).length
  return [
    ...(lie.kind === 'plane' || lie.kind === 'not enough' ? [] : ['Grade and the lost part are reckoned on one plane: the ground they show may be out of place by what this bend or step makes of it.']),
    ...(wild > 0 ? [`${wild} of ${read.length} readings lie more than three times their doubt off the plane: look at them again.`] : []),
    ...(at.widths.length > 0 && at.widths.length < 5 ? ['Fewer than five widths: the mean may change with the next one.'] : []),
  ]
}
