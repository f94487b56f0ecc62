import type { PlacedEntry, VeinAt, Workings } from '@lodebook/answers'
import { kinds } from '@lodebook/book'
import type { Enu } from '@lodebook/reckon'
import { always } from '../../drawing/drawing.tsx'
import type { Thing } from '../../drawing/drawing.tsx'
import { symbolOf } from '../../drawing/symbols.tsx'
import { boundsOf } from '../../drawing/view.ts'
import type { Bounds } from '../../drawing/view.ts'
import { decimal } from '../../words/number.ts'
import { onPlan, onSection, sectionAzimuth } from './section-line.ts'

/** Something that stands at one place in the mine and is drawn on plan and section alike. */
export interface Standing { readonly id: string, readonly at: Enu, readonly thing: Omit<Thing, 'at'> }

export interface SheetModel {
  readonly sectionAzimuth: number
  /** The azimuth to the right on the plan. */
  readonly planAzimuth: number
  readonly level: number
  readonly plan: Bounds
  readonly section: Bounds
}

/** Sheets show kinds that can be switched on and off, with how many there are. Those not named here are shown at first. */
export const hiddenAtFirst: readonly string[] = ['structure', 'width', 'air', 'ground', 'photo', 'density']

const softBeyond = 1.5 // metres of standard deviation beyond which a place is drawn soft

/** Everything on the sheet that can be picked: stations, named headings, and placed entries of the kinds shown. */
export function standing(workings: Workings, shown: ReadonlySet<string>): readonly Standing[] {
  const stations = !shown.has('stations') ? [] : workings.stations.map((s): Standing => {
    const tied = workings.placed.some(p => p.kind === 'tie' && p.title.endsWith(s.name))
    return { id: `station:${s.name}`, at: s.point, thing: {
      id: `station:${s.name}`, symbol: tied ? 'tie' : 'station', label: s.name, weight: tied ? 60 : 40, ...(tied ? {} : { labelFrom: 4 }),
      says: `Station ${s.name}, ${decimal(s.point[0], 1)} east, ${decimal(s.point[1], 1)} north, elevation ${decimal(s.point[2], 1)}` } }
  })
  const headings = workings.headings.flatMap((h): Standing[] => {
    const at = h.sill[Math.floor(h.sill.length / 2)] ?? h.left[0]
    return at ? [{ id: `entry:${h.entry}`, at, thing: { id: `entry:${h.entry}`, symbol: 'name', label: h.name, weight: 80, says: `Heading ${h.name}` } }] : []
  })
  const placed = workings.placed.filter(p => shown.has(p.kind)).map((p): Standing => ({ id: `entry:${p.entry}`, at: p.point, thing: {
    id: `entry:${p.entry}`, symbol: symbolOf(p.kind, p.tag), label: labelOf(p), weight: p.kind === 'hazard' ? always : p.kind === 'relic' ? 30 : p.kind === 'sample' ? 20 : 10, ...(p.kind === 'sample' ? { labelFrom: 9 } : p.kind === 'target' ? { labelFrom: 16 } : {}),
    says: `${p.title}${p.tag ? `, ${p.tag}` : ''}, ${p.how}`, soft: p.kind !== 'hazard' && Math.hypot(p.sigma[0], p.sigma[1], p.sigma[2]) > softBeyond } }))
  const order = (s: Standing): number => s.thing.weight >= always ? 2 : s.thing.symbol === 'sample' ? 1 : 0 // what is drawn last lies on top
  return [...headings, ...stations, ...placed.sort((a, b) => order(a) - order(b))]
}

/** What is written beside a mark: a bag's number, a hazard in words. Little is written beside what there are hundreds of. */
function labelOf(p: PlacedEntry): string {
  if (p.kind === 'hazard') return p.tag
  if (p.kind === 'sample' || p.kind === 'relic' || p.kind === 'target') return p.title.replace(new RegExp(`^${kinds[p.kind]!.label} `), '').split(',')[0]!
  return ''
}

/** How the sheet lies: which way the section runs, the level the vein is traced at, and the room each view needs. */
export function sheetModel(workings: Workings, vein: VeinAt | undefined, northUp: boolean): SheetModel {
  const along = sectionAzimuth(workings, vein), planAzimuth = northUp ? 90 : along
  const points: readonly Enu[] = [
    ...workings.stations.map(s => s.point),
    ...workings.headings.flatMap(h => [...h.left, ...h.right, ...h.back, ...h.sill]),
    ...workings.placed.map(p => p.point),
  ]
  const sills = workings.headings.flatMap(h => h.sill.map(p => p[2])).sort((a, b) => a - b)
  const nowhere: Bounds = { minX: -10, maxX: 10, minY: -10, maxY: 10 }
  return {
    sectionAzimuth: along, planAzimuth,
    level: sills[Math.floor(sills.length / 2)] ?? points[0]?.[2] ?? 0,
    plan: boundsOf(points.map(p => onPlan(p, planAzimuth))) ?? nowhere,
    section: boundsOf(points.map(p => onSection(p, along))) ?? nowhere,
  }
}
