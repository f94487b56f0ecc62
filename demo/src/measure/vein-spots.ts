import type { Random } from '../random.ts'
import { exposures, raiseExposure, type Exposure } from '../truth/exposure.ts'
import type { Ore } from '../truth/ore.ts'
import { sectionAt } from '../truth/section.ts'
import type { Working } from '../truth/working.ts'

/** A stretch of a working along which the vein is laid bare, metres from its start. */
interface Stretch { readonly working: Working, readonly from: number, readonly to: number }

function stretches(ore: Ore): Stretch[] {
  return ore.workings.filter(w => w.onVein || w.sort === 'raise' || w.sort === 'winze').map(working => ({
    working, from: working.sort === 'raise' ? 1.6 : working.sort === 'winze' ? 1.8 : 0.4,
    to: working.name === 'Right drift' ? 25.5 : working.path.length - 0.4,
  }))
}

/** Metres to look before and behind when the vein does not show in one place, or is stoped away. */
const tries = [0, 0.4, -0.4, 0.9, -0.9, 1.5, -1.5]

/**
 * So many places where the vein can be reached, evenly spread over all that is laid bare, in the order of the workings. In a drift most are
 * in the back and some low on a rib; the vein has to be there, so none lies beyond the fault.
 */
export function veinSpots(ore: Ore, rng: Random, count: number): Exposure[] {
  const bare = stretches(ore), whole = bare.reduce((sum, s) => sum + s.to - s.from, 0), step = whole / count
  const spots: Exposure[] = []
  let done = 0
  for (const stretch of bare) {
    const { from, to } = stretch, end = stretch === bare.at(-1) ? Infinity : done + to - from
    for (; spots.length < count && (spots.length + 0.5) * step < end;) {
      spots.push(spotNear(ore, rng, stretch, from + (spots.length + 0.5) * step - done + rng.uniform(-0.2, 0.2) * Math.min(step, 2)))
    }
    done += to - from
  }
  return spots
}

function spotNear(ore: Ore, rng: Random, { working, from, to }: Stretch, at: number): Exposure {
  const low = rng.chance(0.25), ribs = rng.shuffle(['left rib', 'right rib'] as const)
  for (const step of tries) {
    const section = sectionAt(ore.stations, working, Math.max(from, Math.min(to, at + step)))
    const shown = working.onVein ? exposures(ore.vein, section) : ribs.map(rib => raiseExposure(ore.vein, section, rib))
    const left = shown.filter(e => !ore.stoped(e.vein) && !ore.beyondFault(e.vein)), spot = left.find(e => (e.side !== 'back') === low || !working.onVein) ?? left[0]
    if (spot !== undefined) return spot
  }
  throw new Error(`the vein does not show within 1.5 m of ${at.toFixed(1)} m along ${working.name}`)
}
