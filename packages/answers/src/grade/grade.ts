import type { VeinPoint } from '@lodebook/reckon'
import type { Assume, AssumedFigure } from '../assumptions.ts'
import type { Answer, NotEnough } from '../answer.ts'
import type { Belief } from '../belief.ts'
import { buildAnswer, mean, quantile, rangeOf } from '../build-answer.ts'
import type { Grade, Panel, SampleAt } from '../shapes.ts'
import type { VeinFound } from '../vein/vein.ts'
import { figure, grade as gradeWords, length, plural, rock } from '../words.ts'
import type { CrewUnits } from '../words.ts'
import { auditOf } from './audit.ts'
import { krigeGround, fewest } from './kriged-panels.ts'
import type { KrigedGround } from './kriged-panels.ts'
import { notResource, outcomesDrawn } from './notice.ts'
import { groundOutcomes, priors, seed } from './outcomes.ts'
import type { GroundOutcomes, GroundSample } from './outcomes.ts'
import { groundPanels } from './panels.ts'
import type { Ground } from './panels.ts'
import { samplesAt } from './samples-at.ts'
import { gramsPerOunce } from './troy.ts'
import type { BaggedSample } from './samples-at.ts'

/** Fewer samples than this on the vein and no figure is given at all. */
const leastSamples = 3

const sources = [
  'Ordinary kriging with measurement error: Journel and Huijbregts, Mining Geostatistics, 1978 (from memory)',
  'Doubt about the variogram carried by its posterior: Diggle and Ribeiro, Model-based Geostatistics, 2007, ch. 7 (from memory)',
]
const cautions = [notResource]

export interface GradeInput {
  readonly vein: VeinFound
  readonly samples: readonly BaggedSample[]
  readonly beliefs: ReadonlyMap<string, Belief>
  readonly assume: Assume
  readonly units: CrewUnits
}

/** How much gold is in the ground near the samples, where, and how sure that is. */
export function gradeOf(input: GradeInput): Grade | NotEnough {
  const { vein, assume, units } = input
  const samples = samplesAt(input.samples, input.beliefs, vein, units)
  const used = samples.filter(s => s.used)
  if (used.length < leastSamples) {
    return {
      notEnough: true, sentence: `${plural(used.length, 'sample')} on the vein with a place, a width and a result: not enough to say how much gold there is.`,
      wanted: [
        { kind: 'sample', why: 'channel samples across the vein, with place and width' }, { kind: 'pan', why: 'a pan of each tells something within the hour' },
        { kind: 'assay', why: 'an assay tells more of the rich ones' },
      ],
      cautions,
    }
  }
  const size = assume('panel size'), reach = assume('reach of a sample')
  const ring = (out: readonly VeinPoint[], home: readonly VeinPoint[]) => [...out, ...[...home].reverse()]
  const taken = [...vein.at.workedOut.map(w => w.corners), ...vein.at.headings.flatMap(h => [ring(h.back, h.sill), ring(h.left, h.right)])]
  const ground = groundPanels({ samples: used.map(s => s.at!), reach: reach.value, size: size.value, taken, cut: vein.at.fault })
  if (ground.length === 0) {
    return { notEnough: true, sentence: 'All the ground within reach of a sample has been taken out or lies beyond the fault.', wanted: [{ kind: 'sample', why: 'from ground that is still there' }], cautions }
  }
  const data = used.map((s): GroundSample => {
    const width = vein.at.widths.find(w => w.entry === s.entry)!
    const widthError = (width.sigma / width.width) ** 2
    const logWidth = Math.log(s.width!)
    return { at: s.at!, logWidth, widthError, logAccumulation: input.beliefs.get(s.bag)!.logMean + logWidth, accumulationError: s.logSd ** 2 + widthError }
  })
  const widths = vein.at.widths.map(w => ({ at: w.at, logValue: Math.log(w.width), errorVariance: (w.sigma / w.width) ** 2 }))
  const outcomes = groundOutcomes(data, widths, ground, assume, outcomesDrawn)
  const kriged = {
    accumulation: krigeGround('accumulation', data.map((d, i) => measured(d, used[i]!.meanAccumulation!, used)), ground),
    width: krigeGround('true width', widths.map(w => ({ at: w.at, value: Math.exp(w.logValue), errorVariance: w.errorVariance * Math.exp(w.logValue) ** 2 })), ground),
  }
  const assumed = [...priors(assume).assumed, assume('vein density'), reach, size]
  const totals = totalAnswers({ outcomes, ground, used, assumed, units, vein })
  const audit = auditOf({ kriged: kriged.accumulation, used, ground, density: assume('vein density').value, headline: totals.ounces.value })
  const panels = ground.map((g, i) => panelAt(g, i, { outcomes, kriged, units, used }))
  const spatial = kriged.accumulation.means !== undefined
  return {
    sentence: `About ${figure(totals.ounces.value, 2)} oz of gold in ${rock(totals.tonnes.value, units)} of vein within ${length(reach.value, units, 2)} of the samples; four times in five between ${figure(totals.ounces.range!.low, 2)} and ${figure(totals.ounces.range!.high, 2)} oz.`,
    ...totals, audit, panels, samples, spatial,
    variograms: [kriged.accumulation.drawn, kriged.width.drawn],
    cautions: [
      ...cautions,
      ...(used.length < fewest ? [`${plural(used.length, 'sample')}: too few to draw a variogram (${fewest} at least). What is assumed of the ground weighs as much as what was found.`] : []),
    ],
    outcomes: {
      ounces: outcomes.accumulation.map((row, k) => sumOver(ground, row) * outcomes.density[k]! / gramsPerOunce),
      tonnes: outcomes.width.map((row, k) => sumOver(ground, row) * outcomes.density[k]!),
      panels: ground.map((g, i) => ({
        name: g.name, area: g.area,
        ounces: Float64Array.from(outcomes.accumulation, (row, k) => row[i]! * g.area * outcomes.density[k]! / gramsPerOunce),
        width: Float64Array.from(outcomes.width, row => row[i]!),
      })),
      density: outcomes.density,
    },
  }
}

/** A sample's value for linear kriging. Its error is taken at the level of its neighbours, so that a low value does not look sure of itself. */
function measured({ at, accumulationError }: GroundSample, value: number, used: readonly SampleAt[]) {
  const from = (s: SampleAt) => Math.hypot(s.at!.along - at.along, s.at!.down - at.down)
  const level = mean([...used].sort((a, b) => from(a) - from(b)).slice(0, 7).map(s => s.meanAccumulation!))
  // A look that found nothing says little of any level: its error is held at three times it.
  return { at, value, errorVariance: Math.min(9, Math.expm1(accumulationError)) * level ** 2 }
}

const sumOver = (ground: readonly Ground[], row: Float64Array) => ground.reduce((sum, g, i) => sum + g.area * row[i]!, 0)

interface Totals { readonly ounces: Answer, readonly tonnes: Answer, readonly grade: Answer, readonly width: Answer }

interface TotalsInput {
  readonly outcomes: GroundOutcomes
  readonly ground: readonly Ground[]
  readonly used: readonly SampleAt[]
  readonly assumed: readonly AssumedFigure[]
  readonly units: CrewUnits
  readonly vein: VeinFound
}

function totalAnswers({ outcomes, ground, used, assumed, units, vein }: TotalsInput): Totals {
  const ounces = outcomes.accumulation.map((row, k) => sumOver(ground, row) * outcomes.density[k]! / gramsPerOunce)
  const tonnes = outcomes.width.map((row, k) => sumOver(ground, row) * outcomes.density[k]!)
  const grades = ounces.map((oz, k) => oz * gramsPerOunce / tonnes[k]!)
  const area = ground.reduce((sum, g) => sum + g.area, 0)
  const widths = outcomes.width.map(row => sumOver(ground, row) / area)
  const parts = used.map(s => s.answer)
  const { variance, range, nuggetShare } = outcomes.ground
  const because = ['how erratic the gold is between samples', 'coarse gold in small samples', 'how far gold carries along the vein', 'density']
  const method = (working: readonly string[]) => ({ name: 'lognormal field over panels, with the doubt about its variogram', page: 'grade', working })
  const figureOf = (values: readonly number[]) => quantile([...values].sort((a, b) => a - b), 0.5)
  const width = buildAnswer({
    id: 'grade.width', value: figureOf(widths), unit: 'm', range: rangeOf(widths, ['where the vein was not taped']), parts: vein.at.widths.map(w => w.answer),
    sentence: `The vein is ${length(figureOf(widths), units)} wide over this ground.`, method: method([`${outcomes.width.length} outcomes over ${ground.length} panels, seed ${seed}`]), sources, assumed,
  })
  const tonnesAnswer = buildAnswer({
    id: 'grade.tonnes', value: figureOf(tonnes), unit: 't', range: rangeOf(tonnes, ['width away from where it was taped', 'density']), parts: [width],
    sentence: `${rock(figureOf(tonnes), units)} of vein over ${figure(area, 3)} m² that is still there.`,
    method: method([`${figure(area, 3)} m² × ${figure(width.value, 3)} m × ${figure(mean(outcomes.density), 3)} t/m³ = ${figure(area * width.value * mean(outcomes.density), 3)} t`]), sources, assumed, cautions,
  })
  const gradeAnswer = buildAnswer({
    id: 'grade.grade', value: figureOf(grades), unit: 'g/t', range: rangeOf(grades, because), parts,
    sentence: `${gradeWords(figureOf(grades), units)} over the vein's own width; nothing is added for wall rock that comes down with it.`,
    method: method(['ounces over tonnes, outcome by outcome']), sources, assumed, cautions,
  })
  return {
    width, tonnes: tonnesAnswer, grade: gradeAnswer,
    ounces: buildAnswer({
      id: 'grade.ounces', value: figureOf(ounces), unit: 'ozt', range: rangeOf(ounces, because), parts: [tonnesAnswer, gradeAnswer, ...parts],
      sentence: `About ${figure(figureOf(ounces), 2)} oz in place: as likely more as less. The average over all outcomes is ${figure(mean(ounces), 2)} oz, because a few would be rich.`,
      method: method([
        `${plural(used.length, 'sample')} over ${plural(ground.length, 'panel')}; logs vary by ${figure(variance, 2)} (variance), ${figure(100 * nuggetShare, 2)} % of it without reach, the rest falling off over ${figure(range, 2)} m`,
        `ounces = Σ area × accumulation × density / ${gramsPerOunce} g`, `${outcomes.accumulation.length} outcomes, seed ${seed}`,
      ]), sources, assumed, cautions,
    }),
  }
}

interface PanelInput extends Pick<TotalsInput, 'outcomes' | 'used' | 'units'> { readonly kriged: { readonly accumulation: KrigedGround, readonly width: KrigedGround } }

function panelAt(g: Ground, i: number, { outcomes, kriged, units, used }: PanelInput): Panel {
  const accumulations = outcomes.accumulation.map(row => row[i]!)
  const ounces = accumulations.map((a, k) => a * g.area * outcomes.density[k]! / gramsPerOunce)
  const width = mean(outcomes.width.map(row => row[i]!))
  const accumulation = quantile([...accumulations].sort((a, b) => a - b), 0.5)
  const tonnes = g.area * width * mean(outcomes.density)
  const range = rangeOf(ounces, [g.nearest < 1 ? 'coarse gold in small samples' : `the nearest sample is ${figure(g.nearest, 2)} m away`])
  const value = quantile([...ounces].sort((a, b) => a - b), 0.5)
  const average = mean(accumulations)
  const doubt = Math.sqrt(mean(accumulations.map(a => (a - average) ** 2))) / average
  const near = [...used].sort((a, b) => away(a, g) - away(b, g)).slice(0, 5)
  const krigedAt = kriged.accumulation.means?.[i]
  return {
    name: g.name, corners: g.corners, centre: g.centre, area: g.area, nearest: g.nearest,
    width, accumulation, grade: accumulation / width, tonnes, ounces: value, low: range.low, high: range.high, doubt,
    answer: buildAnswer({
      id: `grade.panel.${g.name}`, value, unit: 'ozt', range, parts: near.map(s => s.answer),
      sentence: `Panel ${g.name}: about ${figure(value, 2)} oz in ${rock(tonnes, units)} at ${gradeWords(accumulation / width, units)} over ${length(width, units)}.`,
      method: {
        name: 'lognormal field at this panel', page: 'grade',
        working: [
          `${figure(g.area, 3)} m² × ${figure(accumulation, 3)} g/t·m × ${figure(mean(outcomes.density), 3)} t/m³ / ${gramsPerOunce} g = ${figure(value, 3)} oz`,
          krigedAt === undefined ? 'too few samples for ordinary kriging beside it'
            : `ordinary kriging beside it: ${figure(krigedAt, 3)} ± ${figure(kriged.accumulation.errors![i]!, 2)} g/t·m, width ${figure(kriged.width.means?.[i] ?? width, 3)} m`,
        ],
      }, sources, cautions,
    }),
  }
}

const away = (s: SampleAt, g: Ground) => Math.hypot(s.at!.along - g.centre.along, s.at!.down - g.centre.down)
