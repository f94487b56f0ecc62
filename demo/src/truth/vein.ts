import type { Degrees, Enu, VeinPoint } from '@lodebook/reckon'
import type { Random } from '../random.ts'
import type { Fault } from './fault.ts'
import { gaussianField } from './gaussian-field.ts'
import { stated } from './stated.ts'
import { add, axesOf, dot, minus, planeOf, times, type Plane } from './vectors.ts'

export interface Vein extends Plane {
  /** Where `along` and `down` are zero: the mean plane, where the adit meets it. Same as `point`. */
  readonly origin: Enu
  readonly alongAxis: Enu
  readonly downAxis: Enu
  /** Points up, towards the hanging wall. */
  readonly normal: Enu
  /** How far the vein's middle stands off the mean plane, towards the hanging wall, metres. */
  undulation(p: VeinPoint): number
  /** The mean plane, and where the vein's middle was, before the fault moved anything. */
  onPlane(p: VeinPoint): Enu
  unfaulted(p: VeinPoint): Enu
  /** Where the vein's middle is today. */
  at(p: VeinPoint): Enu
  /** Coordinates in the vein of a point of today's ground, and how far it stands off the vein's middle, towards the hanging wall. */
  toVein(p: Enu): VeinPoint & { readonly off: number }
  /** Strike and dip of the vein at one point, undulation included. */
  attitude(p: VeinPoint): { readonly strike: Degrees, readonly dip: Degrees }
  /** The point of the vein at this elevation. */
  atLevel(along: number, up: number): VeinPoint
}

/** Standard deviation of the undulation, metres. */
const swing = 0.1

/** The surface of the vein: a plane with gentle swells, cut and moved by the fault. */
export function makeVein(rng: Random, origin: Enu, makeFault: (at: Enu) => Fault): Vein & { readonly fault: Fault } {
  const { strike, dip } = stated.vein, { along: alongAxis, down: downAxis, normal } = axesOf({ strike, dip })
  const swell = gaussianField(rng, { type: 'gaussian', range: 10, ratio: 0.8, pitch: 60 })
  const undulation = (p: VeinPoint) => swing * swell(p)
  const onPlane = (p: VeinPoint) => add(origin, add(times(alongAxis, p.along), times(downAxis, p.down)))
  const unfaulted = (p: VeinPoint) => add(onPlane(p), times(normal, undulation(p)))
  const fault = makeFault(onPlane({ along: stated.faultAlong, down: 0 }))

  function attitude({ along, down }: VeinPoint) {
    const h = 0.25
    const dAlong = (undulation({ along: along + h, down }) - undulation({ along: along - h, down })) / (2 * h)
    const dDown = (undulation({ along, down: down + h }) - undulation({ along, down: down - h })) / (2 * h)
    return planeOf(minus(normal, add(times(alongAxis, dAlong), times(downAxis, dDown))))
  }
  function atLevel(along: number, up: number): VeinPoint {
    let down = (origin[2] - up) / -downAxis[2]
    // The swell moves the vein up or down by a few centimetres; three rounds settle it to well under a millimetre.
    for (let i = 0; i < 3; i++) down = (origin[2] + normal[2] * undulation({ along, down }) - up) / -downAxis[2]
    return { along, down }
  }
  return {
    strike, dip, point: origin, origin, alongAxis, downAxis, normal, fault, undulation, onPlane, unfaulted, attitude, atLevel,
    at: p => fault.moved(unfaulted(p)),
    toVein: (p) => {
      const d = minus(fault.restored(p), origin), along = dot(d, alongAxis), down = dot(d, downAxis)
      return { along, down, off: dot(d, normal) - undulation({ along, down }) }
    },
  }
}
