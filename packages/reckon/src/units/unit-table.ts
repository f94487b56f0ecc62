import type { Dimension } from './dimension.ts'

/**
 * Every unit that can be written: its symbol, how many base units one of it is (exact decimal or fraction), other spellings.
 * Spellings are compared without case, spaces and full stops.
 *
 * Exact by definition: foot 0.3048 m and pound 453.59237 g (international yard and pound, 1959); grain 1/7000 lb, pennyweight 24 and
 * troy ounce 480 grains, short ton 2000 lb, long ton 2240 lb, gallon 231 cubic inches (NIST Handbook 44, appendix C; value from memory);
 * conventional millimetre of mercury 13.5951 x 9.80665 Pa, inch of water 25.4 x 9.80665 Pa (NIST SP 811, appendix B; value from memory).
 * Radian: 180/pi to 50 places.
 */
export type UnitRow = readonly [symbol: string, factor: string, ...spellings: string[]]

const length: readonly UnitRow[] = [
  ['m', '1', 'metre', 'metres', 'meter', 'meters', 'mtr', 'mtrs'],
  ['cm', '0.01', 'centimetre', 'centimetres', 'centimeter', 'centimeters', 'cms'],
  ['mm', '0.001', 'millimetre', 'millimetres', 'millimeter', 'millimeters', 'mms'],
  ['um', '0.000001', 'micron', 'microns', 'micrometre', 'micrometer'],
  ['km', '1000', 'kilometre', 'kilometres', 'kilometer', 'kilometers'],
  ['ft', '0.3048', 'foot', 'feet', '\''],
  ['in', '0.0254', 'inch', 'inches', 'ins', '"'],
  ['yd', '0.9144', 'yard', 'yards', 'yds'],
  ['mi', '1609.344', 'mile', 'miles'],
  ['fathom', '1.8288', 'fathoms', 'fm', 'fms'],
  ['rod', '5.0292', 'rods'],
  ['chain', '20.1168', 'chains'],
  ['link', '0.201168', 'links'],
  ['US survey ft', '1200/3937', 'ftUS', 'surveyfoot', 'surveyfeet', 'ussurveyfoot', 'ussurveyfeet'],
]

const area: readonly UnitRow[] = [
  ['m2', '1', 'm^2', 'sqm', 'squaremetre', 'squaremetres', 'squaremeter', 'squaremeters'],
  ['cm2', '0.0001', 'cm^2', 'sqcm'],
  ['ft2', '0.09290304', 'ft^2', 'sqft', 'squarefoot', 'squarefeet'],
  ['in2', '0.00064516', 'in^2', 'sqin', 'squareinch', 'squareinches'],
  ['yd2', '0.83612736', 'yd^2', 'sqyd', 'squareyard', 'squareyards'],
  ['ha', '10000', 'hectare', 'hectares'],
  ['acre', '4046.8564224', 'acres', 'ac'],
]

const volume: readonly UnitRow[] = [
  ['m3', '1', 'm^3', 'cum', 'cubicmetre', 'cubicmetres', 'cubicmeter', 'cubicmeters'],
  ['L', '0.001', 'litre', 'litres', 'liter', 'liters', 'ltr', 'ltrs'],
  ['mL', '0.000001', 'cm3', 'cm^3', 'cc', 'millilitre', 'millilitres', 'milliliter', 'milliliters'],
  ['ft3', '0.028316846592', 'ft^3', 'cuft', 'cubicfoot', 'cubicfeet'],
  ['in3', '0.000016387064', 'in^3', 'cuin', 'cubicinch', 'cubicinches'],
  ['yd3', '0.764554857984', 'yd^3', 'cuyd', 'cuyds', 'cubicyard', 'cubicyards'],
  ['US gal', '0.003785411784', 'gal', 'gallon', 'gallons', 'usgallon', 'usgallons'],
]

const mass: readonly UnitRow[] = [
  ['g', '1', 'gram', 'grams', 'gramme', 'grammes', 'gm', 'gms'],
  ['mg', '0.001', 'milligram', 'milligrams'],
  ['kg', '1000', 'kilogram', 'kilograms', 'kilo', 'kilos', 'kgs'],
  ['t', '1000000', 'tonne', 'tonnes', 'metricton', 'metrictons', 'mt'],
  ['lb', '453.59237', 'lbs', 'pound', 'pounds', 'lbav'],
  ['oz av', '28.349523125', 'avoirdupoisounce', 'avoirdupoisounces', 'ozavdp', 'ounceav', 'ouncesav'],
  ['ozt', '31.1034768', 'oztroy', 'troyoz', 'troyounce', 'troyounces', 'ouncetroy', 'ouncestroy', 'oztr', 'toz'],
  ['dwt', '1.55517384', 'dwts', 'pennyweight', 'pennyweights'],
  ['grain', '0.06479891', 'grains', 'gr', 'grs'],
  ['short ton', '907184.74', 'shorttons', 'ton', 'tons', 'uston', 'ustons', 'tonus', 'tn'],
  ['long ton', '1016046.9088', 'longtons', 'lt', 'imperialton', 'imperialtons', 'tonuk'],
]

const density: readonly UnitRow[] = [
  ['t/m3', '1', 't/m^3', 'g/cm3', 'g/cm^3', 'g/cc', 'g/ml', 'kg/l', 'tonne/m3', 'sg'],
  ['kg/m3', '0.001', 'kg/m^3'],
  ['lb/ft3', '0.45359237/28.316846592', 'lb/ft^3', 'lb/cuft', 'lbs/cuft', 'pcf'],
  ['short ton/yd3', '0.90718474/0.764554857984', 'ton/yd3', 'tons/yd3', 'ton/cuyd', 'tons/cuyd'],
]

const pressure: readonly UnitRow[] = [
  ['Pa', '1', 'pascal', 'pascals'],
  ['hPa', '100', 'mbar', 'mb', 'millibar', 'millibars'],
  ['kPa', '1000', 'kilopascal', 'kilopascals'],
  ['bar', '100000', 'bars'],
  ['mmHg', '133.322387415', 'torr'],
  ['inHg', '3386.388640341', '"hg', 'inchesofmercury'],
  ['mm w.g.', '9.80665', 'mmh2o', 'mmwater', 'mmwc'],
  ['in w.g.', '249.08891', 'inh2o', 'inwater', 'inwc', '"wg', '"h2o', 'iwg'],
  ['psi', '4448.2216152605/0.64516', 'lb/in2', 'lbf/in2'],
]

const angle: readonly UnitRow[] = [
  ['deg', '1', '°', 'degree', 'degrees', 'degs'],
  ['arcmin', '1/60', '\'', 'arcminute', 'arcminutes', 'minuteofarc', 'minutesofarc'],
  ['arcsec', '1/3600', '"', 'arcsecond', 'arcseconds', 'secondofarc', 'secondsofarc'],
  ['gon', '0.9', 'grad', 'grads', 'gradian', 'gradians', 'gons'],
  ['rad', '57.29577951308232087679815481410517033240547246656432', 'radian', 'radians'],
]

const parts = (percent: string, ppm: string, ppb: string): readonly UnitRow[] => [
  ['%', percent, 'percent', 'pct', 'percentage', '%vol', '%v/v', 'vol%'],
  ['ppm', ppm, 'ppmv'],
  ['ppb', ppb, 'ppbv'],
]

/** Gold in rock: numerator and denominator written out, so that each spelling of either works. */
const grade: readonly UnitRow[] = [
  ['g/t', '1', 'g/tonne', 'g/tonnes', 'g/metricton', 'gpt', 'g/mt', 'mg/kg', 'ug/g', 'gram/tonne', 'grams/tonne', 'gm/t', 'gms/t'],
  ...parts('10000', '1', '0.001'),
  ['mg/t', '0.001', 'mg/tonne', 'ug/kg'],
  ['kg/t', '1000', 'kg/tonne', 'g/kg'],
  ...([['ozt', '31.1034768', ['oz', 'ounce', 'ounces', 'oztroy', 'troyoz', 'troyounce', 'troyounces', 'ozs']],
    ['dwt', '1.55517384', ['dwts', 'pennyweight', 'pennyweights']],
    ['grain', '0.06479891', ['gr', 'grains', 'grs']],
    ['lb', '453.59237', ['lbs', 'pound', 'pounds']]] as const)
    .flatMap(([top, grams, tops]) => ([['short ton', '0.90718474', ['shorttons', 'st', 'uston', 'tonus', 'ton', 'tons', 't', 'tn']],
      ['long ton', '1.0160469088', ['longtons', 'lt', 'imperialton', 'tonuk']],
      ['tonne', '1', ['tonnes', 'metricton', 'mt']]] as const)
      .map(([bottom, tonnes, bottoms]): UnitRow => [`${top}/${bottom}`, `${grams}/${tonnes}`,
        ...[top, ...tops].flatMap(a => [bottom, ...bottoms].map(b => `${a}/${b}`)),
        ...(top === 'ozt' && bottom === 'short ton' ? ['opt'] : [])])),
  ['g/short ton', '1/0.90718474', 'g/st', 'g/uston'],
  ['g/long ton', '1/1.0160469088', 'g/lt'],
]

const temperature: readonly UnitRow[] = [['C', '1', '°c', 'degc', 'celsius', 'degreesc', 'centigrade'], ['F', '5/9', '°f', 'degf', 'fahrenheit', 'degreesf'], ['K', '1', 'kelvin']]

const speed: readonly UnitRow[] = [
  ['m/s', '1', 'm/sec', 'mps'],
  ['m/min', '1/60'],
  ['ft/min', '0.00508', 'fpm', 'feet/min', 'ft/minute'],
  ['ft/s', '0.3048', 'fps', 'ft/sec'],
  ['km/h', '1/3.6', 'kph', 'kmh'],
  ['mph', '0.44704', 'mi/h'],
]

const flow: readonly UnitRow[] = [
  ['m3/s', '1', 'm^3/s', 'cumecs'],
  ['m3/min', '1/60', 'm^3/min'],
  ['m3/h', '1/3600', 'm^3/h', 'm3/hr', 'cmh'],
  ['L/s', '0.001', 'l/sec', 'lps'],
  ['cfm', '0.028316846592/60', 'ft3/min', 'cuft/min', 'cu ft/min'],
]

const duration: readonly UnitRow[] = [
  ['h', '1', 'hr', 'hrs', 'hour', 'hours'],
  ['min', '1/60', 'mins', 'minute', 'minutes'],
  ['s', '1/3600', 'sec', 'secs', 'second', 'seconds'],
]

const radon: readonly UnitRow[] = [['Bq/m3', '1', 'bq/m^3', 'bqm3'], ['kBq/m3', '1000', 'kbq/m^3'], ['pCi/L', '37', 'pci/litre', 'pci/liter']]

export const unitRows: Readonly<Record<Dimension, readonly UnitRow[]>> = {
  length, area, volume, mass, grade, density, pressure, temperature, speed, flow, duration, radon,
  azimuth: angle,
  inclination: angle,
  angle,
  percent: parts('1', '0.0001', '0.0000001'),
  concentration: parts('10000', '1', '0.001'),
}

/** What a unit's zero is in the base unit, where it is not the base unit's zero. */
export const unitZeros: Readonly<Record<string, string>> = { F: '-160/9', K: '-273.15' }

/** Units written upside down: cubic feet to the ton. The factor is the base value of one of them. */
export const tonnageFactors: readonly UnitRow[] = [
  ['ft3/short ton', '0.90718474/0.028316846592', 'ft3/ton', 'cuft/ton', 'cuft/shortton', 'cubicfeet/ton', 'ft3/st'],
  ['ft3/long ton', '1.0160469088/0.028316846592', 'cuft/longton', 'ft3/lt'],
  ['m3/t', '1', 'm3/tonne'],
]

/** A spelling that people read in two ways: the question, and the units it may stand for (a column of one of those settles it). */
export interface Unclear { readonly ask: string, readonly readings: readonly string[] }

export const unclear: Readonly<Partial<Record<Dimension, Readonly<Record<string, Unclear>>>>> = {
  mass: {
    oz: { ask: 'did you mean ozt (troy, 31.1 g, for gold) or oz av (28.35 g, a kitchen scale)?', readings: ['ozt', 'oz av'] },
    gr: { ask: 'did you mean grain (64.8 mg) or g (grams)?', readings: ['grain', 'g'] },
    T: { ask: 'did you mean t (1000 kg) or short ton (2000 lb)?', readings: ['t', 'short ton'] },
    Mg: { ask: 'did you mean mg (a thousandth of a gram) or t (a million grams)?', readings: ['mg', 't'] },
  },
  grade: {
    'g/ton': { ask: 'did you mean g/t (per 1000 kg) or g/short ton (per 2000 lb)?', readings: ['g/t', 'g/short ton'] },
    oz: { ask: 'ounces of gold in what? write oz/ton, oz/long ton or oz/tonne', readings: ['ozt/short ton', 'ozt/long ton', 'ozt/tonne'] },
    dwt: { ask: 'pennyweights of gold in what? write dwt/ton, dwt/long ton or dwt/tonne', readings: ['dwt/short ton', 'dwt/long ton', 'dwt/tonne'] },
  },
  length: { M: { ask: 'did you mean m (metres) or mi (miles)?', readings: ['m', 'mi'] } },
  radon: { wl: { ask: 'working levels depend on the age of the air; write what the meter gives in Bq/m3 or pCi/L', readings: [] } },
  duration: {
    day: { ask: 'how many hours is a day? write hours', readings: [] },
    days: { ask: 'how many hours is a day? write hours', readings: [] },
    shift: { ask: 'how many hours is a shift? write hours', readings: [] },
    shifts: { ask: 'how many hours is a shift? write hours', readings: [] },
  },
}
