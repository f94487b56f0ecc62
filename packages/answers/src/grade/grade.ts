import type { AssumedFigure, Assume } from '../assumptions.ts'
import type { Answer, NotEnough } from '../answer.ts'
import type { Belief } from '../belief.ts'
import { buildAnswer, mean, quantile, rangeOf } from '../build-answer.ts'
import { said } from '../rounding.ts'
import type { VeinFound } from '../vein/vein.ts'
import { figure, grade as gradeWords, length, plural, rock } from '../words.ts'
import type { CrewUnits } from '../words.ts'
import { aboveCutOffs, roundCutOffs } from './above-cut-offs.ts'
import { fewestForVariogram } from './few-samples.ts'
import type { GroundAt } from './ground-at.ts'
import { notResource } from './notice.ts'
import { groundOutcomes, priors, seed } from './outcomes.ts'
import type { GroundOutcomes, GroundSample } from './outcomes.ts'
import { panelsAt } from './panel-answers.ts'
import { plainAudit } from './plain-audit.ts'
import type { Slot } from './panel-answers.ts'
import type { Grade, Realisation, SampleAt } from './shapes.ts'
import { gramsPerOunce } from './troy.ts'

/** Fewer samples than this on the vein and no figure is given at all. */
export const leastSamples = 3
/** Outcomes handed out to be looked at one after another. */
const shown = 24

const sources = [
  'Conditional simulation of a lognormal field with measurement error: Journel and Huijbregts, Mining Geostatistics, 1978 (from memory)',
  'Doubt about the variogram carried by its posterior: Diggle and Ribeiro, Model-based Geostatistics, 2007, ch. 7 (from memory)',
]
const cautions = [notResource]

export interface GradeInput {
  readonly vein: VeinFound
  readonly samples: readonly SampleAt[]
  readonly beliefs: ReadonlyMap<string, Belief>
  readonly ground: GroundAt
  /** Width over the ground's blocks, outcome by outcome. */
  readonly width: readonly Float64Array[]
  readonly assume: Assume
  readonly units: CrewUnits
}

/** Too few samples for any figure, and what would tell. */
export const tooFewSamples = (count: number): NotEnough => ({
  notEnough: true, sentence: `${plural(count, 'sample')} on the vein with a place, a width and a result: not enough to say how much gold there is.`,
  wanted: [
    { kind: 'sample', why: 'channel samples across the vein, with place and width' }, { kind: 'pan', why: 'a pan of each tells something within the hour' },
    { kind: 'assay', why: 'an assay tells more of the rich ones' },
  ],
  cautions,
})

/** A sample's logs with the variance of their errors, as the estimate sees it. */
export function groundSample(s: SampleAt, belief: Belief, vein: VeinFound): GroundSample {
  const width = vein.at.widths.find(w => w.entry === s.entry)!
  const widthError = (width.sigma / width.width) ** 2, logWidth = Math.log(s.width!)
  return { at: s.at!, logWidth, widthError, logAccumulation: belief.logMean + logWidth, accumulationError: s.logSd ** 2 + widthError }
}

/** How much gold is in the ground near the samples, where, and how sure that is. */
export function gradeOf({ vein, samples, beliefs, ground, width, assume, units }: GradeInput): Grade | NotEnough {
  const used = samples.filter(s => s.used)
  if (ground.panels.length === 0) {
    return { notEnough: true, sentence: 'All the ground within reach of a sample has been taken out or lies beyond the fault.', wanted: [{ kind: 'sample', why: 'from ground that is still there' }], cautions }
  }
  const reach = assume('reach of a sample'), least = assume('minimum width')
  const slot: Slot = { width: least.value, wallDensity: assume('wall density').value, wallGrade: assume('wall grade').value }
  const outcomes = groundOutcomes(used.map(s => groundSample(s, beliefs.get(s.bag)!, vein)), width, ground, assume)
  const assumed = [...priors(assume).assumed, assume('vein density'), reach, assume('panel size')]
  const perOutcome = sumsOf(ground, outcomes, slot)
  const totals = totalAnswers({ ...perOutcome, outcomes, ground, used, assumed, diluting: [least, assume('wall density'), assume('wall grade')], units, vein })
  const cutOffs = roundCutOffs(units, totals.broken.grade.range!.low / 6, 5 * totals.broken.grade.range!.high)
  const all = panelsAt({ ground, outcomes, used, slot, cutOffs, units }), panels = all.slice(0, ground.panels.length)
  const oz = said(totals.ounces, 'ozt')
  const panelOutcomes = (g: { readonly name: string, readonly area: number }, i: number) => ({
    name: g.name, area: g.area, width: outcomes.width[i]!, ounces: outcomes.accumulation[i]!.map((a, k) => a * g.area * outcomes.density[k]! / gramsPerOunce),
  })
  return {
    sentence: `About ${oz.value} oz of gold in ${rock(totals.tonnes.value, units)} of vein within ${length(reach.value, units, 2)} of the samples; four times in five between ${oz.low} and ${oz.high} oz.`,
    ...totals, ounces95: rangeOf(perOutcome.ounces, [], 0.95), panels, drawn: all.slice(ground.panels.length),
    samples, spatial: used.length >= fewestForVariogram,
    audit: plainAudit({ used, area: perOutcome.area, density: assume('vein density').value, headline: totals.ounces.value, units }),
    cutOffs: aboveCutOffs(cutOffs, panels, ground, outcomes, slot, units),
    realisations: Array.from({ length: Math.min(shown, outcomes.density.length) }, (_, k) => realisation(outcomes, ground.panels.length, k)),
    cautions: [
      ...cautions,
      ...(used.length < fewestForVariogram ? [`${plural(used.length, 'sample')}: too few to draw a variogram (${fewestForVariogram} at least). What is assumed of the ground weighs as much as what was found.`] : []),
    ],
    outcomes: {
      ounces: perOutcome.ounces, tonnes: perOutcome.tonnes, density: outcomes.density, panels: ground.panels.map(panelOutcomes),
      drawn: ground.drawn.map((g, i) => panelOutcomes(g, ground.panels.length + i)),
    },
  }
}

function realisation({ accumulation, width }: GroundOutcomes, panels: number, k: number): Realisation {
  const of = (f: (i: number) => number) => Float32Array.from({ length: panels }, (_, i) => f(i))
  return { accumulation: of(i => accumulation[i]![k]!), width: of(i => width[i]![k]!), grade: of(i => accumulation[i]![k]! / width[i]![k]!) }
}

interface Sums {
  readonly area: number
  readonly ounces: number[]
  readonly tonnes: number[]
  readonly width: number[]
  readonly brokenTonnes: number[]
  readonly brokenOunces: number[]
}

/** Totals over the panels, outcome by outcome. */
function sumsOf({ panels }: GroundAt, { accumulation, width, density }: GroundOutcomes, slot: Slot): Sums {
  const count = density.length, make = () => new Float64Array(count)
  const [metal, room, wall] = [make(), make(), make()]
  const area = panels.reduce((sum, g) => sum + g.area, 0)
  panels.forEach((g, i) => {
    const a = accumulation[i]!, w = width[i]!
    for (let k = 0; k < count; k++) {
      metal[k]! += g.area * a[k]!
      room[k]! += g.area * w[k]!
      wall[k]! += g.area * Math.max(0, slot.width - w[k]!)
    }
  })
  const over = (f: (k: number) => number) => Array.from({ length: count }, (_, k) => f(k))
  const ounces = over(k => metal[k]! * density[k]! / gramsPerOunce), tonnes = over(k => room[k]! * density[k]!)
  return {
    area, ounces, tonnes, width: over(k => room[k]! / area), brokenTonnes: over(k => tonnes[k]! + wall[k]! * slot.wallDensity),
    brokenOunces: over(k => ounces[k]! + wall[k]! * slot.wallDensity * slot.wallGrade / gramsPerOunce),
  }
}

interface TotalsInput extends Sums {
  readonly outcomes: GroundOutcomes
  readonly ground: GroundAt
  readonly used: readonly SampleAt[]
  readonly assumed: readonly AssumedFigure[]
  readonly diluting: readonly AssumedFigure[]
  readonly units: CrewUnits
  readonly vein: VeinFound
}

function totalAnswers(t: TotalsInput): { ounces: Answer, tonnes: Answer, grade: Answer, width: Answer, broken: Grade['broken'] } {
  const { outcomes, ground, used, assumed, units, vein, area, ounces, tonnes } = t
  const grades = ounces.map((oz, k) => oz * gramsPerOunce / tonnes[k]!), parts = used.map(s => s.answer)
  const { variance, range, nuggetShare } = outcomes.ground
  const because = ['how erratic the gold is between samples', 'coarse gold in small samples', 'how far gold carries along the vein', 'density']
  const method = (working: readonly string[]) => ({ name: 'lognormal field over panels, with the doubt about its variogram', page: 'grade', working })
  const figureOf = (values: readonly number[]) => quantile([...values].sort((a, b) => a - b), 0.5)
  const density = mean(outcomes.density), over = `${outcomes.density.length} outcomes over ${plural(ground.panels.length, 'panel')}, seed ${seed}`
  const width = buildAnswer({
    id: 'grade.width', value: figureOf(t.width), unit: 'm', range: rangeOf(t.width, ['where the vein was not taped']), parts: vein.at.widths.map(w => w.answer),
    sentence: `The vein is ${length(figureOf(t.width), units)} wide over this ground.`, method: method([over]), sources, assumed,
  })
  const tonnesAnswer = buildAnswer({
    id: 'grade.tonnes', value: figureOf(tonnes), unit: 't', range: rangeOf(tonnes, ['width away from where it was taped', 'density']), parts: [width],
    sentence: `${rock(figureOf(tonnes), units)} of vein over ${areaWords(area, units)} that is still there.`,
    method: method([`${figure(area, 3)} m² × ${figure(width.value, 3)} m × ${figure(density, 3)} t/m³ = ${figure(area * width.value * density, 3)} t`]), sources, assumed, cautions,
  })
  const gradeAnswer = buildAnswer({
    id: 'grade.grade', value: figureOf(grades), unit: 'g/t', range: rangeOf(grades, because), parts,
    sentence: `${gradeWords(figureOf(grades), units)} over the vein's own width; nothing is added for wall rock that comes down with it.`,
    method: method(['ounces over tonnes, outcome by outcome']), sources, assumed, cautions,
  })
  const brokenGrades = t.brokenOunces.map((oz, k) => oz * gramsPerOunce / t.brokenTonnes[k]!), [least] = t.diluting
  const brokenTonnes = buildAnswer({
    id: 'grade.broken.tonnes', value: figureOf(t.brokenTonnes), unit: 't', range: rangeOf(t.brokenTonnes, ['width', 'density']), parts: [tonnesAnswer],
    sentence: `${rock(figureOf(t.brokenTonnes), units)} to break, at least ${length(least!.value, units, 2)} wide, wall rock with it.`,
    method: method(['vein, and as much wall as the least working width needs, panel by panel and outcome by outcome']), sources, assumed: t.diluting, cautions,
  })
  const brokenGrade = buildAnswer({
    id: 'grade.broken.grade', value: figureOf(brokenGrades), unit: 'g/t', range: rangeOf(brokenGrades, because), parts: [gradeAnswer, brokenTonnes],
    sentence: `${gradeWords(figureOf(brokenGrades), units)} as broken, wall rock counted at its own grade and density.`,
    method: method(['(width × density × grade + wall × density × grade) over (width × density + wall × density)']), sources, assumed: t.diluting, cautions,
  })
  const ouncesRange = rangeOf(ounces, because), spoken = said({ value: figureOf(ounces), range: ouncesRange }, 'ozt')
  return {
    width, tonnes: tonnesAnswer, grade: gradeAnswer, broken: { tonnes: brokenTonnes, grade: brokenGrade },
    ounces: buildAnswer({
      id: 'grade.ounces', value: figureOf(ounces), unit: 'ozt', range: ouncesRange, parts: [tonnesAnswer, gradeAnswer, ...parts],
      sentence: `About ${spoken.value} oz in place: as likely more as less. The average over all outcomes is ${said({ value: mean(ounces), range: ouncesRange }, 'ozt').value} oz, because a few would be rich.`,
      method: method([
        `${plural(used.length, 'sample')} over ${plural(ground.panels.length, 'panel')}; logs vary by ${figure(variance, 2)} (variance), ${figure(100 * nuggetShare, 2)} % of it without reach, the rest falling off over ${length(range, units, 2)}`,
        `ounces = Σ area × accumulation × density / ${gramsPerOunce} g`, over,
      ]), sources, assumed, cautions,
    }),
  }
}

/** An area in the crew's units. */
const areaWords = (squareMetres: number, units: CrewUnits) => units.length === 'm' ? `${figure(squareMetres, 3)} m²` : `${figure(squareMetres / 0.3048 ** 2, 3)} ft²`
