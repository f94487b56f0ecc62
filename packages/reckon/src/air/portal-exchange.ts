import { InputError, positive } from '../core/index.ts'
import { airKelvin, gravity } from './check-air.ts'

export interface PortalExchange {
  /** Each way, m3/s: as much comes in at one height as goes out at the other. */
  readonly flowM3S: number
  /** Which way air moves along the back; the sill is the other way. */
  readonly directionTop: 'in' | 'out' | 'none'
  readonly cautions: readonly string[]
}

/**
 * How much air a single opening trades with the outside because one side is warmer.
 *
 * Q = (Cd/3) W H sqrt(g (dT/T) H), T the mean of the two, the neutral height half-way up.
 * @param discharge  Cd; 0.65 when left out
 * @throws InputError for sizes that are not above zero, temperatures that mine air does not have, Cd outside (0, 1]
 * Source: Brown & Solvason, Int. J. Heat Mass Transfer 5 (1962) 859-868, as given in the LBNL Modelica Buildings library, DoorOpen.
 */
export function portalExchange(widthM: number, heightM: number, insideC: number, outsideC: number, discharge = 0.65): PortalExchange {
  positive(widthM, 'width_m', 'metres above zero')
  positive(heightM, 'height_m', 'metres above zero')
  if (positive(discharge, 'discharge') > 1) throw new InputError('discharge', discharge, 'a discharge coefficient above 0, up to 1')
  const [inside, outside] = [airKelvin(insideC, 'inside_C'), airKelvin(outsideC, 'outside_C')]
  const reduced = gravity * Math.abs(inside - outside) / ((inside + outside) / 2)
  return {
    flowM3S: discharge / 3 * widthM * heightM * Math.sqrt(reduced * heightM),
    directionTop: inside > outside ? 'out' : inside < outside ? 'in' : 'none',
    cautions: ['An upper bound, and only near the opening: walls hold the air back and a far dead end may get none of it. Read the meter at the face.'],
  }
}
