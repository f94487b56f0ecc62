import { convert } from '@lodebook/reckon/units'
import { figure, money as moneyWords, unitWords } from './words.ts'

/**
 * The last step worth saying of a figure with this range: a tenth of the range, down to a power of ten; for money a fortieth, since people
 * think in whole units of it. One rule for the sentence and for the label beside it. Undefined when the range has no width.
 */
export function stepFor(low: number, high: number, isMoney = false): number | undefined {
  const span = high - low
  return span > 0 && Number.isFinite(span) ? 10 ** Math.floor(Math.log10(span / (isMoney ? 40 : 10)) + 1e-9) : undefined
}

/** A number to a step such as 10, 1 or 0.1, and no finer; thousands parted. */
export function toStep(value: number, step: number): string {
  if (!Number.isFinite(value)) return 'not known'
  const places = Math.min(8, Math.max(0, -Math.floor(Math.log10(step) + 1e-9)))
  const rounded = Math.round(value / step) * step
  const [whole = '', rest] = Math.abs(rounded).toFixed(places).split('.')
  const parted = whole.replace(/\B(?=(\d{3})+$)/g, ',')
  return `${rounded < 0 && /[1-9]/.test(`${whole}${rest ?? ''}`) ? '−' : ''}${parted}${rest === undefined ? '' : `.${rest}`}`
}

interface Ranged { readonly value: number, readonly range?: { readonly low: number, readonly high: number } }

/** A figure and its range in a unit of the crew's, each rounded as the label beside it is: `value`, `low`, `high` without unit, `unit` as said. */
export function said({ value, range }: Ranged, from: string, to = from) {
  const put = (v: number) => from === to ? v : convert(v, from, to)
  const step = range && stepFor(put(range.low), put(range.high))
  const text = (v: number) => step === undefined ? figure(put(v)) : toStep(put(v), step)
  return { value: text(value), low: text(range?.low ?? value), high: text(range?.high ?? value), unit: to === 'ozt' ? 'oz' : unitWords[to] ?? to }
}

/** Money and its range by the same rule: `value`, `low`, `high` with their sign. */
export function saidMoney({ value, range }: Ranged, currency: string) {
  const step = range && Math.max(0.01, stepFor(range.low, range.high, true) ?? 0.01)
  const sign = currency === 'USD' ? '$' : `${currency} `
  const text = (v: number) => {
    if (step === undefined) return moneyWords(v, currency)
    const bare = toStep(Math.abs(v), step)
    return `${v < 0 && /[1-9]/.test(bare) ? '−' : ''}${sign}${bare}`
  }
  return { value: text(value), low: text(range?.low ?? value), high: text(range?.high ?? value) }
}
