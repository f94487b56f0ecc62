import type { Enu } from '../core/index.ts'
import { axesOf, checkedAttitude } from './attitude.ts'
import type { Attitude } from './attitude.ts'
import type { Line } from './line.ts'
import { planeIntersection } from './plane-intersection.ts'
import { checkedPoint } from './spread.ts'
import { add, dot, length, scaled, subtract } from './vector.ts'

/** A plane in its place. */
export interface PlacedPlane extends Attitude { readonly point: Enu }

export interface FaultOffset {
  /** The vein beyond the fault: the same attitude, through the vein's point carried by the slip. */
  readonly continuation: PlacedPlane
  /** From the cut-off line along the fault's strike (right-hand rule positive) to the continuation. Undefined when the vein's trace on the fault is level. */
  readonly alongFaultStrike: number | undefined
  /** The same down the fault's dip. Undefined when the trace runs straight down the dip. */
  readonly downFaultDip: number | undefined
  /** Shortest way on the fault from the cut-off line to the continuation's. Zero when the slip runs along the line: the vein is then not displaced at all. */
  readonly onFault: number
  /** That way as a vector in the fault plane. */
  readonly onFaultVector: Enu
  /** Distance between the two parts of the vein, square to the vein; positive on the side of the vein's upward normal. */
  readonly squareToVein: number
  /** Where the vein is cut off on the fault. */
  readonly cutoffLine: Line & { readonly rakeInVein: number, readonly rakeInFault: number }
  /** The part of the slip square to the fault, which a pure slip does not have. */
  readonly offFault: number
}

/** Cosine below which the vein's trace counts as level, or as straight down the dip, on the fault. */
const levelCosine = 16 * Number.EPSILON

/**
 * Where a vein goes on past a fault whose slip is known.
 *
 * The vein n.(x - p) = 0 goes on as n.(x - p - s) = 0. A separation alone, without slip, never tells the slip: any movement along the cut-off
 * line can be added and the separation stays. Two markers that are not parallel, or striae, settle it.
 * @param slip movement of the far side of the fault beside the near side, [east, north, up], unit of the points
 * @throws DegenerateError("parallel") when vein and fault never meet; InputError
 * Source: plane geometry, derived here; the warning about separation and slip: GSA Bulletin 58, 1947, 79 (abstract read).
 */
export function faultOffset(vein: PlacedPlane, fault: PlacedPlane, slip: Enu): FaultOffset {
  checkedPoint(vein.point, 'vein.point')
  checkedPoint(fault.point, 'fault.point')
  checkedPoint(slip, 'slip')
  const meet = planeIntersection(vein, fault, ['vein', 'fault'])
  const attitude = checkedAttitude(vein, 'vein')
  const { normal } = axesOf(attitude)
  const on = axesOf(checkedAttitude(fault, 'fault'))
  const squareToVein = dot(slip, normal)
  const inFault = subtract(normal, scaled(on.normal, dot(normal, on.normal)))
  const size = length(inFault)
  const share = (axis: Enu): number | undefined => {
    const cosine = dot(normal, axis)
    if (Math.abs(squareToVein) <= levelCosine * length(slip)) return 0
    return Math.abs(cosine) <= levelCosine ? undefined : squareToVein / cosine
  }
  return {
    continuation: { ...attitude, point: add(vein.point, slip) },
    alongFaultStrike: share(on.strike), downFaultDip: share(on.dip),
    onFault: Math.abs(squareToVein) / size, onFaultVector: scaled(inFault, squareToVein / (size * size)), squareToVein,
    cutoffLine: { trend: meet.trend, plunge: meet.plunge, rakeInVein: meet.rakeA, rakeInFault: meet.rakeB },
    offFault: dot(slip, on.normal),
  }
}
