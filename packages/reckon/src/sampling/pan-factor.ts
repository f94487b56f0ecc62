import { InputError, positive } from '../core/index.ts'

/**
 * How many struck pans of loose ground one unit of ground in place fills.
 * @param panVolume  of a struck pan, in the unit of volume asked about
 * @param swell      share that ground gains when dug, 0.2 for 20 %; zero or more
 * Source: arithmetic; volumes in BLM Technical Bulletin 4 (Wells 1969).
 */
export function panFactor(panVolume: number, swell: number): number {
  if (!(swell >= 0 && Number.isFinite(swell))) throw new InputError('swell', swell, 'a share, zero or more')
  return (1 + swell) / positive(panVolume, 'pan_volume')
}
