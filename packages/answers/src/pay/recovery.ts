import type { Entry } from '@lodebook/book'
import type { Assume } from '../assumptions.ts'
import { buildAnswer } from '../build-answer.ts'
import { coloursOf } from '../read.ts'
import { figure, plural } from '../words.ts'
import { standingSpread } from './rates.ts'
import type { AnsweredSpread } from './rates.ts'

/** Fewer grains than this counted in all pans say nothing of sizes. */
const fewestGrains = 30
/** A grain of so many mg and more is coarse, of fewer flour. */
const [coarse, flour] = [1, 0.05]

/**
 * Share of the gold that ends in the pan. The crew's own figure when there is one; else the free-milling share times what a sluice keeps of each size of grain
 * as counted in the pans; else the standing figure.
 */
export function recoveryOf(pans: readonly Entry[], assume: Assume): AnsweredSpread {
  const own = assume('gold recovery')
  const grains = pans.flatMap(coloursOf)
  const count = grains.reduce((sum, g) => sum + g.count, 0), mass = grains.reduce((sum, g) => sum + g.count * g.mgEach, 0)
  if (own.entry !== undefined || count < fewestGrains || !(mass > 0)) return standingSpread('pay.recovery', own)
  const share = (from: number, to: number) => grains.filter(g => g.mgEach >= from && g.mgEach < to).reduce((sum, g) => sum + g.count * g.mgEach, 0) / mass
  const free = assume('free-milling share')
  const sizes = [['coarse', assume('coarse gold kept'), share(coarse, Infinity)], ['fine', assume('fine gold kept'), share(flour, coarse)], ['flour', assume('flour gold kept'), share(0, flour)]] as const
  const at = (key: 'value' | 'low' | 'high') => free[key] * sizes.reduce((sum, [, kept, part]) => sum + kept[key] * part, 0)
  const median = at('value')
  // Free share and what is kept of each size are in doubt by themselves: their distances to the deciles add as squares.
  const decileAt = (key: 'low' | 'high') => {
    const parts = [free[key] / free.value - 1, ...sizes.map(([, kept, part]) => free.value * (kept[key] - kept.value) * part / median)]
    return median * (1 + (key === 'low' ? -1 : 1) * Math.hypot(...parts))
  }
  const [low, high] = [Math.max(0.01, decileAt('low')), Math.min(0.99, decileAt('high'))]
  return {
    median, low, high,
    answer: buildAnswer({
      id: 'pay.recovery', value: median, unit: 'of the gold', range: { low, high, confidence: 0.8, because: ['how much of the gold crushing sets free', 'what a sluice keeps of each size'] },
      sentence: `About ${figure(100 * median, 2)} % of the gold ends in the pan, going by the sizes of ${plural(count, 'grain')} counted.`,
      method: {
        name: 'free-milling share times what is kept of each size', page: 'pay',
        working: [`${figure(free.value, 2)} × (${sizes.map(([name, kept, part]) => `${figure(100 * part, 2)} % ${name} × ${figure(kept.value, 2)}`).join(' + ')}) = ${figure(median, 2)}`],
      },
      from: pans.filter(p => coloursOf(p).length > 0).map(p => p.id), assumed: [free, ...sizes.map(([, kept]) => kept)],
      cautions: ['Refractory or very fine gold is lost: pan the tails and write down what is there before counting on more than two fifths.'],
    }),
  }
}
