import { textOf, wordsOf } from '../../read.ts'
import type { Assume } from '../../assumptions.ts'
import type { North } from '../../survey/north.ts'
import type { FarSide } from '@lodebook/reckon/structure'
import type { FaultRead } from '../shapes.ts'
import { faultOf, faultsNamed } from '../fault.ts'
import { groovesOn } from '../lost-part/grooves.ts'
import { sensesOn } from '../lost-part/senses.ts'
import { planeOf } from '../lost-part/told.ts'
import type { Sited } from '../vein-data.ts'

/** Every fault that was read by name, with its grooves and its sense; the one that cuts the vein off first. */
export function faultsRead(structures: readonly Sited[], north: North, assume: Assume, far: FarSide | undefined): readonly FaultRead[] {
  const main = faultOf(structures, north)
  return faultsNamed(structures, north).map((fault): FaultRead => {
    const own = structures.filter(({ entry }) => ['fault', 'striae'].includes(textOf(entry, 'feature')!) && (textOf(entry, 'name') ?? main?.name) === fault.name)
    const grooves = groovesOn(fault.plane, own.filter(({ entry }) => textOf(entry, 'feature') === 'striae'), north, assume('grooves off the slip'))
    const sense = sensesOn(fault.plane, far ?? 1, own, assume('sense of slip right'))
    return {
      name: fault.name, readings: fault.plane.readingAngles.length, strike: fault.strike, dip: fault.dip,
      grooves: grooves && { ...grooves.answer, id: `vein.fault.${fault.name}.grooves` },
      sense: sense && { ...sense.answer, id: `vein.fault.${fault.name}.sense` },
      infill: [...new Set(own.flatMap(s => wordsOf(s.entry, 'infill')))],
      cuts: fault.name === main?.name, plane: planeOf(fault.plane), entries: own.map(s => s.entry.id),
    }
  }).sort((a, b) => Number(b.cuts) - Number(a.cuts))
}
