import type { Degrees, Enu, VeinPoint } from '@lodebook/reckon'
import { random, type Random } from '../random.ts'
import { makeFault, type Fault } from './fault.ts'
import { makeGold, type Gold } from './gold.ts'
import { groundInside, inside, type Ground, type Outline } from './ounces.ts'
import { insideAny, openingsOf } from './openings.ts'
import { stated } from './stated.ts'
import { axesOf, dot, minus, type Plane } from './vectors.ts'
import { makeVein, type Vein } from './vein.ts'
import { makeWorkings, veinOrigin, type Workings } from './workings.ts'

/** A barren dyke that the adit and the right drift cut, on both sides of the fault: the second marker for its slip. */
export interface Dyke extends Plane {
  readonly thickness: number
  readonly normal: Enu
  /** Signed distance of a point from its middle plane, the fault's slip undone. */
  off(p: Enu): number
}

export interface GroundOptions<Point> {
  /** Outlines to take away instead of the true stope and headings: what the crew believes to be gone. */
  readonly taken?: readonly (readonly Point[])[]
  /** Counts what is gone too. */
  readonly workedOut?: boolean
  /** Counts what lies beyond the fault too. */
  readonly beyondFault?: boolean
  /** Side of the squares of the integral, metres. */
  readonly step?: number
}

/** What is so, in metres east, north and up of the stated point. No reckoning may see it; tests hold answers against it. */
export interface Ore extends Gold, Workings {
  readonly vein: Vein
  readonly fault: Fault
  readonly dyke: Dyke
  /** Of the vein's material, t/m³. */
  readonly density: number
  /** What the needle really does there, degrees east of true north. */
  readonly declination: Degrees
  /** How far iron turns the needle at each station, degrees. */
  readonly attraction: ReadonlyMap<string, Degrees>
  /** What the headings themselves took out of the vein, outlines on it. */
  readonly openings: readonly Outline[]
  /** Where nothing is left or nothing was: stoped, driven through, or beyond the fault. */
  gone(p: VeinPoint): boolean
  /** Is this part of the vein inside the old stope? */
  stoped(p: VeinPoint): boolean
  /** Is this part of the vein beyond the fault? */
  beyondFault(p: VeinPoint): boolean
  /**
   * What is left in the ground inside outlines given in the vein's own coordinates: the stope and the headings are taken away
   * (unless `workedOut`), and what lies beyond the fault too (unless `beyondFault`).
   */
  groundIn(outlines: readonly Outline[], options?: GroundOptions<VeinPoint>): Ground
  /** The same for outlines given as points of the ground; each corner is brought square onto the vein. */
  groundUnder(outlines: readonly (readonly Enu[])[], options?: GroundOptions<Enu>): Ground
}

/** Makes the mine that the crew is to find out about. */
export function makeOre(seed: number): Ore {
  const faultNumbers = random(seed, 'fault')
  const { fault, ...vein } = makeVein(random(seed, 'vein'), veinOrigin, at => makeFault(faultNumbers, at))
  const gold = makeGold(random(seed, 'gold')), workings = makeWorkings(random(seed, 'workings'), vein)
  // The swells are too small to matter more than a metre from the fault, and dear to work out.
  const beyondFault = (p: VeinPoint) => {
    const near = dot(minus(vein.onPlane(p), fault.point), fault.normal)
    return Math.abs(near) > 1 ? near < 0 : fault.beyond(vein.unfaulted(p))
  }
  const stoped = (p: VeinPoint) => inside(p, workings.stope)
  const openings = openingsOf(vein, workings.workings), driven = insideAny(openings), worked = (p: VeinPoint) => stoped(p) || driven(p)
  const groundIn: Ore['groundIn'] = (outlines, { taken, workedOut, beyondFault: far, step } = {}) => {
    const away = taken === undefined ? worked : insideAny(taken)
    return groundInside(gold, outlines, p => (!workedOut && away(p)) || (!far && beyondFault(p)), step)
  }
  const onto = (outlines: readonly (readonly Enu[])[]) => outlines.map(outline => outline.map(p => squareOnto(vein, p)))
  const needle = random(seed, 'needle')
  return {
    ...gold, ...workings, vein, fault, density: stated.density, dyke: makeDyke(vein, fault),
    declination: stated.modelDeclination + needle.normal(0, 0.35),
    attraction: new Map([...workings.stations.keys()].map(name => [name, ironAt(needle)])),
    openings, stoped, beyondFault, gone: p => worked(p) || beyondFault(p), groundIn,
    groundUnder: (outlines, { taken, ...options } = {}) => groundIn(onto(outlines), { ...options, ...taken === undefined ? {} : { taken: onto(taken) } }),
  }
}

/** Most stations feel a little iron; one in twenty-five stands beside a rail or a pipe. */
const ironAt = (rng: Random): Degrees => rng.chance(0.04) ? rng.pick([-1, 1]) * rng.uniform(1.5, 3) : rng.normal(0, 0.2)

/** Coordinates in the vein of a point of the ground, as if the fault had moved nothing: for outlines that may reach across it. */
function squareOnto(vein: Vein, p: Enu): VeinPoint {
  const d = minus(p, vein.origin)
  return { along: dot(d, vein.alongAxis), down: dot(d, vein.downAxis) }
}

function makeDyke(vein: Vein, fault: Fault): Dyke {
  const { strike, dip, along, thickness } = stated.dyke, { normal } = axesOf({ strike, dip }), point = vein.unfaulted({ along, down: 0 })
  return { strike, dip, point, thickness, normal, off: p => dot(minus(fault.restored(p), point), normal) }
}
