import { baseUnit, type Dimension } from './dimension.ts'
import { divide, multiply, add, rational, type Rational } from './rational.ts'
import { tonnageFactors, unclear, unitRows, unitZeros, type Unclear, type UnitRow } from './unit-table.ts'

/** A unit ready for use: how a number of it becomes a base value, exactly. */
export interface Unit {
  readonly symbol: string
  readonly dimension: Dimension
  readonly factor: Rational
  readonly zero: Rational
  /** Upside down, as cubic feet to the ton for density: the base value is factor / number. */
  readonly inverse: boolean
}

const key = (spelling: string): string => spelling.toLowerCase().replace(/\bper\b/g, '/').replace(/[\s.]/g, '')

const table = new Map<string, Unit>()
const enter = (dimension: Dimension, rows: readonly UnitRow[], inverse: boolean): void => {
  for (const [symbol, factor, ...spellings] of rows) {
    const unit = { symbol, dimension, factor: rational(factor), zero: rational(unitZeros[symbol] ?? '0'), inverse }
    for (const spelling of [symbol, ...spellings]) table.set(`${dimension} ${key(spelling)}`, unit)
  }
}
for (const dimension of Object.keys(baseUnit) as Dimension[]) enter(dimension, unitRows[dimension], false)
enter('density', tonnageFactors, true)

/** The unit a spelling stands for in a dimension; letters' case, spaces and full stops do not matter. Undefined when there is none. */
export const findUnit = (spelling: string, dimension: Dimension): Unit | undefined => table.get(`${dimension} ${key(spelling)}`)

/** A spelling that people read in two ways, with the question to ask about it; undefined when it is clear. */
export function unclearUnit(spelling: string, dimension: Dimension): Unclear | undefined {
  const questions = unclear[dimension] ?? {}
  const written = spelling.replace(/[\s.]/g, '')
  return Object.hasOwn(questions, written) ? questions[written] : Object.hasOwn(questions, key(spelling)) ? questions[key(spelling)] : undefined
}

/** The symbols of a dimension's units, the base unit first: what a form can offer. */
export const unitSymbols = (dimension: Dimension): readonly string[] =>
  [...unitRows[dimension], ...dimension === 'density' ? tonnageFactors : []].map(([symbol]) => symbol)

/**
 * The base value of a number of a unit, exactly.
 * @throws RangeError for zero of a unit that is upside down
 */
export const toBase = (number: Rational, unit: Unit): Rational =>
  unit.inverse ? divide(unit.factor, number) : add(multiply(number, unit.factor), unit.zero)

/**
 * How many of a unit a base value is, exactly.
 * @throws RangeError for zero of a unit that is upside down
 */
export const fromBase = (value: Rational, unit: Unit): Rational =>
  unit.inverse ? divide(unit.factor, value) : divide(add(value, { over: -unit.zero.over, under: unit.zero.under }), unit.factor)
