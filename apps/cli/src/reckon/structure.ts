import { directionMean, faultOffset, orientationTensor, planeIntersection, planeThrough, trueDip, trueThickness, trueWidth } from '@lodebook/reckon/structure'
import { z } from 'zod'
import { reckoning } from './define.ts'
import type { Reckoning } from './define.ts'

const point = z.tuple([z.number(), z.number(), z.number()])
const dip = z.number().min(0).max(90)
const plane = z.strictObject({ strike: z.number(), dip })
const placed = z.strictObject({ strike: z.number(), dip, point })
const line = z.strictObject({ trend: z.number(), plunge: z.number().min(-90).max(90) })

/** Planes and lines: vein, walls, joints and faults. */
export const structure: readonly Reckoning[] = [
  reckoning('plane-through', 'Best plane through three or more points: strike, dip, rms distance',
    z.strictObject({ points: z.array(point) }),
    { points: [[0, 0, 100], [12.1, 3.4, 98.2], [4.2, 9.8, 91.5], [15.3, 11.9, 90.4]] },
    ({ points }) => {
      const fit = planeThrough(points)
      return {
        strike: fit.strike, dip: fit.dip, dip_direction: fit.dipDirection, rms: fit.rms, centroid: fit.centroid, residuals: fit.residuals,
        ...fit.doubt && { sigma: { strike: fit.doubt.strike, dip: fit.doubt.dip } },
      }
    }),
  reckoning('true-dip', 'Strike and true dip from two apparent dips or other lines in the plane',
    z.strictObject({ apparent: z.tuple([line, line]) }),
    { apparent: [{ trend: 2, plunge: 40 }, { trend: 135, plunge: 30 }] },
    ({ apparent: [a, b] }) => trueDip(a, b)),
  reckoning('plane-intersection', 'The line where two planes meet, and its rake in each',
    z.strictObject({ a: plane, b: plane }),
    { a: { strike: 40, dip: 70 }, b: { strike: 120, dip: 55 } },
    ({ a, b }) => {
      const { trend, plunge, rakeA, rakeB } = planeIntersection(a, b)
      return { trend, plunge, rake_a: rakeA, rake_b: rakeB }
    }),
  reckoning('true-thickness', 'Thickness square to a plane between two points on its walls',
    z.strictObject({ plane, from: point, to: point }),
    { plane: { strike: 84.5, dip: 22.5 }, from: [1147, 3329, 400], to: [1323, 2362, 500] },
    ({ plane: layer, from, to }) => ({ thickness: trueThickness(layer, from, to) })),
  reckoning('true-width', 'True width of a vein from a tape laid across it at an angle, with its doubt',
    z.strictObject({
      length: z.number().positive(), trend: z.number(), plunge: z.number().min(-90).max(90), plane,
      sigma_length: z.number().min(0).optional(), sigma_direction_deg: z.number().min(0).optional(),
    }),
    { length: 0.46, trend: 130, plunge: 0, plane: { strike: 40, dip: 70 }, sigma_length: 0.01, sigma_direction_deg: 5 },
    ({ plane: vein, sigma_length: lengthSigma = 0, sigma_direction_deg: directionSigma = 0, ...tape }) => {
      const { width, sigma, angle, alongVein } = trueWidth({ ...tape, lengthSigma, directionSigma }, vein)
      return { width, sigma, angle, along_vein: alongVein }
    }),
  reckoning('direction-mean', 'Mean of directions, concentration and 95 % cone',
    z.strictObject({ directions: z.array(line) }),
    { directions: [{ trend: 122.5, plunge: 55.5 }, { trend: 130.5, plunge: 58 }, { trend: 132.5, plunge: 44 }, { trend: 148.5, plunge: 56 }] },
    ({ directions }) => {
      const { trend, plunge, resultant, kappa, alpha95 } = directionMean(directions)
      // JSON has no infinity: null says that the directions are all the same.
      return { trend, plunge, resultant, kappa: Number.isFinite(kappa) ? kappa : null, alpha95 }
    }),
  reckoning('orientation-tensor', 'Eigenvalues and axes of lines without a sense: cluster, girdle or neither',
    z.strictObject({ directions: z.array(line) }),
    { directions: [{ trend: 122.5, plunge: 55.5 }, { trend: 130.5, plunge: 58 }, { trend: 132.5, plunge: 44 }, { trend: 148.5, plunge: 56 }] },
    ({ directions }) => {
      const { eigenvalues, axes, woodcock, vollmer } = orientationTensor(directions)
      return { eigenvalues, axes, ...woodcock && { woodcock }, vollmer }
    }),
  reckoning('fault-offset', 'Where a vein goes on past a fault whose slip is known',
    z.strictObject({ vein: placed, fault: placed, slip: point }),
    { vein: { strike: 10, dip: 75, point: [0, 0, 0] }, fault: { strike: 95, dip: 60, point: [5, 30, 0] }, slip: [4, 0.3, -1] },
    ({ vein, fault, slip }) => {
      const offset = faultOffset(vein, fault, slip)
      return {
        continuation: offset.continuation,
        // null: the vein's trace on the fault runs along that very direction, so that it is never met that way.
        separation_along_fault_strike: offset.alongFaultStrike ?? null,
        separation_down_fault_dip: offset.downFaultDip ?? null,
        cutoff_line: { trend: offset.cutoffLine.trend, plunge: offset.cutoffLine.plunge },
        separation_on_fault: offset.onFault, separation_on_fault_vector: offset.onFaultVector,
        separation_square_to_vein: offset.squareToVein, slip_off_fault: offset.offFault,
      }
    }),
]
