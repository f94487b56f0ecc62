import { portalExchange } from './portal-exchange.ts'

export interface MonthOutside { readonly month: string, readonly lowC: number, readonly highC: number }

export interface MonthBreathing extends MonthOutside {
  /** Exchange at the low and at the high of the day, m3/s each way. */
  readonly atLow: number
  readonly atHigh: number
  /** Which way air moves along the back at each. */
  readonly topAtLow: 'in' | 'out' | 'none'
  readonly topAtHigh: 'in' | 'out' | 'none'
  /** Within the day the outside passes the inside's warmth: the exchange stops and turns round. */
  readonly turns: boolean
}

/** How a single opening breathes month by month, from how warm it is inside and outside. An upper bound, as portalExchange is. */
export function breathingOutlook(widthM: number, heightM: number, insideC: number, months: readonly MonthOutside[],
  discharge?: number): readonly MonthBreathing[] {
  return months.map((month) => {
    const [low, high] = [month.lowC, month.highC].map(outside => portalExchange(widthM, heightM, insideC, outside, discharge))
    return { ...month, atLow: low!.flowM3S, atHigh: high!.flowM3S, topAtLow: low!.directionTop, topAtHigh: high!.directionTop,
      turns: month.lowC < insideC && month.highC > insideC }
  })
}

/** Least air for each person underground: 200 cubic feet a minute, m3/s. California, 8 CCR 8437(a) (V); 29 CFR 1926.800(k) the same (M). */
export const airPerPerson = 200 * 0.028316846592 / 60
