import type { Answer } from '../answer.ts'
import { buildAnswer, mean } from '../build-answer.ts'
import type { SampleAt } from '../shapes.ts'
import { figure } from '../words.ts'
import { gramsPerOunce } from './troy.ts'
import type { KrigedGround } from './kriged-panels.ts'
import type { Ground } from './panels.ts'

export interface AuditInput {
  readonly kriged: KrigedGround
  readonly used: readonly SampleAt[]
  readonly ground: readonly Ground[]
  readonly density: number
  readonly headline: number
}

/** The same ground by ordinary kriging and by the plain width-weighted average, beside the headline; it says which sample makes them part. */
export function auditOf({ kriged, used, ground, density, headline }: AuditInput): Answer {
  const area = ground.reduce((sum, g) => sum + g.area, 0)
  const toOunces = density / gramsPerOunce
  const plain = mean(used.map(s => s.meanAccumulation!)) * area * toOunces
  const total = kriged.total(ground.map(g => g.area * toOunces))
  const value = total ? total.mean : plain
  const richest = [...used].sort((a, b) => b.meanAccumulation! - a.meanAccumulation!)[0]!
  const without = mean(used.filter(s => s !== richest).map(s => s.meanAccumulation!)) * area * toOunces
  const apart = Math.abs(plain / headline - 1)
  return buildAnswer({
    id: 'grade.audit', value, unit: 'ozt',
    sentence: [
      total ? `Ordinary kriging of the accumulations gives ${figure(total.mean, 2)} ± ${figure(Math.sqrt(total.variance), 2)} oz;` : 'Too few samples for ordinary kriging;',
      `the plain average gives ${figure(plain, 2)} oz.`,
      apart > 0.25 ? `They part by ${figure(100 * apart, 2)} %: without bag ${richest.bag} the plain average would be ${figure(without, 2)} oz.` : 'They agree with the headline within a quarter.',
    ].join(' '),
    ...(total ? { range: krigingRange(total) } : {}),
    method: {
      name: 'ordinary kriging and plain average', page: 'grade',
      working: [`plain: ${figure(mean(used.map(s => s.meanAccumulation!)), 3)} g/t·m × ${figure(area, 3)} m² × ${density} t/m³ / ${gramsPerOunce} g = ${figure(plain, 3)} oz`, kriged.drawn.sentence],
    },
    parts: used.map(s => s.answer),
  })
}

const krigingRange = ({ mean: middle, variance }: { mean: number, variance: number }) => ({
  low: Math.max(0, middle - 1.2816 * Math.sqrt(variance)), high: middle + 1.2816 * Math.sqrt(variance), confidence: 0.8,
  because: ['kriging error only; the variogram is taken as known'],
})
