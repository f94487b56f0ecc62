import { InputError, positive } from '../core/index.ts'

export interface ClearingTime {
  readonly minutes: number
  readonly cautions: readonly string[]
}

/**
 * Least time for fresh air to thin a gas or smoke from one strength to another: t = (V/Q) ln(C0/C).
 *
 * Perfect mixing and nothing more coming in: the floor, not the wait.
 * @param volumeM3  air in the place, above zero
 * @param flowM3S  fresh air through it, above zero
 * @param from  strength now, in any unit
 * @param to  strength wanted, same unit, above zero and no more than from
 * @throws InputError for values outside those
 * Source: dilution by perfect mixing; tracer case of jayjock-associates.blogspot.com, July 2013 (9.9 m3/h in 20 m3).
 */
export function clearingTime(volumeM3: number, flowM3S: number, from: number, to: number): ClearingTime {
  positive(volumeM3, 'volume_m3', 'cubic metres above zero')
  positive(flowM3S, 'flow_m3_s', 'cubic metres a second above zero; still air never clears')
  positive(from, 'from', 'a strength above zero')
  if (positive(to, 'to', 'a strength above zero; it thins out and never reaches nothing') > from) throw new InputError('to', to, `no more than from, ${from}`)
  return {
    minutes: volumeM3 / flowM3S * Math.log(from / to) / 60,
    cautions: [
      'The least time, for air that mixes perfectly. A dead end clears more slowly. Wait the time and take a reading that passes, both.',
      'After a blast at least 15 minutes and until the air has been renewed (8 CCR 8437(d), California); local rules may ask for more.',
    ],
  }
}
