import { hoskoldYears, informationWorth, netPresentValue, rateOfReturn } from '@lodebook/reckon/pay'
import { z } from 'zod'
import { reckoning, type Reckoning } from './define.ts'

const row = z.array(z.number()).max(1000)

export const pay: readonly Reckoning[] = [
  reckoning('present-value', 'what payments over time are worth now, and the rate that balances them',
    z.strictObject({ rate: z.number(), flows: z.array(z.number()).min(1).max(5000) }),
    { rate: 0.08, flows: [-40000, 5000, 8000, 12000, 30000] },
    ({ rate, flows }) => {
      const { rate: irr, rates, signChanges, reason } = rateOfReturn(flows)
      return { npv: netPresentValue(rate, flows), irr, irr_all: rates, sign_changes: signChanges, ...reason === undefined ? {} : { reason } }
    }),
  reckoning('hoskold', 'years an income must last to pay a return and give back its price',
    z.strictObject({ income_pct: z.number(), rate_pct: z.number(), safe_rate_pct: z.number() }),
    { income_pct: 29, rate_pct: 5, safe_rate_pct: 4 },
    ({ income_pct, rate_pct, safe_rate_pct }) => {
      const years = hoskoldYears(income_pct, rate_pct, safe_rate_pct)
      return years === null ? { years, reason: 'the income does not exceed the return wanted, so nothing is left to give back the price' } : { years }
    }),
  reckoning('information-worth', 'what a test is worth to a decision, and what each result would mean',
    z.strictObject({ prior: row, payoffs: z.array(row).max(1000), likelihoods: z.array(row).max(1000), cost: z.number().optional() }),
    { prior: [0.5, 0.3, 0.2], payoffs: [[-70, 50, 200], [0, 0, 0]], likelihoods: [[0.6, 0.3, 0.1], [0.3, 0.4, 0.4], [0.1, 0.3, 0.5]], cost: 10 },
    ({ cost, ...decision }) => {
      const found = informationWorth({ ...decision, ...cost === undefined ? {} : { cost } })
      return { without: found.without, with: found.with, worth: found.worth, net: found.net, perfect: found.perfect, posteriors: found.posteriors,
        signal_chances: found.signalChances, best_without: found.bestWithout, best_after: found.bestAfter }
    }),
]
