import type { Entry } from '@lodebook/book'
import { loadCycle, pushLimit } from '@lodebook/reckon/earthwork'
import type { GroundMaterial, LoadCycle } from '@lodebook/reckon/earthwork'
import { radians } from '@lodebook/reckon'
import type { Answer } from '../answer.ts'
import type { Assume, AssumedFigure } from '../assumptions.ts'
import { buildAnswer } from '../build-answer.ts'
import { numberOf, textOf, valueOf } from '../read.ts'
import { figure, heft, length, volume } from '../words.ts'
import type { CrewUnits } from '../words.ts'

export type Carrier = 'barrow' | 'bucket' | 'sled'

/** How a job's loads are carried: what one holds, by room and by weight, and how long it takes as reckoned. */
export interface Carrying {
  readonly carrier: Carrier
  /** Loose, m³, after the weight limit. */
  readonly load: number
  readonly loadMass: Answer
  readonly cycle: Answer
  readonly people: number
  readonly assumed: readonly AssumedFigure[]
  readonly cautions: readonly string[]
}

const usualHaul = 15
const emptyKg: Readonly<Record<Carrier, number>> = { barrow: 20, bucket: 1.5, sled: 15 }

/** @param loosening  whether the ground has to be loosened first, or lies loose as it fell */
export function carryingOf(id: string, job: Entry, material: GroundMaterial, swellPct: number, loosening: boolean, assume: Assume, units: CrewUnits): Carrying {
  const carrier = (textOf(job, 'carrier') ?? 'barrow') as Carrier
  const room = assume(`${carrier} load`), roomM3 = valueOf(job, 'loadVolume') ?? room.value
  const looseKg = 1000 * material.density / (1 + swellPct / 100)
  const gradeDeg = Math.max(-45, Math.min(45, valueOf(job, 'haulGrade') ?? 0)), empty = (valueOf(job, 'carrierMass') ?? 1000 * emptyKg[carrier]) / 1000
  const push = assume('push of a person'), drag = carrier === 'bucket' ? undefined : assume(`drag of a ${carrier}`)
  const lift = carrier === 'bucket' ? assume('most in a bucket') : carrier === 'barrow' ? assume('most on a barrow') : undefined
  const pushed = drag ? pushLimit(push.value, gradeDeg, drag.value, empty) : Infinity
  const limit = Math.min(pushed, lift?.value ?? Infinity), full = roomM3 * looseKg
  // A way too steep for any load by that push still gets a fifth of one, so that the days say how bad it is; the caution says why.
  const kg = Math.max(Math.min(full, limit), full / 5), load = kg / looseKg, people = Math.max(1, numberOf(job, 'people') ?? 2)
  const haul = valueOf(job, 'haul') ?? usualHaul, grade = Math.tan(radians(gradeDeg))
  const [loosen, shovel, walk, slowed, rest] = (['ground loosened an hour', 'muck shovelled an hour', 'walking with a load', 'slowed by grade', 'rest and small delays'] as const).map(assume) as
    [AssumedFigure, AssumedFigure, AssumedFigure, AssumedFigure, AssumedFigure]
  const cycle = loadCycle({
    bank: load / (1 + swellPct / 100), loosenPerHour: loosening ? loosen.value : Infinity, shovelPerHour: shovel.value, load,
    distance: haul, speed: walk.value, grade, slowing: slowed.value, tipMinutes: 0.5, restShare: rest.value, people,
  })
  const steepest = assume('steepest barrow way'), why = kg >= full ? 'it is full by then' : kg > limit ? 'the way is too steep for that push' : limit === pushed ? 'a steady push on that grade moves no more' : 'that is what one lifts'
  return {
    carrier, load, people, assumed: [room, push, ...(drag ? [drag] : []), ...(lift ? [lift] : [])],
    loadMass: buildAnswer({
      id: `${id}.load`, value: kg, unit: 'kg', sentence: `One ${carrier} takes ${volume(load, units, 2)}, ${heft(kg, units)}: ${why}.`,
      method: {
        name: 'the least of room, push and lift', page: 'loads',
        working: [
          `room: ${volume(roomM3, units, 2)} at ${heft(looseKg * (units.length === 'ft' ? 0.028316846592 : 1), units, 3)} loose a ${units.length === 'ft' ? 'cubic foot' : 'cubic metre'} = ${heft(full, units, 3)}`,
          ...(drag ? [`push: ${figure(push.value, 3)} N / (g (sin ${figure(gradeDeg, 2)}° + ${figure(drag.value, 2)} cos)) − ${heft(empty, units)} = ${heft(pushed, units, 3)}`] : []),
          ...(lift ? [`lift: ${heft(lift.value, units, 3)}`] : []),
        ],
      },
      from: [job.id], assumed: [room, push, ...(drag ? [drag] : []), ...(lift ? [lift] : [])],
    }),
    cycle: cycleAnswer(id, cycle, people, haul, [...(loosening ? [loosen] : []), shovel, walk, slowed, rest], job, units),
    cautions: [
      ...(carrier === 'barrow' && gradeDeg > steepest.value ? [`The way to the heap climbs ${figure(gradeDeg, 2)}°: steeper than ${figure(steepest.value, 2)}°, to which planked barrow runs are commonly held. Plank it, turn it, or use a rope and a second person.`] : []),
      ...(gradeDeg < -steepest.value ? [`The way falls ${figure(-gradeDeg, 2)}° under load: a barrow can run away; hold it from above.`] : []),
    ],
  }
}

function cycleAnswer(id: string, cycle: LoadCycle, people: number, haul: number, assumed: readonly AssumedFigure[], job: Entry, units: CrewUnits): Answer {
  const [loosen, fill, walk, rest] = [cycle.loosen, cycle.fill, cycle.walk, cycle.rest].map(m => figure(m, 2))
  return buildAnswer({
    id: `${id}.cycle`, value: cycle.minutes, unit: 'min', sentence: `Reckoned: ${figure(cycle.minutes, 2)} minutes from load to load with ${people} at it, ${length(haul, units, 2)} each way.`,
    method: {
      name: 'loosen, fill, wheel, tip and rest', page: 'loads',
      working: [`person-minutes a load: loosen ${loosen} + fill ${fill} + walk ${walk} + tip ${figure(cycle.tip, 2)} + rest ${rest} = ${figure(cycle.personMinutes, 3)}`, `${figure(cycle.personMinutes, 3)} / ${people} = ${figure(cycle.minutes, 3)} min`],
    },
    sources: ['F. W. Taylor, Shop Management, 1911, p. 166: the sum; his constants are not used'], from: [job.id], assumed,
  })
}
