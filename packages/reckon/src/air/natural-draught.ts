import { positive } from '../core/index.ts'
import { airKelvin, airPascals, dryAir, gravity } from './check-air.ts'

export interface NaturalDraught {
  /** Positive when the column named upcast is the warmer and lighter, so that it draws; negative when the air goes the other way. */
  readonly pressurePa: number
  /** Height of downcast air that weighs as much as the pressure, metres; same sign. */
  readonly motiveColumnM: number
  readonly direction: 'as named' | 'reversed' | 'none'
  readonly cautions: readonly string[]
}

/**
 * The pressure that two columns of air of different warmth set up between openings at different heights.
 *
 * Motive column H (Tu - Td) / Tu; pressure is its weight at the downcast's density P / (287.04 Td). Dry air, one barometer for both.
 * @param heightM  difference in height of the openings, metres, above zero
 * @param upcastC  mean temperature of the column taken as rising, Celsius
 * @param downcastC  mean temperature of the other column, Celsius
 * @param pressureKPa  barometer, kPa
 * @throws InputError for values outside what mine air has, with what was probably meant
 * Source: motive column method, Mine Ventilation Question Bank, question 1 (12.86 m, 146.2 Pa); density: McPherson, ch. 14 (from memory).
 */
export function naturalDraught(heightM: number, upcastC: number, downcastC: number, pressureKPa: number): NaturalDraught {
  positive(heightM, 'height_m', 'metres above zero')
  const [up, down, pressure] = [airKelvin(upcastC, 'upcast_C'), airKelvin(downcastC, 'downcast_C'), airPascals(pressureKPa, 'pressure_kPa')]
  const motiveColumnM = heightM * (up - down) / up
  return {
    pressurePa: motiveColumnM * pressure / (dryAir * down) * gravity,
    motiveColumnM,
    direction: up > down ? 'as named' : up < down ? 'reversed' : 'none',
    cautions: ['Natural draught turns with the weather and the hour, and stops when inside and outside are alike. Do not lean on it for air: read the meter.'],
  }
}
