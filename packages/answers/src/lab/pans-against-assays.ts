import type { Entry } from '@lodebook/book'
import { expectedSpread, pairsFor } from '@lodebook/reckon/assay'
import { yorkLine } from '@lodebook/reckon/statistics'
import type { Answer, NotEnough } from '../answer.ts'
import type { Assume } from '../assumptions.ts'
import { buildAnswer } from '../build-answer.ts'
import { wordsOf } from '../read.ts'
import { figure, grade as gradeWords, plural } from '../words.ts'
import type { CrewUnits } from '../words.ts'
import type { BaggedLooks } from './beliefs.ts'
import type { Look } from './looks.ts'
import { pannerOf } from './pan-recovery.ts'
import type { Recovery } from './pan-recovery.ts'
import type { PanAndAssayAt, PanLine, PansAgainstAssays } from './shapes.ts'

/** Fewer pairs than this draw no line: three points lie near some line by themselves. */
const fewestForLine = 5
const fewestPairs = 3

const sources = [
  'Line through points in doubt both ways: York and others, Am. J. Phys. 72, 2004, 367 (from memory)',
  'Salted pans: Jeffreys\' and Wilson\'s intervals, Brown, Cai and DasGupta, Statist. Sci. 16, 2001, 101 (from memory)',
]

/** How the crew's pans stand to the laboratory: the line through bags that had both, by panner and by material, and what share of the gold pans keep. */
export function pansAgainstAssays(bagged: BaggedLooks, samples: readonly Entry[], assume: Assume, units: CrewUnits): PansAgainstAssays | NotEnough {
  const both = [...bagged.looks].flatMap(([bag, looks]) => {
    const pan = looks.find(l => l.entry.kind === 'pan'), assay = looks.find(l => l.entry.kind === 'assay')
    return pan && assay ? [{ bag, pan, assay }] : []
  })
  const points = both.flatMap(({ bag, pan, assay }) => pointOf(bag, pan, assay, samples.find(s => s.fields.bag === bag), units) ?? [])
  const { all, of } = bagged.recoveries
  const recovery = [recoveryAnswer('the crew', all, assume), ...[...of].map(([name, own]) => recoveryAnswer(name, own, assume))]
  if (both.length < fewestPairs && all.seeded === 0) {
    return {
      notEnough: true, cautions: [], sentence: `${plural(both.length, 'bag')} both panned and assayed, and no salted pan: not enough to say how much gold the pans keep; the standing figure is used.`,
      wanted: [{ kind: 'pan', why: 'salt a clean pan with twenty counted grains and say how many are found again: an hour, and no fee' }, { kind: 'assay', why: 'send a split of bags that were panned as well' }],
    }
  }
  const groups = [
    { of: 'all pans', points }, ...grouped(points, p => p.panner, 'panned by '), ...grouped(points, p => p.material, ''),
  ]
  const lines = groups.flatMap(g => g.points.length < fewestForLine ? [] : lineOf(g.of, g.points) ?? [])
  return { points, limited: both.length - points.length, lines, recovery, sentence: sentenceOf(all, points.length, both.length) }
}

function sentenceOf(all: Recovery, points: number, both: number): string {
  const salted = all.seeded > 0 ? `${all.found} of ${all.seeded} salted grains found again` : ''
  const basis = [...(both > 0 ? [plural(both, 'bag both panned and assayed', 'bags both panned and assayed')] : []), ...(salted ? [salted] : [])].join(' and ')
  const wanted = all.relativeSd / 2, more = all.pairs > 0 ? pairsFor({ pairs: all.pairs, relativeSd: all.relativeSd }, wanted) : 0
  const tighter = more > 0 && points > 0 ? ` ${more} more bags panned and assayed would bring its doubt from ±${figure(100 * all.relativeSd, 2)} % to ±${figure(100 * wanted, 2)} %; so would about ${Math.ceil((1 - all.share) / all.share / wanted ** 2)} salted grains in all.` : ''
  return `Pans keep about ${figure(100 * all.share, 2)} % of the gold (80 %: ${figure(100 * all.low, 2)} to ${figure(100 * all.high, 2)} %), by ${basis}.${tighter}`
}

/** Both as figures with a doubt of their own; undefined where one is only a limit or nothing. */
function pointOf(bag: string, pan: Look, assay: Look, sample: Entry | undefined, units: CrewUnits): PanAndAssayAt | undefined {
  const [p, a] = [pan, assay].map(({ look }) => 'grade' in look.found ? look.found.grade : 0) as [number, number]
  if (!(p > 0 && a > 0)) return undefined
  // Both hold grains of the one bag: the count's doubt is taken at the grade of both together, so that a lean reading does not seem sure.
  const level = (p * pan.look.mass + a * assay.look.mass) / (pan.look.mass + assay.look.mass)
  const [panSd, assaySd] = [expectedSpread({ ...pan.look, recovery: 1 }, level), expectedSpread(assay.look, level)]
  return {
    bag, pan: p, assay: a, panSd, assaySd, panner: pannerOf(pan.entry), material: materialOf(sample),
    answer: buildAnswer({
      id: `lab.pan-and-assay.${bag}`, value: p / a, sentence: `Bag ${bag}: the pan showed ${gradeWords(p, units)} (${pan.says}); the ${assay.says} says ${gradeWords(a, units)}.`,
      method: { name: 'pan beside assay, before recovery is put right', page: 'pan-calibration', working: [`pan ±${figure(100 * panSd, 2)} %, assay ±${figure(100 * assaySd, 2)} % at the grade of both together, by the count of grains`] },
      from: [pan.entry.id, assay.entry.id, ...(sample ? [sample.id] : [])],
    }),
  }
}

/** What the sample is of, in the crew's words, the first two in one order: 'quartz, pyrite'. */
const materialOf = (sample: Entry | undefined): string => sample ? [...wordsOf(sample, 'materials')].slice(0, 2).sort().join(', ') : ''

function grouped(points: readonly PanAndAssayAt[], by: (p: PanAndAssayAt) => string, prefix: string) {
  const names = [...new Set(points.map(by))].filter(name => name !== '')
  return names.length < 2 ? [] : names.map(name => ({ of: `${prefix}${name}`, points: points.filter(p => by(p) === name) }))
}

function lineOf(of: string, points: readonly PanAndAssayAt[]): PanLine | undefined {
  if (new Set(points.map(p => p.assay)).size < 2) return undefined
  const line = yorkLine(points.map(p => ({ x: Math.log(p.assay), y: Math.log(p.pan), sx: p.assaySd, sy: p.panSd })))
  const half = 1.2816 * line.slopeSd, even = Math.abs(line.slope - 1) <= half
  const middle = Math.exp(line.middle.x), ratio = Math.exp(line.intercept + line.slope * line.middle.x) / middle
  return {
    of, pairs: points.length, intercept: line.intercept, slope: line.slope,
    answer: buildAnswer({
      id: `lab.pan-line.${of.replace(/\W+/g, '-')}`, value: line.slope,
      range: { low: line.slope - half, high: line.slope + half, confidence: 0.8, because: ['few pairs', 'coarse gold in small charges'] },
      sentence: `${of === 'all pans' ? 'All pans' : of}: ${plural(points.length, 'pair')}; at ${figure(middle, 2)} g/t a pan shows ${figure(ratio, 2)} of what the assay says, and it rises as the assay to the power ${figure(line.slope, 2)} (80 %: ${figure(line.slope - half, 2)} to ${figure(line.slope + half, 2)})${even ? ', which is no different from an even share at every grade' : ''}.`,
      method: {
        name: 'line through points in doubt both ways, on logs', page: 'pan-calibration',
        working: [`ln pan = ${figure(line.intercept, 3)} + ${figure(line.slope, 3)} ln assay`, ...(line.misfit === undefined ? []
          : [`scatter about the line is ${figure(line.misfit, 2)} times what the doubts of pans and assays make (variance)${line.misfit > 2 ? ': something else parts them' : ''}`])],
      },
      sources, parts: points.map(p => p.answer),
    }),
  }
}

function recoveryAnswer(of: string, { share, low, high, from, pairs, seeded, found }: Recovery, assume: Assume): Answer {
  const told = pairs + seeded > 0
  return buildAnswer({
    id: `lab.recovery.${of.replace(/\W+/g, '-')}`, value: 100 * share, unit: '%', range: { low: 100 * low, high: 100 * high, confidence: 0.8, because: told ? ['few salted grains', 'coarse gold in small charges'] : ['nothing was salted or assayed yet'] },
    sentence: `Pans of ${of} keep ${figure(100 * share, 2)} % of the gold.`,
    method: {
      name: 'salted grains and bags that were assayed as well, by their likelihood', page: 'pan-calibration',
      working: [...(seeded > 0 ? [`${found} of ${seeded} salted grains found again`] : []), ...(pairs > 0 ? [`${plural(pairs, 'bag')} both panned and assayed, each grade summed over`] : [])],
    },
    sources, from, assumed: told ? [] : [assume('pan recovery')],
  })
}
