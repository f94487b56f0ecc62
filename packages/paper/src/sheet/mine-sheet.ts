import type { OnSheet, View, Workings } from '@lodebook/answers'
import type { Enu } from '@lodebook/reckon'
import { placeLabels } from './place-labels.ts'
import { a4, edge, fittingScale, marginWide, onPaper } from './paper-scale.ts'
import { escaped, mm, sheetSvg } from './svg-parts.ts'

export interface MineSheetInput {
  readonly workings: Workings
  readonly view: View
  /** The vein's line on this view, if there is one to draw: grid points. */
  readonly vein?: readonly Enu[]
  /** Named lines of sections, for a plan. */
  readonly sectionLines?: readonly { readonly name: string, readonly from: Enu, readonly to: Enu }[]
  readonly title: string
  readonly date: string
  readonly surveyors: string
  readonly unit: 'm' | 'ft'
  /** One to so many; the largest drafting scale that fits when left out. */
  readonly scale?: number
  readonly paper?: { readonly width: number, readonly height: number }
  readonly ellipses?: boolean
}

export interface MineSheet {
  readonly svg: string
  readonly scale: number
  /** Whether all of it lies inside the sheet. */
  readonly whole: boolean
}

const nameSize = 2.6, nameWide = 1.45, always = 100

/**
 * A plan or section as an SVG in true millimetres: a metre of the mine is 1000 / scale millimetres of paper, along and up alike. Names never cover
 * each other: those for which there is no room are left off, hazards first in line.
 */
export function mineSheet(input: MineSheetInput): MineSheet {
  const { workings, view, paper = a4 } = input
  const stations = workings.stations.flatMap((s) => { const at = view.project(s.point); return at ? [{ ...s, at }] : [] })
  const placed = workings.placed.filter(p => p.kind === 'hazard' || p.kind === 'sample').flatMap(
    (p) => { const at = view.project(p.point); return at ? [{ ...p, at }] : [] })
  const sides = view.is === 'plan' ? ['left', 'right'] as const : ['back', 'sill'] as const
  const outlines = [...workings.headings.map(h => ({ h, dashed: h.rough })), ...workings.paced.map(h => ({ h, dashed: true }))]
  const shapes = outlines.map(({ h, dashed }) => ({ a: h[sides[0]], b: h[sides[1]], dashed }))
    .map(({ a, b, dashed }) => ({ points: projected(view, [...a, ...[...b].reverse()]), dashed })).filter(s => s.points.length >= 3)
  const all = [...stations.map(s => s.at), ...placed.map(p => p.at), ...shapes.flatMap(s => s.points)]
  const box = boxOf(all), wide = paper.width - 2 * edge - marginWide, high = paper.height - 2 * edge
  const fits = fittingScale(box.maxX - box.minX, box.maxY - box.minY, wide - 16, high - 16), scale = input.scale ?? fits
  const mid = { x: edge + wide / 2, y: edge + high / 2 }, cx = (box.minX + box.maxX) / 2, cy = (box.minY + box.maxY) / 2
  const to = (p: OnSheet): OnSheet => ({ x: mid.x + onPaper(p.x - cx, scale), y: mid.y - onPaper(p.y - cy, scale) })
  const line = (points: readonly OnSheet[], close = false) => points.map(to).map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${mm(x)} ${mm(y)}`).join('') + (close ? 'Z' : '')

  const wanted = [
    ...stations.map(s => ({ id: `s:${s.name}`, text: s.name, ...to(s.at), reach: 1.1, weight: 40 })),
    ...placed.filter(p => p.kind === 'hazard').map(p => ({ id: `h:${p.entry}`, text: p.tag, ...to(p.at), reach: 2, weight: always })),
    ...workings.headings.flatMap((h) => {
      const at = view.project(h.sill[Math.floor(h.sill.length / 2)]!)
      return at ? [{ id: `n:${h.entry}`, text: h.name, ...to(at), reach: 0.5, weight: 80 }] : []
    }),
  ].map(w => ({ ...w, width: w.text.length * nameWide, height: nameSize * 1.2 }))
  const names = placeLabels(wanted, paper.width - edge - marginWide, paper.height - edge, 0.5), said = new Map(wanted.map(w => [w.id, w.text]))
  const beside = stations.some(s => s.beside)
  const drawing = [
    ...shapes.map(s => `<path d="${line(s.points, true)}" fill="#fff" stroke="#000" stroke-width="0.35"${s.dashed ? ' stroke-dasharray="1.4 1"' : ''}/>`),
    ...shapes.map(s => `<path d="${line(s.points, true)}" fill="#fff"/>`),
    ...workings.workedOut.map(w => `<path d="${line(projected(view, w.corners), true)}" ${pen('#555', 0.25, '0.6 0.5')}/>`),
    ...workings.legs.map(leg => `<path class="leg" data-leg="${escaped(`${leg.from} ${leg.to}`)}" d="${line(projected(view, [leg.a, leg.b]))}" ${pen('#777', 0.15, '0.3 0.5')}/>`),
    ...input.vein ? [`<path class="vein" d="${line(projected(view, input.vein))}" ${pen('#000', 0.5, '5 1 1 1')}/>`] : [],
    ...(input.sectionLines ?? []).map((l) => {
      const ends = projected(view, [l.from, l.to]).map(to)
      const named = ends.map((e, k) => `<text x="${mm(e.x)}" y="${mm(e.y)}" font-size="3.4" text-anchor="middle">${escaped(l.name)}${k === 0 ? '' : '′'}</text>`)
      return `<path class="section-line" d="${line(projected(view, [l.from, l.to]))}" ${pen('#000', 0.3, '6 1.5 1 1.5')}/>${named.join('')}`
    }),
    ...(input.ellipses && view.is === 'plan' ? stations : []).flatMap((s) => {
      const e = s.beside?.ellipse ?? (beside ? undefined : s.ellipse)
      if (!e) return [] // the first tied station itself
      const { x, y } = to(s.at), [cx0, cy0, rx, ry] = [x, y, onPaper(e.major, scale), onPaper(e.minor, scale)].map(mm)
      return `<ellipse cx="${cx0}" cy="${cy0}" rx="${rx}" ry="${ry}" transform="rotate(${mm((view.right ?? 90) - e.azimuth)} ${cx0} ${cy0})" ${pen('#777', 0.2, 'none')}/>`
    }),
    ...placed.map((p) => {
      const { x, y } = to(p.at)
      return p.kind === 'hazard' ? `<path d="M${mm(x)} ${mm(y - 2)}l1.9 3.4h-3.8Z" fill="#000"/>` : `<rect x="${mm(x - 0.6)}" y="${mm(y - 0.6)}" width="1.2" height="1.2"/>`
    }),
    ...stations.map(s => ({ s, at: to(s.at) })).map(({ s, at: { x, y } }) =>
      `<circle class="station" data-station="${escaped(s.name)}" cx="${mm(x)}" cy="${mm(y)}" r="0.7" fill="#fff" stroke="#000" stroke-width="0.25"/>`),
    ...names.map(n =>
      `<text class="name" x="${mm(n.x)}" y="${mm(n.y + nameSize)}" font-size="${nameSize}"${n.id.startsWith('n:') ? ' font-style="italic"' : ''}>${escaped(said.get(n.id)!)}</text>`),
  ].join('\n')
  const { norths } = workings
  return {
    scale, whole: scale >= fits,
    svg: sheetSvg(paper, drawing, {
      title: input.title, view: view.title, scale, unit: input.unit, date: input.date, surveyors: input.surveyors, datum: workings.datum,
      ...view.is === 'plan' && view.right !== undefined ? { norths: { up: (view.right + 270) % 360, trueNorth: norths.trueNorth, magneticNorth: norths.magneticNorth } } : {},
      notes: [
        'Dashed walls: not taped, or stepped only.', ...scale < fits ? ['Not all of it goes on this sheet.'] : [],
        ...input.ellipses ? [`Ellipses: 95 in 100, at the scale of the sheet, ${beside ? 'beside the first tied station' : 'on the ground'}.`] : [],
        'Not a certified survey. Driving by it needs people licensed for that.',
      ],
    }),
  }
}

const pen = (stroke: string, width: number, dashes: string): string => `fill="none" stroke="${stroke}" stroke-width="${width}" stroke-dasharray="${dashes}"`
const projected = (view: View, points: readonly Enu[]): readonly OnSheet[] => points.flatMap(p => view.project(p) ?? [])

function boxOf(points: readonly OnSheet[]) {
  if (points.length === 0) return { minX: -5, maxX: 5, minY: -5, maxY: 5 }
  let minX = Infinity, maxX = -Infinity, minY = Infinity, maxY = -Infinity
  for (const { x, y } of points) { minX = Math.min(minX, x); maxX = Math.max(maxX, x); minY = Math.min(minY, y); maxY = Math.max(maxY, y) }
  return { minX, maxX, minY, maxY }
}
