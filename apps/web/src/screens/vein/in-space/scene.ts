import type { LostPart, VeinAt, VeinSheet, Workings } from '@lodebook/answers'
import { kinds } from '@lodebook/book'
import type { Enu } from '@lodebook/reckon'
import { plus } from '../../../drawing/vector.ts'
import { inGrid } from '../../workings/vein-trace.ts'

export interface Bounds3 { readonly min: Enu, readonly max: Enu }

/** Marks of one kind that are drawn alike: their places one after another, and what each opens. */
export interface MarkSet {
  readonly kind: string
  readonly name: string
  readonly shape: 'dot' | 'square' | 'diamond' | 'triangle' | 'cross'
  readonly at: readonly Enu[]
  readonly ids: readonly string[]
  readonly says: readonly string[]
}

/** A flat piece of the vein, the fault or the lost part. */
export interface Sheet3 { readonly is: 'vein' | 'fault' | 'lost', readonly name: string, readonly corners: readonly [Enu, Enu, Enu, Enu] }

/** Everything in the mine as flat arrays, metres in the grid: what both ways of drawing it share. */
export interface Scene {
  /** Rings of four corners round each passage, station by station; one array a heading. */
  readonly passages: readonly { readonly name: string, readonly rings: readonly (readonly [Enu, Enu, Enu, Enu])[] }[]
  readonly legs: readonly (readonly [Enu, Enu])[]
  readonly marks: readonly MarkSet[]
  readonly sheets: readonly Sheet3[]
  /** Twenty cases of the lost part, each by its line on the plan through the heading's level. */
  readonly lines: readonly { readonly is: 'case' | 'heading' | 'cut-off', readonly points: readonly Enu[] }[]
  readonly bounds: Bounds3
}

const shapeOf = (kind: string): MarkSet['shape'] => kind === 'sample' ? 'square' : kind === 'hazard' ? 'triangle' : kind === 'relic' ? 'diamond' : kind === 'target' || kind === 'stations' ? 'dot' : 'cross'

/** Puts together what is drawn. */
export function sceneOf(workings: Workings, vein: VeinAt | undefined, sheet: VeinSheet | undefined, lost: LostPart | undefined): Scene {
  const at = new Map(workings.stations.map(s => [s.name, s.point]))
  const passages = workings.headings.filter(h => h.sort !== 'surface').map(h => ({
    name: h.name,
    rings: h.stations.flatMap((station, i): readonly (readonly [Enu, Enu, Enu, Enu])[] => {
      const p = at.get(station), left = h.left[i], right = h.right[i], back = h.back[i], sill = h.sill[i]
      if (!p || !left || !right || !back || !sill) return []
      const corner = (side: Enu, end: Enu): Enu => [side[0] + end[0] - p[0], side[1] + end[1] - p[1], side[2] + end[2] - p[2]]
      return [[corner(left, sill), corner(right, sill), corner(right, back), corner(left, back)]]
    }),
  })).filter(h => h.rings.length > 1)
  const marks = marksOf(workings)
  const points = [...workings.stations.map(s => s.point), ...passages.flatMap(h => h.rings.flat()), ...marks.flatMap(m => m.at)]
  const bounds = boundsOf(points)
  return {
    passages, marks, bounds, legs: workings.legs.map(l => [l.a, l.b] as const),
    sheets: [...(vein ? [veinPiece(vein)] : []), ...(vein && sheet ? sheet.faults.filter(f => f.cuts).flatMap(f => faultPiece(f.name, f.plane, vein)) : [])],
    lines: lost ? linesOf(lost) : [],
  }
}

function marksOf(workings: Workings): readonly MarkSet[] {
  const sets = new Map<string, { at: Enu[], ids: string[], says: string[] }>()
  const put = (kind: string, at: Enu, id: string, says: string) => {
    const set = sets.get(kind) ?? { at: [], ids: [], says: [] }
    set.at.push(at); set.ids.push(id); set.says.push(says)
    sets.set(kind, set)
  }
  for (const s of workings.stations) put('stations', s.point, `station:${s.name}`, `Station ${s.name}`)
  for (const p of workings.placed) put(p.kind, p.point, p.entry, `${p.title}${p.tag ? `, ${p.tag}` : ''}`)
  return [...sets].map(([kind, set]) => ({ kind, name: kind === 'stations' ? 'Stations' : kinds[kind]?.plural ?? kind, shape: shapeOf(kind), ...set }))
}

function boundsOf(points: readonly Enu[]): Bounds3 {
  if (points.length === 0) return { min: [-10, -10, -5], max: [10, 10, 5] }
  const [min, max] = [[Infinity, Infinity, Infinity], [-Infinity, -Infinity, -Infinity]]
  for (const p of points) for (let i = 0; i < 3; i++) { min[i] = Math.min(min[i]!, p[i]!); max[i] = Math.max(max[i]!, p[i]!) }
  return { min: min as unknown as Enu, max: max as unknown as Enu }
}

/** The vein's plane over what was seen of it, cut off at the fault. */
function veinPiece(vein: VeinAt): Sheet3 {
  const seen = [...vein.widths.map(w => w.at), ...vein.stations.map(s => s.at)], spare = 3
  const span = (values: readonly number[]): readonly [number, number] =>
    values.length === 0 ? [-10, 10] : [Math.min(...values) - spare, Math.max(...values) + spare]
  const [a0, a1] = span(seen.map(p => p.along)), [d0, d1] = span(seen.map(p => p.down))
  const { fault } = vein
  const held = (along: number, down: number): number => {
    if (!fault || Math.abs(fault.direction.down) < 1e-6) return along
    const cut = fault.point.along + fault.direction.along * (down - fault.point.down) / fault.direction.down
    const side = Math.sign(fault.direction.along * (down - fault.point.down) - fault.direction.down * (along - fault.point.along))
    return side === 0 || side === fault.keep ? along : cut
  }
  const at = (along: number, down: number): Enu => inGrid(vein, held(along, down), down)
  return { is: 'vein', name: vein.name, corners: [at(a0, d0), at(a1, d0), at(a1, d1), at(a0, d1)] }
}

/** The fault's plane about where it cuts the vein, as high as the vein is drawn. */
function faultPiece(name: string, plane: { readonly normal: Enu, readonly point: Enu }, vein: VeinAt): readonly Sheet3[] {
  if (!vein.fault) return []
  const { normal: n } = plane, level = Math.hypot(n[0], n[1])
  if (level < 1e-6) return []
  const strike: Enu = [-n[1] / level, n[0] / level, 0], dip: Enu = [n[0] / level * n[2], n[1] / level * n[2], -level]
  const through = inGrid(vein, vein.fault.point.along, vein.fault.point.down)
  const downs = [...vein.widths.map(w => w.at.down), ...vein.stations.map(s => s.at.down)]
  const high = downs.length === 0 ? 10 : Math.max(6, (Math.max(...downs) - Math.min(...downs)) / 2 + 3)
  const at = (a: number, d: number): Enu => plus(plus(through, strike, a), dip, d)
  return [{ is: 'fault', name, corners: [at(-14, -high), at(14, -high), at(14, high), at(-14, high)] }]
}

function linesOf(lost: LostPart): Scene['lines'] {
  const heading = 'notEnough' in lost.heading ? undefined : lost.heading
  return [
    ...lost.plan.cases.map(points => ({ is: 'case' as const, points })), ...lost.section.cases.map(points => ({ is: 'case' as const, points })),
    ...(heading ? [{ is: 'heading' as const, points: [heading.from, heading.to] }] : []),
  ]
}
