import { DegenerateError } from '@lodebook/reckon'
import type { Enu } from '@lodebook/reckon'
import { crossSheet, dipDirectionOf, doubtfulPlane, fitVeinPlane, lostPartFamily, planSheet, shortestHeading, thinned } from '@lodebook/reckon/structure'
import type { FarSide, FittedVein, LostPartFamily } from '@lodebook/reckon/structure'
import type { Answer, NotEnough } from '../answer.ts'
import type { Assume } from '../assumptions.ts'
import { buildAnswer } from '../build-answer.ts'
import { textOf } from '../read.ts'
import type { HeadingShape, LostHeading, LostPart } from '../shapes.ts'
import type { Survey } from '../survey/survey.ts'
import { figure, length } from '../words.ts'
import type { CrewUnits } from '../words.ts'
import { faultOf, offFault } from './fault.ts'
import type { FaultPlane } from './fault.ts'
import { besideEachOther } from './lost-part/beside.ts'
import type { Beside } from './lost-part/beside.ts'
import { alreadyCrossed, facesOf, headingTold, levelHeadings, nearestFaces } from './lost-part/headings.ts'
import type { Face } from './lost-part/headings.ts'
import { lostEdge, lostPartOn } from './lost-part/on-sheet.ts'
import { bySide } from './lost-part/sides.ts'
import { slipEvidenceOf } from './lost-part/slip-evidence-of.ts'
import type { EvidenceFound } from './lost-part/slip-evidence-of.ts'
import { planeOf, tellFamily } from './lost-part/told.ts'
import type { Told } from './lost-part/told.ts'
import type { VeinFound } from './vein.ts'
import { attitudeOf, contactOf } from './vein-data.ts'
import type { Sited } from './vein-data.ts'

export interface LostPartInput {
  readonly vein: VeinFound
  readonly survey: Survey
  readonly structures: readonly Sited[]
  readonly widths: readonly Sited[]
  readonly headings: readonly HeadingShape[]
  readonly assume: Assume
  readonly units: CrewUnits
}

const seed = 1907
const handedOn = 200 // cases kept for drawing; every figure is of all of them
const [leastReach, mostReach] = [10, 80] // metres drawn past the fault
const farOff = 3 // times the shortest heading: from further off nobody would drive
const clash = 3 // standard deviations between pieces of evidence
const page = 'lost-part'

const newHeadings = 'A new heading needs someone who knows ground support, air on the way, permits and, where the law asks for them, licensed people. This tells where rock may carry the vein, not whether it may be driven.'
const model = 'Reckoned for one straight fault that moved once, without turning or dragging its sides, and for a vein that goes on as it lies here.'

/** Where the vein goes on past the fault, how to reach it, and how sure that is: from what the book says of vein, fault and slip. */
export function lostPartOf(input: LostPartInput): LostPart | NotEnough {
  const { vein, survey, units } = input
  const beside = besideEachOther(survey)
  const structures = input.structures.map(beside.place)
  const fault = faultOf(structures, survey.north)
  if (!fault) return notEnough('No fault has been read, so nothing says that the vein is lost.', [{ kind: 'structure', why: 'strike and dip of the fault, with its place, is the least' }])
  const far: FarSide = offFault(fault, { ...structures[0]!, located: { ...structures[0]!.located, point: vein.frame.origin } }) >= 0 ? -1 : 1
  const name = vein.at.name
  const touched = [...structures.filter(({ entry }) => textOf(entry, 'feature') === 'vein' && (textOf(entry, 'name') ?? name) === name),
    ...input.widths.map(beside.place).filter(({ entry }) => textOf(entry, 'vein') === name)]
  const { near, beyond } = bySide(fault.plane, far, touched)
  const plane = veinHere(near, survey) ?? vein.plane
  const found = slipEvidenceOf({ vein: plane, veinName: name, fault, far, structures, beyond, north: survey.north, assume: input.assume, units })
  if (found.none) return notEnough(`Nothing tells yet how ${fault.name} moved, so ${name} may go on anywhere past it.`, found.wanted)
  try {
    const known = doubtfulPlane(plane)
    const sigma = Math.hypot(known.sigma ?? 0, surveyDoubt(plane, fault.plane, survey, beside))
    const family = lostPartFamily({
      vein: { ...known, sigma, unevenness: plane.unevenness }, fault: doubtfulPlane(fault.plane), far, evidence: found.evidence, seed,
    })
    return told(input, { plane, fault, far, found, family })
  } catch (error) {
    if (!(error instanceof DegenerateError)) throw error
    return error.reason === 'parallel'
      ? notEnough(`${name} and ${fault.name} run parallel as read: they never meet, and no slip can be worked out.`, [{ kind: 'structure', why: 'more readings of the fault where it cuts the vein' }])
      : notEnough(`What is written of ${fault.name} and its movement cannot all be so.`, [{ kind: 'structure', why: 'read grooves, sense and markers again: one of them is wrong' }])
  }
}

const notEnough = (sentence: string, wanted: NotEnough['wanted']): NotEnough => ({ notEnough: true, sentence, wanted, cautions: [newHeadings] })

/** The vein this side of the fault, weighed by how well its places are known beside each other; undefined when they do not make a plane. */
function veinHere(near: readonly Sited[], { north }: Survey): FittedVein | undefined {
  const readings = near.filter(({ entry }) => entry.kind === 'structure').flatMap(({ entry }) => { const read = attitudeOf(entry, north); return read ? [read] : [] })
  try {
    return fitVeinPlane({ points: near.map(contactOf), readings })
  } catch (error) {
    if (error instanceof DegenerateError) return undefined
    throw error
  }
}

/** How far the survey may have parted the stations at the fault from the places on the vein, square to the vein: no number of places takes that away. */
function surveyDoubt(vein: FittedVein, { centroid }: FittedVein, { stations }: Survey, beside: Beside): number {
  const away = (p: Enu) => Math.hypot(p[0] - centroid[0], p[1] - centroid[1], p[2] - centroid[2])
  const [name] = [...stations].reduce((best, next) => away(next[1].point) < away(best[1].point) ? next : best)
  return Math.hypot(...beside.station(name)!.map((value, k) => value * vein.normal[k]!))
}

interface Reckoning {
  readonly plane: FittedVein
  readonly fault: FaultPlane
  readonly far: FarSide
  readonly found: EvidenceFound
  readonly family: LostPartFamily
}

function told(input: LostPartInput, { plane, fault, found, family }: Reckoning): LostPart {
  const { vein, survey, headings, units } = input
  const told = tellFamily(family, plane, fault.plane, { vein: vein.at.name, fault: fault.name }, units)
  const { separation } = told
  const evidence = [...found.answers, fault.strike, fault.dip, vein.at.strike, vein.at.dip]
  const apart = apartAnswer(told, family, found, evidence, units)
  const faces = separation.tells === 'nothing' ? [] : nearestFaces(family, facesOf(headings, survey))
  const level = levelHeadings(family, faces).filter((way, _, [first]) => way.length <= farOff * first!.length)
  const tell = (way: Parameters<typeof headingTold>[1]) => headingTold(family, way, units, [apart])
  const best = level[0]
  const noHeading = notEnough(
    separation.tells === 'nothing' ? 'No heading can be told while the hand is not known.' : 'No station underground has a straight heading that meets it with four chances in five.', found.wanted)
  const heading = best ? tell(best) : noHeading
  const drawn = { family: { ...family, draws: thinned(family.draws, handedOn) }, known: { vein: planeOf(plane), fault: planeOf(fault.plane) } }
  const reach = Math.min(mostReach, Math.max(leastReach, 3 * Math.max(Math.abs(separation.low), Math.abs(separation.high))))
  const through = best?.point ?? fault.plane.centroid
  const around = { point: through, reach }
  return {
    sentence: best ? `${told.sentence} ${(heading as LostHeading).length.sentence}` : told.sentence,
    vein: vein.at.name, fault: fault.name, tells: separation.tells, rests: found.rests, apart, hand: told.hand, handChance: told.handChance,
    wanted: found.wanted, heading,
    shortest: best ? freely(family, best, tell) ?? noHeading : noHeading,
    faces: level.slice(1).map(tell),
    plan: lostPartOn(drawn, planSheet(through[2]), around),
    section: lostPartOn(drawn, crossSheet(through, dipDirectionOf(plane.strike)), around),
    edge: lostEdge(drawn.family, vein.frame, around),
    ...drawn, evidence: [apart, ...evidence], cautions: cautionsOf(input, { fault, found, family }, told),
  }
}

function freely(family: LostPartFamily, { station, point }: Face, tell: (way: Parameters<typeof headingTold>[1]) => LostHeading): LostHeading | undefined {
  const way = shortestHeading(family, point)
  return way && tell({ ...way, station, point })
}

function apartAnswer(
  { separation, flat, sentence, hand }: Told, family: LostPartFamily, { amount }: EvidenceFound, parts: readonly Answer<unknown>[], units: CrewUnits,
): Answer {
  return buildAnswer({
    id: 'lost-part.apart', sentence, value: separation.median, unit: 'm',
    range: { low: separation.low, high: separation.high, confidence: 0.8, because: ['where the markers were touched', 'how vein, fault and markers lie', 'the line and the length of the slip'] },
    method: {
      name: 'the vein carried by every slip the evidence allows', page,
      working: [
        `n · (x − p − s) = 0 for ${family.draws.length} slips s, seed ${seed}`,
        `one in ten below ${separation.low.toFixed(2)} m, half below ${separation.median.toFixed(2)} m, nine in ten below ${separation.high.toFixed(2)} m; positive is ${flat ? 'up' : 'to the side the vein dips to'}; mostly ${hand}`,
        `${family.tried} slips tried, worth ${Math.round(family.effective)} even ones; evidence apart by ${family.misfit.toFixed(1)} standard deviations`,
      ],
    },
    sources: ['Plane geometry; that a separation never tells the slip: GSA Bulletin 58, 1947, 79 (abstract read)'],
    from: parts.flatMap(part => part.from), parts,
    assumed: amount === undefined ? [] : [{ ...amount, why: `${amount.why}; one in ten below ${length(amount.low, units, 2)}, one in ten above ${length(amount.high, units, 2)}` }],
  })
}

type Cautioned = Pick<Reckoning, 'fault' | 'found' | 'family'>

function cautionsOf({ headings, survey, structures }: LostPartInput, { fault, found, family }: Cautioned, { separation }: Told): readonly string[] {
  const crossed = alreadyCrossed({ ...family, draws: thinned(family.draws, 400) }, headings, survey)
  const named = structures.filter(({ entry }) => textOf(entry, 'feature') === 'fault').map(({ entry }) => textOf(entry, 'name') ?? fault.name)
  const others = [...new Set(named)].filter(n => n !== fault.name)
  const markers = found.evidence.markers ?? []
  return [
    newHeadings, model,
    ...(separation.tells === 'where' ? [] : [`What would tell: ${found.wanted.map(w => w.why).join('; ')}.`]),
    ...(markers.length === 0 && found.amount ? ['No marker tells how far the fault moved: the distance rests on the assumption "slip of the fault".'] : []),
    ...(found.evidence.grooves && markers.length < 2 && !found.evidence.vector ? ['Grooves show the last movement only; if the fault moved before in another line, the vein lies elsewhere.'] : []),
    ...(crossed.share >= 0.05 ? [`In ${figure(100 * crossed.share, 2)} of 100 cases it crosses ground already driven past the fault (${crossed.names.join(', ')}): look at those walls again first.`] : []),
    ...(family.misfit > clash ? [`The pieces of evidence disagree by ${figure(family.misfit, 2)} standard deviations: one of them is likely wrong.`] : []),
    ...(others.length > 0 ? [`Other faults were read and are left out: ${others.join(', ')}.`] : []),
  ]
}
