import { InputError } from '../core/index.ts'
import { gases, gasNames, type Gas, type GasReadings } from './gas.ts'

/** A value that can stand but looks like a slip of unit, column or meter; a question for whoever read it. */
export interface GasDoubt { readonly gas: Gas, readonly value: number, readonly question: string }

/** Oxygen in open air, per cent by volume; and how far a meter in order may be off. Common practice, no source. */
const openAir = 20.9
const meterError = 0.3
/** Open air holds about 420 ppm of carbon dioxide; a meter that shows much less is in another unit or out of order. Common knowledge, no source. */
const leastCarbonDioxide = 300

/**
 * Refuses readings that can't be, with what was probably meant.
 * @param path  where the readings stand in the input, for the error
 * @throws InputError naming the field
 */
export function refuseImpossible(readings: GasReadings, path = 'readings'): void {
  for (const gas of gasNames) {
    const value = readings[gas]
    if (value === undefined) continue
    const { field, unit, name } = gases[gas]
    const [where, most] = [`${path}.${field}`, unit === '%' ? 100 : 1_000_000]
    const expected = unit === '%' ? `${name} in per cent by volume, 0 to 100` : `${name} in parts per million, 0 to 1,000,000`
    const fail = (why: string) => { throw new InputError(where, value, expected, `${where}: ${value} will not do; expected ${expected}${why}`) }
    if (!Number.isFinite(value)) fail('')
    if (value < 0) fail('; a meter that shows less than nothing needs its zero set in open air')
    if (value > most) fail(meant(gas, value))
  }
  const [all, parts] = [whole(readings), gasNames.filter(gas => readings[gas] !== undefined)]
  if (all > 100 + 1e-9) throw new InputError(path, readings, `gases that make up no more than the whole air; ${parts.join(', ')} come to ${all.toFixed(1)} %`)
}

function meant(gas: Gas, value: number): string {
  if (gases[gas].unit !== '%') return ''
  const likely = gas === 'O2' ? [value / 10, value / 100, value / 10_000].find(guess => guess >= 15 && guess <= 25) : value / 10_000
  return likely === undefined ? '' : `; did you mean ${Number(likely.toPrecision(4))}?`
}

const percentOf = (gas: Gas, readings: GasReadings): number => (readings[gas] ?? 0) / (gases[gas].unit === '%' ? 1 : 10_000)
const whole = (readings: GasReadings): number => gasNames.reduce((sum, gas) => sum + percentOf(gas, readings), 0)

/** What so little oxygen was probably meant as: per cent written as parts per million, or a share of one. */
function slipOfOxygen(percent: number): string {
  const written = Number((percent * 10_000).toPrecision(4))
  return written >= 15 && written <= 25 ? `The meter shows oxygen in per cent: was ${written} % meant, not ${written} ppm?`
    : `If it is a share of one, it is ${Number((percent * 100).toPrecision(4))} %; read again from open air.`
}

/** Readings that can stand and look wrong. */
export function gasDoubts(readings: GasReadings): readonly GasDoubt[] {
  const doubts: GasDoubt[] = []
  const ask = (gas: Gas, value: number, question: string) => doubts.push({ gas, value, question })
  const { O2, CO2, CH4 } = readings
  if (O2 !== undefined && O2 < 1) ask('O2', O2, `As written nobody could live in it. ${slipOfOxygen(O2)}`)
  if (O2 !== undefined && O2 > openAir + meterError) ask('O2', O2, 'More than open air holds (20.9 %). Check the meter in open air and read again.')
  const others = whole(readings) - (O2 ?? 0)
  if (O2 !== undefined && O2 <= openAir + meterError && O2 > openAir * (1 - others / 100) + meterError) {
    ask('O2', O2, `The other gases come to ${others.toFixed(1)} % and would leave at most ${(openAir * (1 - others / 100)).toFixed(1)} %. One of the readings or its unit is wrong.`)
  }
  if (CO2 !== undefined && CO2 < leastCarbonDioxide) {
    ask('CO2', CO2, CO2 > 0 && CO2 <= 10 ? `Open air holds about 420 ppm. If this is per cent, it is ${Number((CO2 * 10_000).toPrecision(6))} ppm.` : 'Less than open air holds (about 420 ppm). Check the meter in open air.')
  }
  if (CH4 !== undefined && CH4 >= 5) ask('CH4', CH4, `Many meters show methane as per cent of its lower explosive limit. If this one does, it is ${Number((CH4 * 0.05).toPrecision(4))} % methane.`)
  for (const gas of gasNames) {
    const value = readings[gas]
    if (O2 === undefined && gases[gas].unit === 'ppm' && value !== undefined && !Number.isInteger(value) && Math.abs(value - openAir) <= meterError) {
      ask(gas, value, `Oxygen was not read, and ${value} is what a meter shows for oxygen. Is it in the wrong column?`)
    }
  }
  return doubts
}
