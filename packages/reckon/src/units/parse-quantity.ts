import { baseUnit, type Dimension, type Quantity } from './dimension.ts'
import { findUnit, toBase, unclearUnit, unitSymbols } from './find-unit.ts'
import { plainText } from './plain-text.ts'
import { divide, negate, toNumber, type Rational } from './rational.ts'
import { read, refuse, type Problem, type Reading } from './reading.ts'
import { readAzimuthText } from './read-azimuth-text.ts'
import { readCompound } from './read-compound.ts'
import { readAngle, readInclination } from './read-inclination.ts'
import { numberPattern, readNumber, type DecimalMark } from './read-number.ts'
import { takeMark } from './take-mark.ts'

export interface ParseOptions {
  /** Taken when the text carries no unit, such as a column heading's; any spelling. */
  readonly defaultUnit?: string
  /** How the crew or the file writes tenths; `.` unless said. */
  readonly decimal?: DecimalMark
}
export type Parsed = { readonly ok: true, readonly quantity: Quantity } | { readonly ok: false, readonly problem: Problem }

/** Longest text that can be one value. */
const longest = 100

const examples: Readonly<Record<Dimension, string>> = {
  length: 'a length such as 4 ft 7 1/2 in, 4.63 ft or 1.41 m',
  area: 'an area such as 2.5 m2 or 27 sq ft',
  volume: 'a volume such as 0.05 m3, 2 ft3 or 40 L',
  mass: 'a mass such as 2.4 kg, 12 lb or 3 dwt',
  grade: 'a grade such as 12 g/t, 0.35 oz/ton, <0.005 g/t, trace or nil',
  density: 'a density such as 2.65 t/m3 or 165 lb/ft3',
  azimuth: 'a direction such as 203, N 23 E or 126-55-17, 0 to 360 from north',
  inclination: 'an angle such as -12, 12 down or 5-30, -90 to 90 from level',
  angle: 'an angle such as 62, -3.5 or 12-30',
  pressure: 'a pressure such as 870 hPa or 25.7 inHg',
  temperature: 'a temperature such as 12 C or 54 F',
  speed: 'a speed such as 0.3 m/s or 60 ft/min',
  flow: 'an air flow such as 0.4 m3/s or 850 cfm',
  duration: 'a time such as 6.5 h or 45 min',
  percent: 'a share such as 20.9 %',
  concentration: 'a share such as 25 ppm or 0.5 %',
  radon: 'a reading such as 150 Bq/m3 or 4 pCi/L',
}

const signed: readonly Dimension[] = ['length', 'temperature', 'azimuth', 'inclination', 'angle']
/** The most there can be: all of it. */
const whole: Partial<Record<Dimension, number>> = { grade: 1_000_000, concentration: 1_000_000 }
const numberFirst = new RegExp(`^(${numberPattern}) ?(.*)$`, 'i')

/**
 * Reads one value as people write it in a field book, and converts it to the dimension's base unit with one rounding.
 *
 * Ounces, pennyweights and grains of gold to the plain ton or to `t` are troy, to the short ton of 2000 lb, as United States assayers
 * write them; `oz/long ton` and `oz/tonne` are written out. What can be read in two ways is not guessed: the problem asks.
 * @param text  anything; never throws, whatever it holds
 * @returns the quantity with the text as written, or the problem: what stood there, what would do, and why
 * @example parseQuantity('4\'7½"', 'length') // { ok: true, quantity: { text: '4\'7½"', value: 1.4097, unit: 'm' } }
 */
export function parseQuantity(text: string, dimension: Dimension, options: ParseOptions = {}): Parsed {
  const written = text.trim()
  const result = parse(written, dimension, options)
  if (result.ok) return { ok: true, quantity: { text: written, unit: baseUnit[dimension], ...result.value } }
  return { ok: false, problem: { value: written.length > longest ? `${written.slice(0, longest - 3)}...` : written, expected: examples[dimension], why: result.why } }
}

type Body = Pick<Quantity, 'value' | 'from' | 'mark'>

function parse(written: string, dimension: Dimension, options: ParseOptions): Reading<Body> {
  if (written.length > longest) return refuse(`it is ${written.length} characters long`)
  const plain = plainText(written)
  if (plain === '') return refuse('nothing is written')
  const marked = takeMark(plain, dimension)
  if (!marked.ok) return marked
  const { mark, rest } = marked.value
  if (mark === 'trace') return read({ value: null, mark })
  if (mark === 'nil') return read({ value: 0, mark })
  const exact = readBody(rest, dimension, options)
  if (!exact.ok) return exact
  const value = toNumber(exact.value.base)
  if (!Number.isFinite(value)) return refuse('it is too large to hold')
  const unfit = limits(value, rest, dimension, mark !== undefined)
  if (unfit !== undefined) return refuse(unfit)
  const { from } = exact.value
  return read({ value, ...from === undefined ? {} : { from }, ...mark === undefined ? {} : { mark } })
}

interface Exact { readonly base: Rational, readonly from?: string }

function readBody(text: string, dimension: Dimension, { defaultUnit, decimal = '.' }: ParseOptions): Reading<Exact> {
  const angle = dimension === 'azimuth' ? readAzimuthText : dimension === 'inclination' ? readInclination : dimension === 'angle' ? readAngle : undefined
  if (angle) {
    // A heading's 'gon' holds for a bare number; everything else that can be written in these columns says what it is.
    const bare = defaultUnit !== undefined && new RegExp(`^${numberPattern}$`, 'i').test(text)
    const value = angle(bare ? `${text} ${defaultUnit}` : text, decimal)
    return value.ok ? read({ base: value.value, ...bare ? { from: defaultUnit } : {} }) : value
  }
  const [, number, unit = ''] = numberFirst.exec(text) ?? []
  if (number === undefined) return refuse(/\d/.test(text) ? 'it should begin with the number' : 'there is no number in it')
  if (unit === '' || findUnit(unit, dimension)) return readSimple(number, unit, dimension, defaultUnit, decimal)
  const twoFaced = unclearUnit(unit, dimension)
  if (twoFaced) return readSimple(number, unit, dimension, defaultUnit, decimal)
  const compound = readSigned(text, size => readCompound(size, dimension, decimal) ?? (dimension === 'grade' ? readGrade(size, decimal) : undefined))
  if (compound) return compound.ok ? read({ base: compound.value }) : compound
  if (/^(?:-|to )\s?\d/.test(unit)) return refuse('it reads as a range; write one value, and the doubt in the note')
  if (/^\s?(?:±|\+\/-)/.test(unit)) return refuse('write the value alone, and the doubt in the note')
  return refuse(`'${unit}' is not a unit of ${dimension}; use one of ${unitSymbols(dimension).slice(0, 10).join(', ')}`)
}

function readSimple(number: string, unit: string, dimension: Dimension, defaultUnit: string | undefined, decimal: DecimalMark): Reading<Exact> {
  const value = readNumber(number.trim(), decimal)
  if (!value.ok) return value
  const assumed = unit === '' ? defaultUnit ?? (dimension === 'percent' ? '%' : undefined) : undefined
  const spelling = assumed ?? unit
  if (spelling === '') return refuse(`in what unit? write it after the number: ${unitSymbols(dimension).slice(0, 6).join(', ')}`)
  const twoFaced = unclearUnit(spelling, dimension)
  const usual = defaultUnit === undefined ? undefined : findUnit(defaultUnit, dimension)
  const settled = usual && twoFaced?.readings.includes(usual.symbol) ? usual : undefined
  if (twoFaced && !settled) return refuse(twoFaced.ask)
  const known = settled ?? findUnit(spelling, dimension)
  if (!known) return refuse(`the unit '${spelling}' that stands for it is not a unit of ${dimension}`)
  if (known.inverse && value.value.over === 0n) return refuse(`zero ${known.symbol} is not a density`)
  return read({ base: toBase(value.value, known), ...assumed === undefined ? {} : { from: assumed }, ...settled ? { from: settled.symbol } : {} })
}

/** `3 oz 5 dwt 10 gr per ton`: a mass of gold to a mass of rock, grams to the tonne. */
function readGrade(text: string, decimal: DecimalMark): Reading<Rational> | undefined {
  const [, top, bottom] = /^(.+?) ?(?:\/|\bper\b|\bto the\b) ?([a-z. ]+)$/i.exec(text) ?? []
  const perGram = bottom === undefined ? undefined : findUnit(`grain/${bottom}`, 'grade')
  const grams = top === undefined ? undefined : readCompound(top, 'mass', decimal)
  const grain = findUnit('grain', 'mass')
  if (!perGram || !grams || !grain) return undefined
  return grams.ok ? read(toBase(divide(grams.value, grain.factor), perGram)) : grams
}

function readSigned(text: string, size: (text: string) => Reading<Rational> | undefined): Reading<Rational> | undefined {
  const minus = /^- ?/.exec(text)
  const value = size(minus ? text.slice(minus[0].length) : text.replace(/^\+ ?/, ''))
  return value?.ok && minus ? read(negate(value.value)) : value
}

function limits(value: number, text: string, dimension: Dimension, marked: boolean): string | undefined {
  if (value < 0 && !signed.includes(dimension)) {
    return dimension === 'grade' && !marked
      ? `a grade is not below zero; did you mean <${text.replace(/^- ?/, '')}?`
      : `a ${dimension} is not below zero`
  }
  if (dimension === 'temperature' && value < -273.15) return 'nothing is colder than -273.15 C'
  const most = whole[dimension]
  return most !== undefined && value > most ? 'that is more than the whole of it' : undefined
}
