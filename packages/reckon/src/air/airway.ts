import { finite, InputError, positive } from '../core/index.ts'

export interface AirwayInput {
  readonly lengthM: number
  readonly areaM2: number
  readonly perimeterM: number
  /** Atkinson friction factor at the standard density of 1.2 kg/m3. */
  readonly frictionKgM3: number
  /** Sum of shock factors X: bends, entry, exit. 0 when left out. */
  readonly shock?: number
  /** 1.2 when left out. */
  readonly densityKgM3?: number
  readonly flowM3S?: number
}

export interface Airway {
  /** N s2/m8, friction and shock together, at the air's own density. */
  readonly resistance: number
  readonly frictionResistance: number
  readonly shockResistance: number
  /** Pressure that drives the flow, Pa; with the sign of the flow. Left out without a flow. */
  readonly pressurePa?: number
  /** Length of plain airway that resists as the shocks do, metres. */
  readonly equivalentLengthM: number
}

const standardDensity = 1.2

/**
 * Resistance of an airway, by Atkinson: R = k L Per / A^3, shock X rho / (2 A^2), pressure R Q |Q|.
 * @throws InputError for sizes that are not above zero, a perimeter too short for its area, or a negative shock factor
 * Source: Atkinson's equation; McPherson, Subsurface Ventilation Engineering, ch. 5 (from memory); Mine Ventilation Question Bank, question 2.
 */
export function airway({ lengthM, areaM2, perimeterM, frictionKgM3, shock = 0, densityKgM3 = standardDensity, flowM3S }: AirwayInput): Airway {
  positive(lengthM, 'length_m', 'metres above zero')
  positive(areaM2, 'area_m2', 'square metres above zero')
  positive(perimeterM, 'perimeter_m', 'metres above zero')
  positive(frictionKgM3, 'friction_kg_m3', 'a friction factor above zero, kg/m3, such as 0.012')
  positive(densityKgM3, 'density_kg_m3', 'kg/m3 above zero')
  if (finite(shock, 'shock') < 0) throw new InputError('shock', shock, 'a shock factor of zero or more')
  // No shape has less edge for its area than a circle; the slack is for sizes rounded to the centimetre.
  const circle = 2 * Math.sqrt(Math.PI * areaM2)
  if (perimeterM < circle * 0.99) throw new InputError('perimeter_m', perimeterM, `at least ${circle.toFixed(2)} m, the edge of a circle of ${areaM2} m2`)
  const friction = frictionKgM3 * densityKgM3 / standardDensity
  const frictionResistance = friction * lengthM * perimeterM / areaM2 ** 3
  const shockResistance = shock * densityKgM3 / (2 * areaM2 ** 2)
  const resistance = frictionResistance + shockResistance
  return {
    resistance, frictionResistance, shockResistance,
    equivalentLengthM: shock * densityKgM3 * areaM2 / (2 * friction * perimeterM),
    ...flowM3S === undefined ? {} : { pressurePa: resistance * finite(flowM3S, 'flow_m3_s') * Math.abs(flowM3S) },
  }
}
