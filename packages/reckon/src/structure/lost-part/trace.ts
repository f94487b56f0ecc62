import { InputError } from '../../core/index.ts'
import type { Degrees, Enu } from '../../core/index.ts'
import { checkedPoint } from '../spread.ts'
import { add, cross, dot, length, scaled, subtract } from '../vector.ts'
import type { LostPartDraw, LostPartFamily } from './lost-part-family.ts'

/** A flat drawing in space: two unit vectors square to each other, from an origin. */
export interface Sheet { readonly origin: Enu, readonly across: Enu, readonly up: Enu }
/** A place on a sheet: along `across` and `up` from its origin. */
export type SheetPoint = readonly [across: number, up: number]

/** A straight line on a sheet. With `ends` it begins at its point and runs that way only; otherwise it runs both ways. */
export interface SheetLine { readonly point: SheetPoint, readonly direction: SheetPoint, readonly ends: boolean }

/** The plan at a level: east across, north up. */
export const planSheet = (up: number): Sheet => ({ origin: [0, 0, up], across: [1, 0, 0], up: [0, 1, 0] })
/** An upright cross section through a point, looking so that `azimuth` runs to the right. */
export function crossSheet(through: Enu, azimuth: Degrees): Sheet {
  checkedPoint(through, 'through')
  if (!Number.isFinite(azimuth)) throw new InputError('azimuth', azimuth, 'an azimuth in degrees')
  const turn = azimuth * Math.PI / 180
  return { origin: through, across: [Math.sin(turn), Math.cos(turn), 0], up: [0, 0, 1] }
}
export const onSheet = ({ origin, across, up }: Sheet, point: Enu): SheetPoint => [dot(subtract(point, origin), across), dot(subtract(point, origin), up)]
export const fromSheet = ({ origin, across, up }: Sheet, [x, y]: SheetPoint): Enu => add(origin, add(scaled(across, x), scaled(up, y)))

const parallelSine = 1e-9 // as far as lines on a drawing go

/** The lines in which a sheet cuts the continuations, each from the fault onward. Draws that the sheet does not cut so are left out. */
export function tracesOn({ draws, far }: LostPartFamily, sheet: Sheet): readonly SheetLine[] {
  return draws.flatMap((draw): SheetLine[] => {
    const vein = cutBy(sheet, draw.normal, draw.point)
    const fault = cutBy(sheet, draw.fault.normal, draw.fault.point)
    const sine = vein.a * fault.b - vein.b * fault.a
    const size = Math.hypot(vein.a, vein.b)
    if (size <= parallelSine || Math.abs(sine) <= parallelSine * size) return []
    const point: SheetPoint = [(vein.k * fault.b - vein.b * fault.k) / sine, (vein.a * fault.k - vein.k * fault.a) / sine]
    const onward = Math.sign(far * (-vein.b * fault.a + vein.a * fault.b))
    return [{ point, direction: [-vein.b / size * onward, vein.a / size * onward], ends: true }]
  })
}

/** a x + b y = k of a plane on a sheet. */
function cutBy({ origin, across, up }: Sheet, normal: Enu, point: Enu) {
  return { a: dot(normal, across), b: dot(normal, up), k: dot(normal, subtract(point, origin)) }
}

/** The edges of the continuations, where the fault cuts them off, seen square to a sheet such as the vein's own plane. */
export function edgesOn({ draws }: LostPartFamily, sheet: Sheet): readonly SheetLine[] {
  return draws.flatMap((draw): SheetLine[] => {
    const edge = edgeOf(draw)
    if (!edge) return []
    const [x, y] = [dot(edge.direction, sheet.across), dot(edge.direction, sheet.up)]
    const size = Math.hypot(x, y)
    return size <= parallelSine ? [] : [{ point: onSheet(sheet, edge.point), direction: [x / size, y / size], ends: false }]
  })
}

/** The line in which one continuation meets the fault; undefined when they are parallel. */
export function edgeOf({ normal, point, fault }: LostPartDraw): { readonly point: Enu, readonly direction: Enu } | undefined {
  const line = cross(normal, fault.normal)
  const size = length(line)
  if (size <= parallelSine) return undefined
  // Down the continuation, square to the line, out to the fault.
  const down = cross(line, normal)
  const gap = dot(fault.normal, subtract(fault.point, point)) / dot(fault.normal, down)
  return { point: add(point, scaled(down, gap)), direction: scaled(line, 1 / size) }
}

/** The line in which a sheet cuts a plane; undefined when it does not. It runs both ways. */
export function planeOnSheet(sheet: Sheet, plane: { readonly normal: Enu, readonly point: Enu }): SheetLine | undefined {
  const { a, b, k } = cutBy(sheet, plane.normal, plane.point)
  const size = Math.hypot(a, b)
  if (size <= parallelSine) return undefined
  return { point: [a * k / (size * size), b * k / (size * size)], direction: [-b / size, a / size], ends: false }
}
