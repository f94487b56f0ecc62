import { finite, InputError } from '../core/index.ts'
import { baseUnit, type Dimension } from './dimension.ts'
import { findUnit, fromBase, toBase, unclearUnit, unitSymbols } from './find-unit.ts'
import { rational, toNumber } from './rational.ts'

// Azimuths and inclinations are angles as far as units go.
const dimensions = (Object.keys(baseUnit) as Dimension[]).filter(dimension => dimension !== 'azimuth' && dimension !== 'inclination')

/**
 * Converts a number from one unit to another of the same dimension.
 *
 * The number is taken as its shortest decimal text and rounded once at the end, so 141 cm is 1.41 m to the last bit.
 * Ounces, pennyweights and grains to the plain ton or to `t` are per short ton of 2000 lb, as United States assayers write them;
 * write `oz/tonne` or `oz/long ton` for the others. A plain `ton` is a short ton.
 * @param value  finite
 * @param from  the unit it is in, by any spelling of unit-table.ts
 * @param to  the unit wanted
 * @throws InputError for an unknown or two-faced unit, units of different dimensions, or a result too large to hold
 * @example convert(1, 'ozt/short ton', 'g/t') // 34.285714285714285 (240/7)
 */
export function convert(value: number, from: string, to: string): number {
  finite(value, 'value')
  const own = dimensionsOf(from, 'from')
  const wanted = dimensionsOf(to, 'to')
  const shared = own.filter(dimension => wanted.includes(dimension))
  const [first] = own
  if (shared.length === 0) {
    throw new InputError('to', to, first === undefined ? 'a unit' : `a unit of ${first}, as ${from} is: ${unitSymbols(first).join(', ')}`)
  }
  const [result, other] = [...new Set(shared.map(dimension => convertWithin(value, from, to, dimension)))]
  if (result === undefined || other !== undefined) throw new InputError('from', from, `a unit that can be read in one way only, not as ${shared.join(' or ')}`)
  return result
}

/** As {@link convert}, where the dimension is known, so that `'` and `"` are clear. */
export function convertWithin(value: number, from: string, to: string, dimension: Dimension): number {
  const [source, target] = [findUnit(from, dimension), findUnit(to, dimension)]
  if (!source) throw new InputError('from', from, unitsExpected(dimension))
  if (!target) throw new InputError('to', to, unitsExpected(dimension))
  if (source === target) return finite(value, 'value')
  const number = rational(String(finite(value, 'value')))
  if (number.over === 0n && (source.inverse || target.inverse)) throw new InputError('value', value, 'a number other than zero')
  return finite(toNumber(fromBase(toBase(number, source), target)), 'value', 'a number whose conversion is not too large to hold')
}

function dimensionsOf(spelling: string, field: string): readonly Dimension[] {
  const found = dimensions.filter(dimension => findUnit(spelling, dimension))
  if (found.length > 0) return found
  const twoFaced = dimensions.map(dimension => unclearUnit(spelling, dimension)).find(asked => asked !== undefined)
  if (twoFaced) throw new InputError(field, spelling, twoFaced.readings.join(' or ') || 'a unit of one meaning', `${field}: ${spelling} is not clear: ${twoFaced.ask}`)
  throw new InputError(field, spelling, `a unit such as ${suggested.map(dimension => unitSymbols(dimension).slice(0, 4).join(', ')).join(', ')}`)
}

const unitsExpected = (dimension: Dimension): string => `a unit of ${dimension}: ${unitSymbols(dimension).join(', ')}`
const suggested: readonly Dimension[] = ['length', 'mass', 'grade', 'volume', 'pressure']
