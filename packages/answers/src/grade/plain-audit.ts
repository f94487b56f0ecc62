import type { Answer } from '../answer.ts'
import { buildAnswer, mean } from '../build-answer.ts'
import { figure, grade, plural } from '../words.ts'
import type { CrewUnits } from '../words.ts'
import type { SampleAt } from './shapes.ts'
import { gramsPerOunce } from './troy.ts'

export interface PlainAuditInput {
  readonly used: readonly SampleAt[]
  /** m² that are still there. */
  readonly area: number
  readonly density: number
  readonly headline: number
  readonly units: CrewUnits
}

/** The same ground by the plain average of the samples' accumulations, beside the headline; it names the sample that makes them part. */
export function plainAudit({ used, area, density, headline, units }: PlainAuditInput): Answer {
  const toOunces = area * density / gramsPerOunce, value = mean(used.map(s => s.meanAccumulation!)) * toOunces
  const richest = [...used].sort((a, b) => b.meanAccumulation! - a.meanAccumulation!)[0]!
  const without = used.length > 1 ? mean(used.filter(s => s !== richest).map(s => s.meanAccumulation!)) * toOunces : 0
  const apart = Math.abs(value / headline - 1)
  return buildAnswer({
    id: 'grade.audit', value, unit: 'ozt',
    sentence: apart > 0.25
      ? `The plain average gives ${figure(value, 2)} oz: the two disagree by ${figure(100 * apart, 2)} %. Without bag ${richest.bag} (${grade(richest.grade, units)}) it would be ${figure(without, 2)} oz.`
      : `The plain average gives ${figure(value, 2)} oz: within a quarter of the headline.`,
    method: {
      name: 'plain average of accumulations', page: 'grade',
      working: [`mean of ${plural(used.length, 'sample')}: ${figure(mean(used.map(s => s.meanAccumulation!)), 3)} g/t·m × ${figure(area, 3)} m² × ${figure(density, 3)} t/m³ / ${gramsPerOunce} g = ${figure(value, 3)} oz`],
    },
    parts: used.map(s => s.answer),
  })
}
