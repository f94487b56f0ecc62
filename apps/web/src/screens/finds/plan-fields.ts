import type { CrewUnits, PlanWish } from '@lodebook/answers'
import { convert } from '@lodebook/reckon/units'

/** A figure of a wish as the crew types it. */
export interface PlanField { readonly label: string, readonly unit: string, readonly to: (value: number) => number, readonly from: (typed: number) => number }

const inUnit = (label: string, unit: string, base: string, said = unit): PlanField =>
  ({ label, unit: said, to: value => convert(value, base, unit), from: typed => Number.isFinite(typed) ? convert(typed, unit, base) : Number.NaN })

/** What a plan asks for, in the crew's units. */
export function asked(units: CrewUnits): Readonly<Record<Exclude<keyof PlanWish, 'cut'>, PlanField>> {
  const feet = units.length === 'ft', small = feet ? 'in' : 'mm'
  return {
    grain: inUnit('Largest gold seen', small, 'm'), grade: inUnit('Grade expected', units.grade, 'g/t', feet ? 'oz/ton' : 'g/t'), fragment: inUnit('Largest pieces', small, 'm'),
    precision: { label: 'Precision wanted', unit: '% of the grade, one standard deviation', to: share => share * 100, from: percent => percent / 100 },
    finalMass: inUnit('Panned or sent at most', feet ? 'lb' : 'kg', 'g'), finalSize: inUnit('Crushed to', small, 'm'),
  }
}
