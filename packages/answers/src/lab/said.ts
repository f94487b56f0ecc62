import type { Answer } from '../answer.ts'
import { buildAnswer, quantile } from '../build-answer.ts'
import { figure, grade as gradeWords, plural } from '../words.ts'
import type { CrewUnits } from '../words.ts'
import type { BaggedLooks } from './beliefs.ts'
import type { BlankRun, DuplicatesAt, LabSample, StandardChart, SwapSuspicion } from './shapes.ts'

interface Said {
  readonly rock: readonly LabSample[]
  readonly charts: readonly StandardChart[]
  readonly blanks: readonly BlankRun[]
  readonly duplicates: readonly DuplicatesAt[]
  readonly swaps: readonly SwapSuspicion[]
  readonly units: CrewUnits
}

const inPlace = ['channel', 'chip', 'panel', '']

/** Bags of rock cut where it stands; all bags where there are none such. */
function ofTheVein(rock: readonly LabSample[]): readonly LabSample[] {
  const own = rock.filter(s => s.role === 'ordinary' && inPlace.includes(s.method))
  return own.length > 0 ? own : rock
}

/** The answer in two or three sentences: what it ran, what speaks against it, how far one figure can be trusted. */
export function labSentence({ rock, charts, blanks, duplicates, swaps, units }: Said): string {
  const vein = ofTheVein(rock)
  if (vein.length === 0) return 'Only blanks and standards have been run.'
  const sorted = vein.map(s => s.grade).sort((a, b) => a - b)
  const low = quantile(sorted, 0.1), high = quantile(sorted, 0.9), middle = quantile(sorted, 0.5)
  const ran = vein.length < 3 ? `${plural(vein.length, 'bag')} ran ${vein.map(s => gradeWords(s.grade, units)).join(' and ')}.`
    : `Half of ${plural(vein.length, 'bag')} ran more than ${gradeWords(middle, units)}; four in five ran ${gradeWords(low, units)} to ${gradeWords(high, units)}.`
  return `${ran} ${against({ charts, blanks, swaps })} ${trusted(vein, duplicates)}`
}

function against({ charts, blanks, swaps }: Pick<Said, 'charts' | 'blanks' | 'swaps'>): string {
  const dirty = blanks.filter(b => b.failed), off = charts.flatMap(c => c.runs.filter(r => r.rejected))
  const runs = charts.reduce((sum, c) => sum + c.runs.length, 0)
  const bad = [
    ...(dirty.length > 0 ? [`${dirty.length} of ${plural(blanks.length, 'blank')} carried gold (${dirty.map(b => b.bag).join(', ')})`] : []),
    ...(off.length > 0 ? [`${off.length} of ${plural(runs, 'standard')} out of control (${off.map(r => r.bag).join(', ')})`] : []),
    ...(swaps.length > 0 ? [`${swaps[0]!.bags.join(' and ')} may have been changed over`] : []),
  ]
  if (bad.length > 0) return `Look again: ${bad.join('; ')}.`
  if (blanks.length + runs === 0) return 'No blank and no standard has been run, so nothing tells whether the laboratory can be believed.'
  return `${[...(blanks.length > 0 ? [`${plural(blanks.length, 'blank')} clean`] : []), ...(runs > 0 ? [`${plural(runs, 'standard')} in control`] : [])].join(' and ')}: nothing speaks against the laboratory.`
}

function trusted(vein: readonly LabSample[], duplicates: readonly DuplicatesAt[]): string {
  const factors = vein.filter(s => !s.below).map(s => Math.sqrt(s.high / s.low)).sort((a, b) => a - b)
  const field = duplicates.find(d => d.stage === 'field')
  const apart = field ? ` Cut twice at one place, they part by ${figure(field.cv.value, 2)} %.` : ' No place has been cut twice, so how far one bag stands for its wall is not known.'
  return factors.length === 0 ? apart.trim() : `One bag's figure is good to a factor of ${figure(quantile(factors, 0.5), 2)} either way, four times in five.${apart}`
}

/** The three figures beside the sentence. */
export function labFigures({ rock, charts, blanks, bagged }: Pick<Said, 'rock' | 'charts' | 'blanks'> & { readonly bagged: BaggedLooks }): readonly Answer[] {
  const vein = ofTheVein(rock), sorted = vein.map(s => s.grade).sort((a, b) => a - b)
  const runs = charts.flatMap(c => c.runs), { all } = bagged.recoveries
  return [
    ...(vein.length === 0 ? [] : [buildAnswer({
      id: 'lab.median', value: quantile(sorted, 0.5), unit: 'g/t', sentence: `Half of ${plural(vein.length, 'bag')} ran more than this.`,
      range: { low: quantile(sorted, 0.1), high: quantile(sorted, 0.9), confidence: 0.8, because: ['bags differ so much from each other'] },
      method: { name: 'the middle of all bags, each by its one belief', page: 'sample-belief' }, parts: vein.map(s => s.answer),
    })]),
    ...(blanks.length + runs.length === 0 ? [] : [buildAnswer({
      id: 'lab.controls', value: blanks.filter(b => b.failed).length + runs.filter(r => r.rejected).length, unit: 'failed',
      sentence: `${blanks.filter(b => b.failed).length} of ${plural(blanks.length, 'blank')} and ${runs.filter(r => r.rejected).length} of ${plural(runs.length, 'standard')} failed.`,
      method: { name: 'blanks and certified standards', page: 'assay-checks' }, parts: [...blanks.map(b => b.answer), ...runs.map(r => r.answer)],
    })]),
    buildAnswer({
      id: 'lab.recovery', value: 100 * all.share, unit: '%', sentence: `Pans keep about ${figure(100 * all.share, 2)} % of the gold.`,
      range: { low: 100 * all.low, high: 100 * all.high, confidence: 0.8, because: ['few salted grains', 'coarse gold in small charges'] },
      method: { name: 'salted grains and bags that were assayed as well', page: 'pan-calibration', working: [
        ...(all.seeded > 0 ? [`${all.found} of ${all.seeded} salted grains found again`] : []), ...(all.pairs > 0 ? [`${plural(all.pairs, 'bag')} both panned and assayed`] : []),
        ...(all.seeded + all.pairs === 0 ? ['nothing salted or assayed yet: the standing figure'] : [])] },
      from: all.from, assumed: all.seeded + all.pairs === 0 ? [{ name: 'pan recovery', value: all.share, why: 'until salted pans tell' }] : [],
    }),
  ]
}
