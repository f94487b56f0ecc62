import { InputError } from '../core/index.ts'

/** Kelvin of 0 degrees Celsius. */
export const iceKelvin = 273.15
/** Metres per second squared, standard. */
export const gravity = 9.80665
/** Gas constant of dry air, J/(kg K): McPherson, Subsurface Ventilation Engineering, ch. 14 (from memory). */
export const dryAir = 287.04

/** @throws InputError unless it is a temperature that mine air has, -60 to 70 degrees Celsius; returns it in kelvin */
export function airKelvin(celsius: number, field: string): number {
  if (Number.isFinite(celsius) && celsius >= -60 && celsius <= 70) return celsius + iceKelvin
  const fahrenheit = celsius > 70 && celsius <= 130 ? `; did you mean ${((celsius - 32) / 1.8).toFixed(1)} (${celsius} Fahrenheit)?` : ''
  throw new InputError(field, celsius, `air temperature in Celsius, -60 to 70${fahrenheit}`)
}

/** @throws InputError unless it is an air pressure that people work in, 30 to 130 kPa; returns it in pascals */
export function airPascals(kilopascals: number, field: string): number {
  if (Number.isFinite(kilopascals) && kilopascals >= 30 && kilopascals <= 130) return kilopascals * 1000
  const [h, mm, inch] = [kilopascals / 10, kilopascals * 0.133322387415, kilopascals * 3.386388640341]
  const guess = kilopascals >= 840 && kilopascals <= 1100 ? `${h} (hPa)` : kilopascals > 400 && kilopascals < 840 ? `${mm.toFixed(1)} (mmHg)`
    : kilopascals >= 20 && kilopascals < 30 ? `${inch.toFixed(1)} (inHg)` : undefined
  throw new InputError(field, kilopascals, `barometer in kPa, 30 to 130${guess === undefined ? '' : `; did you mean ${guess}?`}`)
}
