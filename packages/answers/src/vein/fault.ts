import type { VeinPoint } from '@lodebook/reckon'
import { DegenerateError } from '@lodebook/reckon'
import { fitVeinPlane, planeIntersection, vectorOf } from '@lodebook/reckon/structure'
import type { FittedVein, VeinFrame } from '@lodebook/reckon/structure'
import type { Answer } from '../answer.ts'
import { buildAnswer } from '../build-answer.ts'
import { textOf } from '../read.ts'
import type { North } from '../survey/north.ts'
import { angle, azimuth, plural } from '../words.ts'
import { attitudeOf, contactOf, dot, usualName } from './vein-data.ts'
import type { Sited } from './vein-data.ts'

/** The fault with most readings, as a plane. */
export interface FaultPlane {
  readonly name: string
  readonly plane: FittedVein
  readonly strike: Answer
  readonly dip: Answer
}

/** Fits the fault that the crew has read most often; undefined when none has been read. */
export function faultOf(structures: readonly Sited[], north: North): FaultPlane | undefined {
  const all = readOf(structures, north)
  const name = usualName(all.map(nameOf)) ?? 'the fault'
  const own = all.filter(s => (nameOf(s) ?? name) === name)
  return own.length === 0 ? undefined : fitted(name, own, north)
}

/** Fits every fault that was read by name; readings without a name belong to the one read most often. */
export function faultsNamed(structures: readonly Sited[], north: North): readonly FaultPlane[] {
  const all = readOf(structures, north)
  const usual = usualName(all.map(nameOf)) ?? 'the fault'
  const names = [...new Set(all.map(s => nameOf(s) ?? usual))]
  return names.map(name => fitted(name, all.filter(s => (nameOf(s) ?? usual) === name), north))
}

const nameOf = (s: Sited) => textOf(s.entry, 'name')
const readOf = (structures: readonly Sited[], north: North) => structures.filter(s => textOf(s.entry, 'feature') === 'fault' && attitudeOf(s.entry, north))

function fitted(name: string, own: readonly Sited[], north: North): FaultPlane {
  const plane = fitVeinPlane({ points: own.map(contactOf), readings: own.map(s => attitudeOf(s.entry, north)!) })
  const from = own.map(s => s.entry.id)
  const method = { name: 'weighted plane through places and readings', page: 'planes' }
  return {
    name, plane,
    strike: buildAnswer({ id: 'vein.fault.strike', sentence: `${name} strikes ${azimuth(plane.strike)}, from ${plural(own.length, 'reading')}.`, value: plane.strike, unit: '°', method, from }),
    dip: buildAnswer({ id: 'vein.fault.dip', sentence: `${name} dips ${angle(plane.dip)}.`, value: plane.dip, unit: '°', method, from }),
  }
}

/** Signed distance of a point from the fault, along its upward normal. */
export const offFault = (fault: FaultPlane, { located }: Sited): number => {
  const { centroid, normal } = fault.plane
  return dot(normal, [located.point[0] - centroid[0], located.point[1] - centroid[1], located.point[2] - centroid[2]])
}

export interface CutLine { readonly point: VeinPoint, readonly direction: VeinPoint }

/** On which side of the line a place lies: the sign of direction × (place − line). */
export const sideOfCut = ({ point, direction }: CutLine, p: VeinPoint): number =>
  Math.sign(direction.along * (p.down - point.down) - direction.down * (p.along - point.along))

/** The line where the fault cuts the vein, in the vein's coordinates; undefined when they are parallel. */
export function cutLine(fault: FaultPlane, vein: FittedVein, frame: VeinFrame): CutLine | undefined {
  try {
    const line = vectorOf(planeIntersection(vein, fault.plane))
    const direction = { along: dot(line, frame.strike), down: dot(line, frame.dip) }
    // From the vein's origin, square to the line within the vein, out to the fault.
    const square = { along: -direction.down, down: direction.along }
    const step = frame.toGrid(square)
    const gap = (p: typeof step) => dot(fault.plane.normal, [p[0] - fault.plane.centroid[0], p[1] - fault.plane.centroid[1], p[2] - fault.plane.centroid[2]])
    const t = gap(frame.origin) / (gap(frame.origin) - gap(step))
    return { point: { along: square.along * t, down: square.down * t }, direction }
  } catch (error) {
    if (error instanceof DegenerateError) return undefined
    throw error
  }
}
