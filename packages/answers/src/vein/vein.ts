import type { Entry } from '@lodebook/book'
import type { Enu, VeinPoint } from '@lodebook/reckon'
import { DegenerateError } from '@lodebook/reckon'
import { fitVeinPlane, veinFrame } from '@lodebook/reckon/structure'
import type { AttitudeReading, FittedVein, VeinFrame } from '@lodebook/reckon/structure'
import type { Answer, NotEnough } from '../answer.ts'
import { buildAnswer, mean, quantile } from '../build-answer.ts'
import type { StationPlace } from '../places/place-in-space.ts'
import { textOf } from '../read.ts'
import type { HeadingShape, VeinAt, WidthAt } from '../shapes.ts'
import type { North } from '../survey/north.ts'
import type { Survey } from '../survey/survey.ts'
import { angle, azimuth, figure, length, plural } from '../words.ts'
import type { CrewUnits } from '../words.ts'
import { cutLine, faultOf, offFault, sideOfCut } from './fault.ts'
import type { CutLine, FaultPlane } from './fault.ts'
import { besideEachOther } from './lost-part/beside.ts'
import { trueWidthOf } from './true-widths.ts'
import type { WidthContext } from './true-widths.ts'
import { attitudeOf, contactOf, usualName } from './vein-data.ts'
import type { Sited } from './vein-data.ts'

/** The vein with what later steps need of it besides the drawing. */
export interface VeinFound {
  readonly at: VeinAt
  readonly plane: FittedVein
  readonly frame: VeinFrame
  readonly fault: FaultPlane | undefined
  /** Whether a place lies on this side of the fault. */
  readonly thisSide: (sited: Sited) => boolean
  readonly widthContext: WidthContext
  /** The places behind the plane, with their doubt beside each other, and the readings, in the order of its own lists. */
  readonly touched: readonly Sited[]
  readonly read: readonly Sited[]
  /** The entries of those readings. */
  readonly readings: readonly string[]
  readonly north: North
  /** Entries that name another vein, which are left aside. */
  readonly ofOthers: readonly string[]
}

export interface VeinInput {
  readonly survey: Survey
  readonly stations: ReadonlyMap<string, StationPlace>
  readonly structures: readonly Sited[]
  readonly widths: readonly Sited[]
  readonly samples: readonly Sited[]
  readonly headings: readonly HeadingShape[]
  readonly workedOut: readonly { readonly entry: string, readonly name: string, readonly corners: readonly Enu[] }[]
  readonly units: CrewUnits
}

const source = 'Total least squares plane with each observation\'s own weight; see docs/methods/planes.md'

/** The vein as one plane on the portal's side of the fault, with true widths and its own coordinates. */
export function veinOf(input: VeinInput): VeinFound | NotEnough {
  const { survey, samples, units } = input
  // What a GPS fix and the declination do to the whole map moves the vein with everything else: it is no doubt of how the vein lies.
  const beside = besideEachOther(survey)
  const [structures, widths] = [input.structures.map(beside.place), input.widths.map(beside.place)]
  const name = usualName([...structures.map(s => vein(s.entry)), ...widths.map(s => vein(s.entry)), ...samples.map(s => vein(s.entry))])
  const ours = (s: Sited) => (vein(s.entry) ?? name) === name
  const readings = structures.filter(s => textOf(s.entry, 'feature') === 'vein' && ours(s) && attitudeOf(s.entry, survey.north))
  const touched = [...structures.filter(s => textOf(s.entry, 'feature') === 'vein' && ours(s)), ...widths.filter(ours)]
  const fault = faultOf(structures, survey.north)
  const keep = fault && (touched.reduce((sum, s) => sum + Math.sign(offFault(fault, s)), 0) >= 0 ? 1 : -1)
  const thisSide = (s: Sited) => !fault || offFault(fault, s) * keep! >= 0
  const mine = touched.filter(thisSide)
  const read = readings.filter(thisSide)

  let plane: FittedVein
  try {
    plane = fitVeinPlane({ points: mine.map(contactOf), readings: read.map((s): AttitudeReading => attitudeOf(s.entry, survey.north)!) })
  } catch (error) {
    if (!(error instanceof DegenerateError)) throw error
    return {
      notEnough: true, sentence: 'Not enough to say how the vein lies.',
      wanted: [{ kind: 'structure', why: 'one reading of strike and dip on the vein, with its place, is the least' }, { kind: 'width', why: 'every place where the vein was taped is a point on it' }], cautions: [],
    }
  }
  const frame = veinFrame(plane, plane.centroid)
  const [strike, dip] = planeAnswers(name ?? 'the vein', plane, [...mine, ...read])
  const widthContext: WidthContext = { plane, planeAnswers: [strike, dip], stations: input.stations, north: survey.north, units }
  const widthsAt = [...widths.filter(ours), ...samples.filter(ours)].filter(thisSide).flatMap((s): WidthAt[] => {
    const answer = trueWidthOf(s.entry, s.entry.kind === 'width' ? 'measured' : 'width', widthContext)
    return answer ? [{ entry: s.entry.id, at: onVein(frame, s.located.point), width: answer.value, sigma: answer.sigma, answer }] : []
  })
  const cut = fault && cutLine(fault, plane, frame)
  return {
    plane, frame, fault, thisSide, widthContext, touched: mine, read, readings: read.map(s => s.entry.id), north: survey.north,
    ofOthers: [...structures, ...widths, ...samples].filter(s => vein(s.entry) !== undefined && !ours(s)).map(s => s.entry.id),
    at: {
      name: name ?? 'the vein', strike, dip, width: widthAnswer(widthsAt, units), origin: frame.origin, alongAxis: frame.strike, downAxis: frame.dip, normal: frame.normal,
      rms: plane.rms, widths: widthsAt,
      ...(cut ? {
        fault: { name: fault.name, strike: fault.strike, dip: fault.dip, ...cut, keep: keepOf(cut, mine.map(s => onVein(frame, s.located.point))) },
      } : {}),
      ...onSection(input, frame, plane),
    },
  }
}

const vein = (entry: Entry) => textOf(entry, 'vein') ?? (entry.kind === 'structure' && textOf(entry, 'feature') === 'vein' ? textOf(entry, 'name') : undefined)

const onVein = (frame: VeinFrame, point: Enu): VeinPoint => { const { along, down } = frame.toVein(point); return { along, down } }

/** Which side of the cut line holds most of the data: the sign of the cross product with its direction. */
function keepOf(cut: CutLine, points: readonly VeinPoint[]): 1 | -1 {
  return points.reduce((sum, p) => sum + sideOfCut(cut, p), 0) >= 0 ? 1 : -1
}

/** A doubt of a degree or more, said beside the angle: the middle 80 %. */
const within = (sigma: number | undefined) => sigma === undefined || sigma * 1.2816 < 1 ? '' : ` ± ${angle(sigma * 1.2816)}`

function planeAnswers(name: string, plane: FittedVein, used: readonly Sited[]): readonly [Answer, Answer] {
  const from = used.map(s => s.entry.id)
  const method = {
    name: 'weighted plane through places and readings', page: 'planes',
    working: [`strike ${plane.strike.toFixed(1)}°, dip ${plane.dip.toFixed(1)}°, misfit ${plane.rms.toFixed(2)} m`, `the vein swings ±${plane.unevenness.toFixed(2)} m and ±${plane.swing.toFixed(1)}° about it`],
  }
  const spread = (value: number, sigma: number | undefined) =>
    sigma === undefined ? {} : { range: { low: value - 1.2816 * sigma, high: value + 1.2816 * sigma, confidence: 0.8, because: ['scatter of the readings', 'how far apart the places are'] } }
  return [
    buildAnswer({
      id: 'vein.strike', sentence: `${name} strikes ${azimuth(plane.strike)}${within(plane.doubt?.strike)} and dips ${angle(plane.dip)}${within(plane.doubt?.dip)} to the right of that, from ${plural(from.length, 'observation')}.`,
      value: plane.strike, unit: '°', method, sources: [source], from, ...spread(plane.strike, plane.doubt?.strike),
    }),
    buildAnswer({
      id: 'vein.dip', sentence: `${name} dips ${angle(plane.dip)} toward ${azimuth(plane.dipDirection)}.`,
      value: plane.dip, unit: '°', method, sources: [source], from, ...spread(plane.dip, plane.doubt?.dip),
    }),
  ]
}

function widthAnswer(widths: readonly WidthAt[], units: CrewUnits): Answer | NotEnough {
  if (widths.length === 0) {
    return { notEnough: true, sentence: 'No width of the vein has been taped yet.', wanted: [{ kind: 'width', why: 'tonnes hang on it' }], cautions: [] }
  }
  const sorted = widths.map(w => w.width).sort((a, b) => a - b)
  const middle = mean(sorted)
  return buildAnswer({
    id: 'vein.width', sentence: `True width ${length(middle, units)} on average over ${plural(widths.length, 'place')}; four in five lie between ${length(quantile(sorted, 0.1), units)} and ${length(quantile(sorted, 0.9), units)}.`,
    value: middle, unit: 'm', range: { low: quantile(sorted, 0.1), high: quantile(sorted, 0.9), confidence: 0.8, because: ['the vein swells and pinches'] },
    method: { name: 'plain mean of true widths', page: 'true-width', working: [`${figure(middle, 3)} m over ${widths.length} places`] }, parts: widths.map(w => w.answer),
  })
}

/** Headings, stations and worked-out ground near the vein, in its coordinates. */
function onSection({ headings, survey, workedOut }: VeinInput, frame: VeinFrame, plane: FittedVein): Pick<VeinAt, 'headings' | 'stations' | 'workedOut'> {
  const near = 3 + 3 * plane.unevenness
  const off = (point: Enu) => frame.toVein(point).off
  return {
    headings: headings.filter(h => h.sill.some(p => Math.abs(off(p)) < near))
      .map((h) => {
        const line = (points: readonly Enu[]) => points.map(p => onVein(frame, p))
        return { name: h.name, back: line(h.back), sill: line(h.sill), left: line(h.left), right: line(h.right) }
      }),
    stations: [...survey.stations].map(([name, s]) => ({ name, at: onVein(frame, s.point), off: off(s.point) })).filter(s => Math.abs(s.off) < near),
    workedOut: workedOut.filter(w => w.corners.length >= 3).map(w => ({ entry: w.entry, name: w.name, corners: w.corners.map(p => onVein(frame, p)) })),
  }
}
