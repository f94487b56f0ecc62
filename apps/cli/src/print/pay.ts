import type { Driver, Pay, PayOption } from '@lodebook/answers'
import { figure, plain } from '@lodebook/answers'
import { cautionsPart, figuresPart, page, under } from './page-parts.ts'
import { sentences } from './problems.ts'
import { table } from './table.ts'

/** Pay: the sentence, the options beside each other, then the first of them in full. */
export function payPage(pay: Pay, _: unknown, width: number): string {
  const { sentence, currency, perDay, personDays, ouncesWon, breakEven, breakEvenWidth, chance, weeks, surplus, twenty, drivers, mustBeTrue } = pay
  const tens = [twenty.slice(0, 10), twenty.slice(10)].map(row => row.map(whole))
  const { deepest, presentValue } = pay.cash
  const figures = [perDay, chance, breakEven, ...breakEvenWidth ? [breakEvenWidth] : [], ouncesWon, personDays, weeks, surplus, deepest, presentValue]
  return page(sentences([sentence], width), under('The options beside each other', besideTable(pay, width)), figuresPart(figures, width),
    under(`Twenty outcomes of ${pay.name}, each as likely as the others, ${currency} a day`, table(tens, { width, indent: 2, sides: tens[0]!.map(() => 'right' as const) })),
    under(`What must be true to leave ${whole(pay.wage)} ${currency} a day, one thing at a time`, sentences(mustBeTrue, width)),
    under('What matters, most first', driversTable(drivers, currency, width)),
    under(`Money in hand, ${currency}, wages not counted`, cashTable(pay, width)), cautionsPart(pay.cautions, width))
}

/** Each option with its days, ounces, pay, and how often it leaves more than walking away and than the one above it. */
function besideTable({ options, odds, wage, currency }: Pay, width: number): string {
  const range = ({ range }: PayOption['perDay']) => range ? `${whole(range.low)} to ${whole(range.high)}` : ''
  const share = (p: number | undefined) => p === undefined ? '' : whole(100 * p)
  const rows = options.map((o, i) => [
    figure(o.personDays.value, 2), figure(o.ouncesWon.value, 2), whole(o.perDay.value), range(o.perDay), share(o.chance.value),
    share(i === 0 ? undefined : odds[i]?.[0]), whole(o.surplus.value), o.name,
  ])
  return table([...rows, ['', '', whole(wage), '', '', share(odds.at(-1)?.[0]), '0', 'walk away']], {
    width, indent: 2, head: ['days', 'oz', `${currency}/day`, '80 %', '>wage', '>first', 'over wage', 'option'],
    sides: ['right', 'right', 'right', 'right', 'right', 'right', 'right', 'left'],
  }) + sentences(['>wage and >first: in how many of 100 cases it leaves more than the wage, and than the first option. Over wage: what it leaves in all above the same days elsewhere, on average.'], width)
}

/** To the whole unit, three figures from a thousand on. */
const whole = (value: number): string => plain(Math.round(value))

const driversTable = (drivers: readonly Driver[], currency: string, width: number): string => table(
  drivers.map(({ name, said, payAtLow, payAtHigh }) => [whole(payAtLow), whole(payAtHigh), `${name}: ${said.low} to ${said.high}`]),
  { width, indent: 2, head: ['from', 'to', `${currency} a day as one thing moves, the rest in the middle`], sides: ['right', 'right', 'left'] })

/** At most seven weeks of the line, evenly spread, the last among them. */
function cashTable({ cash: { weeks, low, middle, high } }: Pay, width: number): string {
  const step = Math.max(1, Math.ceil((weeks.length - 1) / 6))
  const shown = weeks.filter(week => week % step === 0 || week === weeks.at(-1))
  const row = (values: readonly number[]) => shown.map(week => figure(Math.round(values[week]!), 2).replace(/\.0$/, ''))
  return table([['high', ...row(high)], ['middle', ...row(middle)], ['low', ...row(low)]],
    { width, indent: 2, head: ['week', ...shown.map(String)], sides: ['left', ...shown.map(() => 'right' as const)] })
}
