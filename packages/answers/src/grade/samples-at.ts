import type { Entry } from '@lodebook/book'
import type { Belief } from '../belief.ts'
import { textOf } from '../read.ts'
import type { SampleAt } from '../shapes.ts'
import type { VeinFound } from '../vein/vein.ts'
import type { Sited } from '../vein/vein-data.ts'
import { grade, length } from '../words.ts'
import type { CrewUnits } from '../words.ts'
import { buildAnswer } from '../build-answer.ts'

export interface BaggedSample { readonly entry: Entry, readonly sited: Sited | undefined }

/** Samples cut from the vein where it stands. Muck, gob, dump and bulk rock tell of what was thrown down, not of the ground. */
const inPlace = ['channel', 'chip', 'panel']

/** Every ordinary sample with what may be believed of it, where it is on the vein, and whether the estimate uses it; if not, why. */
export function samplesAt(samples: readonly BaggedSample[], beliefs: ReadonlyMap<string, Belief>, vein: VeinFound, units: CrewUnits): readonly SampleAt[] {
  return samples.flatMap(({ entry, sited }): SampleAt[] => {
    const role = textOf(entry, 'role') ?? 'ordinary'
    if (role === 'blank' || role === 'standard') return []
    const bag = textOf(entry, 'bag')!
    const belief = beliefs.get(bag)
    if (!belief) return []
    const width = vein.at.widths.find(w => w.entry === entry.id)
    const on = sited && vein.frame.toVein(sited.located.point)
    const near = 2.5 + 3 * vein.plane.unevenness
    const method = textOf(entry, 'method') ?? ''
    const why = !sited ? 'not placed yet' : !inPlace.includes(method) ? `${method} sample: not cut from the vein where it stands`
      : !vein.thisSide(sited) ? 'beyond the fault' : Math.abs(on!.off) > near ? `${length(Math.abs(on!.off), units, 2)} off the vein` : !width ? 'no true width' : ''
    const used = why === ''
    const accumulation = width && belief.grade * width.width
    return [{
      entry: entry.id, bag, at: on && { along: on.along, down: on.down }, width: width?.width,
      grade: belief.grade, low: belief.low, high: belief.high, below: belief.below, logSd: belief.logSd, used, why,
      accumulation, meanAccumulation: width && belief.mean * width.width,
      answer: accumulation === undefined || !used ? belief.answer : buildAnswer({
        id: `grade.sample.${bag}`, value: accumulation, unit: 'g/t·m', sentence: `Bag ${bag}: ${belief.below ? 'no more than ' : ''}${grade(belief.grade, units)} over ${length(width!.width, units)}.`,
        range: { low: belief.low * width!.width, high: belief.high * width!.width, confidence: 0.8, because: ['the grade of the bag', 'the true width'] },
        method: { name: 'grade times true width', page: 'grade', working: [`${belief.grade.toPrecision(3)} g/t × ${width!.width.toFixed(3)} m = ${accumulation.toPrecision(3)} g/t·m`] },
        from: [entry.id], parts: [belief.answer, width!.answer],
      }),
    }]
  })
}
