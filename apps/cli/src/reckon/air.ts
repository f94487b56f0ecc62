import { airway, clearingTime, gasCheck, gases, gasNames, naturalDraught, portalExchange, type Gas } from '@lodebook/reckon/air'
import { z } from 'zod'
import { reckoning, type Reckoning } from './define.ts'

const reading = z.number().optional()

export const air: readonly Reckoning[] = [
  reckoning('gas-check', 'gas readings against published limits, worst first',
    z.strictObject({ readings: z.strictObject({ o2_pct: reading, co_ppm: reading, co2_ppm: reading, ch4_pct: reading, h2s_ppm: reading, no2_ppm: reading }) }),
    { readings: { o2_pct: 18.9, co_ppm: 240, co2_ppm: 9000, h2s_ppm: 0 } },
    ({ readings }) => {
      const named = gasNames.flatMap((gas): [Gas, number][] => {
        const value = readings[gases[gas].field]
        return value === undefined ? [] : [[gas, value]]
      })
      const { findings, notRead, doubts, cautions } = gasCheck(Object.fromEntries(named))
      return {
        findings: findings.map(({ gas, value, unit, limit, rule, section, kind, says, action, status, source }) =>
          ({ gas, value, unit, limit, rule, section, kind, says, action, status, source })),
        not_read: notRead, doubts, cautions,
      }
    }),
  reckoning('natural-draught', 'pressure of two columns of air of different warmth',
    z.strictObject({ height_m: z.number(), upcast_C: z.number(), downcast_C: z.number(), pressure_kPa: z.number() }),
    { height_m: 400, upcast_C: 38, downcast_C: 28, pressure_kPa: 99.992 },
    ({ height_m, upcast_C, downcast_C, pressure_kPa }) => {
      const { pressurePa, motiveColumnM, direction, cautions } = naturalDraught(height_m, upcast_C, downcast_C, pressure_kPa)
      return { pressure_Pa: pressurePa, motive_column_m: motiveColumnM, direction, cautions }
    }),
  reckoning('airway', 'resistance of an airway, and the pressure a flow needs',
    z.strictObject({ length_m: z.number(), area_m2: z.number(), perimeter_m: z.number(), friction_kg_m3: z.number(),
      shock: z.number().optional(), density_kg_m3: z.number().optional(), flow_m3_s: z.number().optional() }),
    { length_m: 100, area_m2: 3, perimeter_m: 7, friction_kg_m3: 0.012, flow_m3_s: 4 },
    ({ length_m, area_m2, perimeter_m, friction_kg_m3, shock, density_kg_m3, flow_m3_s }) => {
      const found = airway({
        lengthM: length_m, areaM2: area_m2, perimeterM: perimeter_m, frictionKgM3: friction_kg_m3,
        ...shock === undefined ? {} : { shock }, ...density_kg_m3 === undefined ? {} : { densityKgM3: density_kg_m3 },
        ...flow_m3_s === undefined ? {} : { flowM3S: flow_m3_s },
      })
      return {
        resistance: found.resistance, ...found.pressurePa === undefined ? {} : { pressure_Pa: found.pressurePa },
        equivalent_length_m: found.equivalentLengthM, friction_resistance: found.frictionResistance, shock_resistance: found.shockResistance,
      }
    }),
  reckoning('portal-exchange', 'air that one opening trades with the outside',
    z.strictObject({ width_m: z.number(), height_m: z.number(), inside_C: z.number(), outside_C: z.number(), discharge: z.number().optional() }),
    { width_m: 1.5, height_m: 2, inside_C: 9, outside_C: 19 },
    ({ width_m, height_m, inside_C, outside_C, discharge }) => {
      const { flowM3S, directionTop, cautions } = portalExchange(width_m, height_m, inside_C, outside_C, discharge)
      return { flow_m3_s: flowM3S, direction_top: directionTop, cautions }
    }),
  reckoning('clearing-time', 'least time for fresh air to thin a gas',
    z.strictObject({ volume_m3: z.number(), flow_m3_s: z.number(), from: z.number(), to: z.number() }),
    { volume_m3: 120, flow_m3_s: 0.2, from: 400, to: 25 },
    ({ volume_m3, flow_m3_s, from, to }) => ({ ...clearingTime(volume_m3, flow_m3_s, from, to) })),
]
