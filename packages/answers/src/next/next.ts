import { certaintyWorth, lookBatch, lookWorth } from '@lodebook/reckon/pay'
import type { CandidateLook, GroundChoice } from '@lodebook/reckon/pay'
import type { NotEnough } from '../answer.ts'
import { buildAnswer, mean } from '../build-answer.ts'
import { dayMoney } from '../pay/judged-option.ts'
import type { PayBasis } from '../pay/basis.ts'
import type { Grade } from '../shapes.ts'
import { figure, length, plain, plural } from '../words.ts'
import type { CrewUnits } from '../words.ts'
import { candidatesOf } from './candidates.ts'
import type { Candidate, CandidateInput } from './candidates.ts'
import type { BlindSpot, Next, NextLook } from './shapes.ts'

const [looksKept, batchFrom, batchMost] = [40, 16, 4]
/** A look worth less than so much of the best is left off the list. */
const leastShare = 0.01
const cautions = [
  'A place on this list has not been looked at for its ground, air or water: look first, and leave it where it is not fit to work in.',
  'Worth is to the choice between the options written down. It is an average over what may be found, and counts money only.',
]

export interface NextInput extends Omit<CandidateInput, 'heaps' | 'currency'> { readonly basis: PayBasis }

/** The blocks of ground on which the options rest, their logs outcome by outcome, and what each option makes of them. */
function choiceOf({ options, shared }: PayBasis, grade: Grade) {
  const panels = [...new Set(options.flatMap(o => o.panels))]
  const heaps = [...new Map(options.flatMap(o => o.heap ? [[o.name, o.heap] as const] : [])).entries()]
  const values = [...panels.map(i => grade.outcomes.panels[i]!.ounces), ...heaps.map(([, h]) => h.ounces)]
  const logs = [...panels.map(i => logOf(grade.outcomes.panels[i]!.ounces)), ...heaps.map(([, h]) => centred(h.logGrade))]
  const { recovery, price, payable } = shared.middle
  const each = recovery * price * payable * (1 - shared.terms.royalty) - recovery * shared.terms.treatment / shared.terms.fineness
  const expected = Float64Array.from(values, mean)
  const choice: GroundChoice = {
    expected,
    options: [
      ...options.map((o) => {
        const weights = Float64Array.from([...panels.map(i => o.panels.includes(i) ? each : 0), ...heaps.map(([name]) => name === o.name ? each : 0)])
        return { weights, fixed: o.surplus - weights.reduce((sum, w, p) => sum + w * expected[p]!, 0) }
      }),
      { fixed: 0, weights: new Float64Array(values.length) }, // walking away
    ],
  }
  return { choice, logs, values, panels, heaps }
}

function centred(logs: Float64Array): Float64Array { const m = mean(logs); return logs.map(x => x - m) }
function logOf(values: Float64Array): Float64Array { return centred(values.map(v => Math.log(Math.max(v, Number.MIN_VALUE)))) }

/** Covariance of two centred rows. */
function together(a: Float64Array, b: Float64Array): number {
  let sum = 0
  for (let k = 0; k < a.length; k++) sum += a[k]! * b[k]!
  return sum / a.length
}

/** Where the next hour, or the next assay fee, does most good to the choice between the crew's options. */
export function nextOf(input: NextInput): Next | NotEnough {
  const { basis, grade, assume, units } = input
  const { wage, currency } = basis
  const { choice, logs, values, heaps } = choiceOf(basis, grade)
  const { candidates, within } = candidatesOf({ ...input, currency, heaps: heaps.map(([, h]) => ({ sort: h.sort, variance: h.sampleVariance })) })
  const hour = wage.value / assume('hours in a day').value
  const hosts = new Map<number, Float64Array>()
  const rowOf = (c: Candidate): Float64Array => {
    if (c.host === undefined) return centred(heaps.find(([, h]) => h.sort === c.heap)![1].logGrade)
    const known = hosts.get(c.host) ?? logOf(grade.outcomes.panels[c.host]!.ounces)
    hosts.set(c.host, known)
    return known
  }
  const byHost = new Map<Float64Array, { covariance: Float64Array, variance: number }>()
  const moves = (row: Float64Array) => {
    const known = byHost.get(row) ?? { covariance: Float64Array.from(logs, l => together(row, l)), variance: together(row, row) }
    byHost.set(row, known)
    return known
  }
  const weighedAll = candidates.map((c) => {
    const { covariance, variance } = moves(rowOf(c))
    const look = { covariance: covariance.map(x => x * c.follows), variance: variance * c.follows + c.noise }
    const cost = c.fee + c.hours * hour
    return { c, look, cost, worth: lookWorth(choice, look) }
  })
  // What tells nothing is not listed only because it costs little.
  const telling = weighedAll.filter(w => w.worth > leastShare * Math.max(...weighedAll.map(v => v.worth)))
  const weighed = telling.sort((a, b) => (b.worth - b.cost) - (a.worth - a.cost)).slice(0, looksKept)
  const ceiling = certaintyWorth(choice, Array.from({ length: values[0]?.length ?? 0 }, (_, k) => Float64Array.from(values, row => row[k]!)))
  const names = [...basis.options.map(o => o.name), 'walk away']
  const ranked = basis.options[0]!.surplus > 0 ? names : ['walk away', ...names.slice(0, -1)]
  const looks = weighed.map(({ c, cost, worth, look }, i): NextLook => ({
    rank: i + 1, does: c.does, where: c.where, at: c.at, hours: c.hours, cost, fee: c.fee,
    net: worth - cost, perHour: worth / c.hours, perMoney: cost > 0 ? worth / cost : Infinity,
    worth: buildAnswer({
      id: `next.look.${i + 1}`, value: worth, unit: currency,
      sentence: `${upper(inWords(c))}: about ${plain(c.hours, 2)} h${c.fee > 0 ? ` and ${dayMoney(c.fee, currency)}` : ''}, ${dayMoney(cost, currency)} in all; worth ${dayMoney(worth, currency)} to the choice.`,
      method: {
        name: 'expected worth of the best option after the look, less before', page: 'next',
        working: [
          `its reading (log) varies by ${figure(Math.sqrt(look.variance), 2)}: ${figure(Math.sqrt(Math.max(0, look.variance - c.noise)), 2)} of the ground's mean that it would tell, ${figure(Math.sqrt(c.noise), 2)} of place and error`,
          `an hour is taken at ${dayMoney(hour, currency)}, as a day at ${dayMoney(wage.value, currency)}`, `${choice.options.length} options, ${plural(logs.length, 'block')} of ground, 121 readings`,
        ],
      },
      sources: ['Preposterior analysis: Raiffa and Schlaifer, Applied Statistical Decision Theory, 1961 (from memory)'], parts: [grade.ounces, basis.options[0]!.costAnswer], assumed: [wage],
    }),
  }))
  const tried = weighed.slice(0, batchFrom)
  const shared = (a: Candidate, b: Candidate) => together(rowOf(a), rowOf(b)) * Math.min(a.follows, b.follows) + (a.where === b.where ? within : 0)
  const readings = tried.map(({ c, look, cost }): CandidateLook => ({
    ...look, cost, withOthers: Float64Array.from(tried, other => other.c === c ? look.variance : shared(c, other.c)),
  }))
  const batch = lookBatch(choice, readings, { most: batchMost, worthIt: true }).map(({ look, adds }) => ({ look: looks[look]!, adds }))
  const [best] = looks
  const stop = !best || best.net <= 0
  const certainty = buildAnswer({
    id: 'next.certainty', value: ceiling, unit: currency, sentence: `Knowing for certain what the ground holds would be worth ${dayMoney(ceiling, currency)}: no look at it is worth more.`,
    method: { name: 'the best option outcome by outcome, less the best on average', page: 'next', working: [`${values[0]?.length ?? 0} outcomes of ${plural(logs.length, 'block')} of ground; price and rates are left as they are`] },
    parts: [grade.ounces], assumed: [wage], sources: ['H. Raiffa, Decision Analysis, 1968 (from memory)'],
  })
  return {
    sentence: stop
      ? `Stop sampling: no look is worth what it costs${best ? ` (the best, ${inWords(weighed[0]!.c)}, is worth ${dayMoney(best.worth.value, currency)} and costs ${dayMoney(best.cost, currency)})` : ''}. ${ceiling < 1 ? `Nothing in the ground would change the choice: ${ranked[0]}.` : certainty.sentence}`
      : `Next: ${inWords(weighed[0]!.c)}. About ${plain(best.hours, 2)} h${best.fee > 0 ? ` and ${dayMoney(best.fee, currency)}` : ''}, ${dayMoney(best.cost, currency)} in all, worth ${dayMoney(best.worth.value, currency)} to the choice between ${ranked[0]} and ${ranked[1]}. ${certainty.sentence}`,
    currency, stop, choice: ranked, certainty, looks, batch, blind: blindSpots(basis, grade, units), cautions,
  }
}

const upper = (text: string) => text.replace(/^./, c => c.toUpperCase())

const inWords = ({ does, where }: Candidate): string => does === 'assay' ? `have ${where} assayed` : does === 'sweep' ? `sweep the walls at ${where} with the detector`
  : does === 'heap sample, panned' ? `sample ${where} and pan it` : does === 'channel, assayed' ? `cut a channel at ${where} and have it assayed` : `cut a channel at ${where} and pan it`

/** The panels of the options that are least known, by how far the nearest sample is and how wide their own range is. */
function blindSpots({ options }: PayBasis, grade: Grade, units: CrewUnits): readonly BlindSpot[] {
  const panels = [...new Set(options.flatMap(o => o.panels))].map(i => grade.panels[i]!)
  return panels.sort((a, b) => b.nearest * b.doubt - a.nearest * a.doubt).slice(0, 5).map(p => ({
    panel: p.name, at: p.centre,
    sentence: `${p.name}: the nearest sample is ${length(p.nearest, units, 2)} away; ${figure(p.low, 2)} to ${figure(p.high, 2)} oz.`,
  }))
}
