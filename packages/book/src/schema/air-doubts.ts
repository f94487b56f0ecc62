import { gasDoubts, gasNames, gases, type Gas } from '@lodebook/reckon/air'
import type { Quantity } from '@lodebook/reckon/units'
import type { Rule } from './rule.ts'

/** The field of an air reading that holds each gas. */
export const gasFields: Readonly<Record<Gas, string>> = {
  O2: 'oxygen', CO: 'carbonMonoxide', CO2: 'carbonDioxide', CH4: 'methane', H2S: 'hydrogenSulphide', NO2: 'nitrogenDioxide',
}

/** The first reading that can stand and looks like a slip of unit, column or meter, as a question. */
export const airDoubt: Rule = (fields) => {
  const read = gasNames.flatMap((gas): [Gas, number][] => {
    const value = (fields[gasFields[gas]] as Quantity | undefined)?.value
    return value === undefined || value === null ? [] : [[gas, value]]
  })
  const [first] = gasDoubts(Object.fromEntries(read))
  return first && { field: gasFields[first.gas], expected: `${gases[first.gas].name} as the meter showed it`, sentence: first.question.replace(/\.$/, ''), doubt: true }
}
