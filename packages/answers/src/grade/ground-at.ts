import type { Entry } from '@lodebook/book'
import { FieldGround } from '@lodebook/reckon/estimate'
import type { VeinPoint } from '@lodebook/reckon'
import type { Assume } from '../assumptions.ts'
import { isLocated, locate } from '../places/place-in-space.ts'
import type { PlaceContext } from '../places/place-in-space.ts'
import { placesOf, textOf } from '../read.ts'
import type { Known } from './shapes.ts'
import type { VeinFound } from '../vein/vein.ts'
import { length } from '../words.ts'
import type { CrewUnits } from '../words.ts'
import { drawnGround, groundPanels } from './panels.ts'
import type { Ground } from './panels.ts'
import { boxed, sidesShown } from './rings.ts'

/** All that hangs on places alone: panels, those the crew drew, how each is known, and the sites of the field. A new assay leaves it standing. */
export interface GroundAt {
  readonly panels: readonly Ground[]
  readonly drawn: readonly (Ground & { readonly entry: string })[]
  /** Of panels, then of drawn. */
  readonly known: readonly Known[]
  /** Rows of the samples nearest to each, nearest first, panels then drawn. */
  readonly near: readonly (readonly number[])[]
  /** For each true width its site. */
  readonly widthSites: readonly number[]
  /** Sites: the samples', then those of places where only the width was taped; blocks: panels, then drawn. */
  readonly field: FieldGround
  /** Rings of ground that has been taken. */
  readonly taken: readonly (readonly VeinPoint[])[]
}

export interface GroundAtInput {
  readonly vein: VeinFound
  readonly samples: readonly { readonly entry: string, readonly at: VeinPoint }[]
  readonly drawn: readonly Entry[]
  readonly context: PlaceContext
  readonly assume: Assume
  readonly units: CrewUnits
}

const nearest = 5
/** An opening further than this beside a panel shows nothing of it. Common practice, no source. */
const shownWithin = 8

export function groundAt({ vein, samples, drawn, context, assume, units }: GroundAtInput): GroundAt {
  const places = samples.map(s => s.at)
  const ring = (out: readonly VeinPoint[], home: readonly VeinPoint[]) => [...out, ...[...home].reverse()]
  const taken = [...vein.at.workedOut.map(w => w.corners),
    ...vein.at.headings.flatMap(h => [ring(h.back, h.sill), ring(h.left, h.right)])].filter(r => r.length >= 3)
  const panels = groundPanels({ samples: places, reach: assume('reach of a sample').value, size: assume('panel size').value, taken, cut: vein.at.fault })
  const own = drawn.flatMap((entry) => {
    const corners = placesOf(entry, 'corners').map(place => locate(place, context))
    if (places.length === 0 || corners.length < 3 || !corners.every(isLocated)) return []
    const on = corners.map((c) => { const { along, down } = vein.frame.toVein(c.point); return { along, down } })
    const made = drawnGround(textOf(entry, 'name') ?? 'drawn', entry.id, on, { samples: places, taken, cut: vein.at.fault })
    return made ? [{ ...made, entry: entry.id }] : []
  })
  const all = [...panels, ...own], rings = taken.map(boxed)
  const row = new Map(samples.map((s, i) => [s.entry, i])), others = vein.at.widths.filter(w => !row.has(w.entry))
  others.forEach((w, i) => row.set(w.entry, samples.length + i))
  return {
    panels, drawn: own, taken,
    known: all.map(g => knownFrom(sidesShown(rings, g.centre, shownWithin), g.nearest, units)),
    widthSites: vein.at.widths.map(w => row.get(w.entry)!),
    near: all.map(g => nearestRows(places, g.centre)),
    field: new FieldGround(
      [...samples.map(s => ({ key: s.entry, points: [s.at] })), ...others.map(w => ({ key: w.entry, points: [w.at] }))],
      all.map(g => ({ key: g.key, points: g.points }))),
  }
}

/** The old words: shown on three sides or more, on two, on one or none. Mining men's usage about 1900 to 1940 (from memory); no reporting code. */
function knownFrom(sides: number, metres: number, units: CrewUnits): Known {
  const word = sides >= 3 ? 'positive' : sides === 2 ? 'probable' : 'possible'
  const shown = sides === 0 ? 'no opening shows it on any side' : `openings show the vein on ${sides === 1 ? 'one side' : `${['', '', 'two', 'three', 'all four'][sides]!} sides`}`
  return { word, sides, sentence: `${word} in the old sense: ${shown} within ${length(shownWithin, units, 2)}; the nearest sample is ${length(metres, units, 2)} away.` }
}

function nearestRows(places: readonly VeinPoint[], to: VeinPoint): readonly number[] {
  const rows: number[] = [], distances: number[] = []
  places.forEach((p, i) => {
    const d = (p.along - to.along) ** 2 + (p.down - to.down) ** 2
    if (rows.length === nearest && d >= distances.at(-1)!) return
    let at = rows.length
    while (at > 0 && distances[at - 1]! > d) at--
    rows.splice(at, 0, i)
    distances.splice(at, 0, d)
    if (rows.length > nearest) { rows.pop(); distances.pop() }
  })
  return rows
}
