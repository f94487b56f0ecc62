import type { Belief } from '../belief.ts'
import { textOf } from '../read.ts'
import type { VeinFound } from '../vein/vein.ts'
import type { Sited } from '../vein/vein-data.ts'
import { bagOf } from './looks.ts'
import type { PlacedBelief } from './swapped-bags.ts'

/** Samples cut from the vein where it stands. */
const inPlace = ['channel', 'chip', 'panel']
/** Further from the vein's plane than this, metres, plus three times how uneven it is: not of the vein. */
const near = 2.5

/** Bags cut from the vein on the portal's side of the fault, with their place on it and what was found in them. */
type Placed = readonly PlacedBelief[]
export const placedBeliefs = (samples: readonly Sited[], beliefs: ReadonlyMap<string, Belief>, vein: VeinFound): Placed => samples.flatMap((sited) => {
  const { entry, located } = sited, bag = bagOf(entry), belief = beliefs.get(bag), on = vein.frame.toVein(located.point)
  if (!belief || !inPlace.includes(textOf(entry, 'method') ?? '') || !vein.thisSide(sited) || Math.abs(on.off) > near + 3 * vein.plane.unevenness) return []
  return [{ bag, entry: entry.id, at: { along: on.along, down: on.down }, grade: belief.grade, logMean: belief.logMean, logSd: belief.logSd }]
})
