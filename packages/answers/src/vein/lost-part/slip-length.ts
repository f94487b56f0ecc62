import type { SlipEvidence } from '@lodebook/reckon/structure'
import type { Answer } from '../../answer.ts'
import { buildAnswer } from '../../build-answer.ts'
import { valueOf } from '../../read.ts'
import { length, plural } from '../../words.ts'
import type { CrewUnits } from '../../words.ts'
import type { Sited } from '../vein-data.ts'

/** Without a stated doubt a written slip is taken as good to this share of itself. A guess, no source. */
const usualShare = 0.15
const tenth = 1.2816
const least = 0.02 // of itself: nothing is matched across gouge more closely

export interface SlipLengthRead { readonly amount: SlipEvidence['amount'], readonly answer: Answer }

/** How far the fault moved, where the crew matched that and wrote it with the fault or its grooves; undefined where nobody did. */
export function slipLength(onFault: readonly Sited[], units: CrewUnits): SlipLengthRead | undefined {
  const read = onFault.flatMap(({ entry }) => {
    const slip = valueOf(entry, 'slip')
    return slip === undefined ? [] : [{ entry: entry.id, slip, sigma: Math.max(least * slip, valueOf(entry, 'slipGoodTo') ?? usualShare * slip) }]
  })
  if (read.length === 0) return undefined
  const total = read.reduce((sum, r) => sum + r.sigma ** -2, 0)
  const slip = read.reduce((sum, r) => sum + r.slip * r.sigma ** -2, 0) / total
  // Readings that disagree widen it.
  const scatter = read.length < 2 ? 0 : Math.sqrt(read.reduce((sum, r) => sum + (r.slip - slip) ** 2, 0) / (read.length - 1) / read.length)
  const sigma = Math.max(Math.sqrt(1 / total), scatter)
  const [low, high] = [Math.max(slip / 20, slip - tenth * sigma), slip + tenth * sigma]
  return {
    amount: { low, high },
    answer: buildAnswer({
      id: 'lost-part.slip', value: slip, unit: 'm', sentence: `The fault moved ${length(slip, units, 2)} as matched and written in ${plural(read.length, 'reading')} (±${length(sigma, units, 2)}).`,
      range: { low, high, confidence: 0.8, because: ['how closely it was matched'] },
      method: { name: 'slip as written', page: 'lost-part', working: [`weighted mean of ${plural(read.length, 'reading')}: ${slip.toFixed(2)} m ± ${sigma.toFixed(2)} m`] },
      from: read.map(r => r.entry),
    }),
  }
}
