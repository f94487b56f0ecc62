import { beatOdds, workSteps } from '@lodebook/reckon/pay'
import type { NotEnough } from '../answer.ts'
import type { PayBasis } from './basis.ts'
import { cautions, slugOf } from './basis.ts'
import { dayMoney, judgedOption } from './judged-option.ts'
import type { PayInput } from './input.ts'
import type { Pay } from './shapes.ts'
import { standingSpread } from './rates.ts'
import { length, plural } from '../words.ts'

/** What each of the crew would earn for a day's work at each of their options, with the odds, and how the options stand beside each other. */
export function payOf({ grade, assume, units }: Pick<PayInput, 'grade' | 'assume' | 'units'>, basis: PayBasis | NotEnough): Pay | NotEnough {
  if ('notEnough' in basis) return basis
  const { options, shared, wage, currency } = basis
  const steps = new Set(options.flatMap(o => o.plan.steps))
  const inputs = [
    grade.ounces, shared.price.answer, shared.payable.answer, shared.termsAnswer, shared.recovery.answer,
    ...workSteps.filter(step => steps.has(step)).map(step => shared.rates[step].answer),
    shared.otherShare.answer, standingSpread('pay.slot', assume('minimum width'), value => length(value, units)).answer,
  ]
  const judged = options.map((option, i) => judgedOption(option, basis, { grade, assume, units, inputs: inputs.slice(1), id: i === 0 ? 'pay' : `pay.${slugOf(option.name)}` }))
  const [best, second] = judged
  const odds = beatOdds([...options.map(o => o.outcomes), undefined], wage.value)
  const walkAway = options[0]!.surplus <= 0
  const beside = second ? ` It leaves more than ${second.name} in ${Math.round(100 * odds[0]![1]!)} of 100 cases.` : ''
  const sentence = walkAway ? `Nothing here is expected to beat ${dayMoney(wage.value, currency)} a day elsewhere. The nearest to it is ${best!.sentence.replace(/^./, c => c.toLowerCase())}` : `${best!.sentence}${beside}`
  return {
    ...best!, sentence, currency, wage: wage.value, options: judged, odds, walkAway, notJudged: basis.notJudged, draws: basis.draws,
    inputs: [...inputs, options[0]!.costAnswer],
    cautions: [
      ...(basis.notJudged.length > 0 ? basis.notJudged.map(o => `“${o.name}” can't be judged: ${o.why}.`) : []),
      ...(options.length > 0 && options[0]!.entry === undefined ? [`No option of work is written down, so ${plural(options[0]!.panels.length, 'panel')} were picked by their average.`] : []),
      ...[...new Set([...options.flatMap(o => o.cautions), ...options.flatMap(o => o.costAnswer.cautions)])], ...cautions,
    ],
  }
}
