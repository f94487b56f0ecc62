import type { CrossSection } from '@lodebook/answers'
import type { MineSheet } from './mine-sheet.ts'
import { a4, edge, fittingScale, marginWide, onPaper } from './paper-scale.ts'
import { label, mm, sheetSvg } from './svg-parts.ts'

/** The opening at a station, cut square to its way, as an SVG in true millimetres. */
export function crossSectionSheet(section: CrossSection, words: {
  readonly title: string
  readonly date: string
  readonly surveyors: string
  readonly datum: string
  readonly unit: 'm' | 'ft'
  readonly scale?: number
  readonly paper?: { readonly width: number, readonly height: number }
}): MineSheet {
  const paper = words.paper ?? a4, wide = paper.width - 2 * edge - marginWide, high = paper.height - 2 * edge
  const reach = Math.max(0.5, ...section.outline.flatMap(p => [Math.abs(p.right), Math.abs(p.up)]))
  const fits = fittingScale(2 * reach, 2 * reach, wide - 20, high - 20), scale = words.scale ?? fits, mid = { x: edge + wide / 2, y: edge + high / 2 }
  const outline = section.outline.map((p, i) => `${i === 0 ? 'M' : 'L'}${mm(mid.x + onPaper(p.right, scale))} ${mm(mid.y - onPaper(p.up, scale))}`).join('')
  const azimuth = `${String(Math.round(((section.azimuth % 360) + 360) % 360) % 360).padStart(3, '0')}°`
  const drawing = `<path class="outline" d="${outline}Z" fill="#fff" stroke="#000" stroke-width="0.4"${section.taped ? '' : ' stroke-dasharray="1.4 1"'}/>
<circle class="station" data-station="${section.station}" cx="${mm(mid.x)}" cy="${mm(mid.y)}" r="0.9" fill="#fff" stroke="#000" stroke-width="0.3"/>
${label(mid.x + 2, mid.y - 1, section.station, 3)}`
  return {
    scale, whole: scale >= fits,
    svg: sheetSvg(paper, drawing, {
      title: words.title, view: `Cross section at ${section.station}, looking along ${azimuth}`, scale, unit: words.unit, date: words.date, surveyors: words.surveyors,
      datum: words.datum, notes: [section.taped ? 'From offsets taped at the station; corners rounded by rule.' : 'Dashed: offsets borrowed from a neighbour.', ...section.hits > 0 ? [`${section.hits} sights to the wall.`] : []],
    }),
  }
}
