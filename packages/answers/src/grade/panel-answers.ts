import { buildAnswer } from '../build-answer.ts'
import { said } from '../rounding.ts'
import { figure, grade as gradeWords, length, rock } from '../words.ts'
import type { CrewUnits } from '../words.ts'
import type { GroundAt } from './ground-at.ts'
import type { GroundOutcomes } from './outcomes.ts'
import type { Ground } from './panels.ts'
import { notResource } from './notice.ts'
import type { Panel, SampleAt } from './shapes.ts'
import { gramsPerOunce } from './troy.ts'

/** What is broken beside the vein when it is narrower than the least working width. */
export interface Slot { readonly width: number, readonly wallDensity: number, readonly wallGrade: number }

export interface PanelsInput {
  readonly ground: GroundAt
  readonly outcomes: GroundOutcomes
  readonly used: readonly SampleAt[]
  readonly slot: Slot
  /** Cut-offs rising, g/t as broken. */
  readonly cutOffs: readonly number[]
  readonly units: CrewUnits
}

const at = (sorted: Float64Array, p: number): number => {
  const place = (sorted.length - 1) * p, low = Math.floor(place), below = sorted[low]!
  return below + (place - low) * ((sorted[low + 1] ?? below) - below)
}

const cautions = [notResource]
const sources = ['Ordinary kriging with measurement error: Journel and Huijbregts, Mining Geostatistics, 1978 (from memory)']
const methodName = 'lognormal field at this panel'

/** Every panel with its figures counted outcome by outcome, panels first, then those drawn by hand. */
export function panelsAt(input: PanelsInput): readonly Panel[] {
  const { ground } = input
  return [...ground.panels, ...ground.drawn].map((g, i) => panelAt(g, i, input))
}

function panelAt(g: Ground, i: number, { ground, outcomes: { accumulation, width, density }, used, slot, cutOffs, units }: PanelsInput): Panel {
  const a = accumulation[i]!, w = width[i]!, count = a.length, ounces = new Float64Array(count), above = new Int32Array(cutOffs.length + 1)
  let sumA = 0, sumAA = 0, sumW = 0, sumD = 0, rocks = 0, metal = 0, wide = 0
  for (let k = 0; k < count; k++) {
    const [vein, wall] = [w[k]! * density[k]!, Math.max(0, slot.width - w[k]!) * slot.wallDensity]
    const grams = a[k]! * density[k]! + wall * slot.wallGrade
    ounces[k] = a[k]! * g.area * density[k]! / gramsPerOunce
    sumA += a[k]!; sumAA += a[k]! ** 2; sumW += w[k]!; sumD += density[k]!
    rocks += vein + wall; metal += grams; wide += Math.max(slot.width, w[k]!)
    above[firstAbove(cutOffs, grams / (vein + wall))]!++
  }
  const chances = new Float32Array(cutOffs.length)
  for (let c = cutOffs.length - 1, sum = 0; c >= 0; c--) { sum += above[c + 1]!; chances[c] = sum / count }
  const sorted = ounces.sort(), value = at(sorted, 0.5), middleDensity = sumD / count, meanWidth = sumW / count, meanA = sumA / count
  const middleA = value * gramsPerOunce / (g.area * middleDensity), tonnes = g.area * meanWidth * middleDensity
  const range = { low: at(sorted, 0.1), high: at(sorted, 0.9), confidence: 0.8, because: [g.nearest < 1 ? 'coarse gold in small samples' : `the nearest sample is ${length(g.nearest, units, 2)} away`] }
  const spoken = said({ value, range }, 'ozt'), known = ground.known[i]!
  const [inOunces, inLength] = [units.grade !== 'g/t', units.length]
  return {
    name: g.name, corners: g.corners, centre: g.centre, area: g.area, nearest: g.nearest, known, chances,
    width: meanWidth, accumulation: middleA, grade: middleA / meanWidth, tonnes, ounces: value, low: range.low,
    high: range.high, rangeWidth: range.high - range.low, low95: at(sorted, 0.025), high95: at(sorted, 0.975),
    doubt: Math.sqrt(Math.max(0, sumAA / count - meanA ** 2)) / meanA,
    broken: { width: wide / count, tonnes: g.area * rocks / count, grade: metal / rocks },
    answer: buildAnswer({
      id: `grade.panel.${g.name}`, value, unit: 'ozt', range, parts: ground.near[i]!.map(row => used[row]!.answer),
      sentence: `Panel ${g.name}: about ${spoken.value} oz (80 %: ${spoken.low} to ${spoken.high}) in ${rock(tonnes, units)} at ${gradeWords(middleA / meanWidth, units)} over ${length(meanWidth, units)}; ${known.sentence}`,
      method: {
        name: methodName, page: 'grade',
        working: [
          `${figure(g.area, 3)} m² × ${figure(middleA, 3)} g/t·m × ${figure(middleDensity, 3)} t/m³ / ${gramsPerOunce} g = ${figure(value, 3)} oz${inOunces ? ` (worked in metres and grams; told in ${inLength} and oz/ton)` : ''}`,
          `broken ${length(wide / count, units)} wide: ${rock(g.area * rocks / count, units)} at ${gradeWords(metal / rocks, units)}`,
        ],
      }, sources, cautions,
    }),
  }
}

/** Index of the first cut-off that a grade does not exceed: 0 when it exceeds none. */
function firstAbove(cutOffs: readonly number[], grade: number): number {
  let low = 0, high = cutOffs.length
  while (low < high) {
    const middle = (low + high) >> 1
    if (grade > cutOffs[middle]!) low = middle + 1
    else high = middle
  }
  return low
}
