import { finite, InputError, positive, radians } from '../core/index.ts'

const gravity = 9.80665

/**
 * The heaviest load a person can keep moving on a grade with a steady push: m g (sin a + c cos a) = F, less what the carrier itself weighs.
 *
 * Downhill the same holds for the force that holds it back, where the wheel's own drag helps.
 * @param pushN  steady push of one person, newtons
 * @param gradeDeg  the way the load goes, up positive, within 45 of level
 * @param drag  rolling or sliding resistance over weight: a wheel on planks or earth, a sled on mud
 * @param carrierKg  the barrow or sled, empty
 * @returns kilograms of load, 0 when the carrier alone is too much; Infinity where drag and grade cancel
 * @throws InputError for a push that is not above zero, a drag below zero, a grade outside [-45, 45]
 * Source: statics; the push and the drag are taken as given by the caller.
 */
export function pushLimit(pushN: number, gradeDeg: number, drag: number, carrierKg: number): number {
  positive(pushN, 'push')
  if (finite(drag, 'drag') < 0) throw new InputError('drag', drag, 'zero or more')
  if (!(Math.abs(finite(gradeDeg, 'grade')) <= 45)) throw new InputError('grade', gradeDeg, 'from -45 to 45 degrees')
  if (finite(carrierKg, 'carrier') < 0) throw new InputError('carrier', carrierKg, 'kilograms, zero or more')
  const needed = Math.abs(Math.sin(radians(gradeDeg)) + drag * Math.cos(radians(gradeDeg)))
  return needed === 0 ? Infinity : Math.max(0, pushN / (gravity * needed) - carrierKg)
}
