import { finite, InputError, positive } from '../core/index.ts'

export interface Muck {
  readonly looseVolume: number
  /** Not rounded: 4.5 loads is four and a half. */
  readonly loads: number
  /** Share of the broken heap that is air, 0 to 1. */
  readonly voids: number
  /** Solid volume in one loose: 1 / (1 + swell). */
  readonly loadFactor: number
}

/**
 * What rock or ground in place comes to when it is broken and carried.
 * @param bankVolume  in place; any unit of volume
 * @param swellPct  growth on breaking, per cent; zero or more
 * @param loadVolume  what one barrow or bucket holds, in the same unit
 * @throws InputError for a negative volume or swell, or a load of nothing
 * Source: load factor 1 / (1 + s), voids s / (1 + s): loader-handbook table as read for checks/physical.md section 5.2.
 */
export function muck(bankVolume: number, swellPct: number, loadVolume: number): Muck {
  if (finite(bankVolume, 'bank_volume') < 0) throw new InputError('bank_volume', bankVolume, 'a volume of zero or more')
  if (finite(swellPct, 'swell_pct') < 0) throw new InputError('swell_pct', swellPct, 'per cent, zero or more')
  positive(loadVolume, 'load_volume', 'a volume above zero')
  const growth = 1 + swellPct / 100
  const looseVolume = bankVolume * growth
  return { looseVolume, loads: looseVolume / loadVolume, voids: swellPct / 100 / growth, loadFactor: 1 / growth }
}
