import { edge, marginWide, onPaper } from './paper-scale.ts'

/** Text as it may stand in XML. */
export const escaped = (text: string): string => text.replace(/[&<>"]/g, c => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' })[c]!)
export const mm = (value: number): string => (Math.round(value * 1000) / 1000).toString()

export const label = (x: number, y: number, text: string, size = 3, more = ''): string => `<text x="${mm(x)}" y="${mm(y)}" font-size="${size}"${more}>${escaped(text)}</text>`

/** What stands in the margin. */
export interface MarginWords {
  readonly title: string
  readonly view: string
  readonly scale: number
  readonly unit: 'm' | 'ft'
  readonly date: string
  readonly surveyors: string
  readonly datum: string
  /** Azimuth that points up the sheet, and the norths as azimuths from grid north; none for sections. */
  readonly norths?: { readonly up: number, readonly trueNorth: number, readonly magneticNorth: number }
  readonly notes: readonly string[]
}

/** An SVG in true millimetres: neat line, drawing and margin. */
export function sheetSvg(paper: { readonly width: number, readonly height: number }, drawing: string, words: MarginWords): string {
  const x = paper.width - edge - marginWide, lines = marginLines(words)
  let y = edge + 8
  const text = lines.map(([size, line]) => { const at = y; y += size * 1.45; return label(x + 4, at, line, size) }).join('\n')
  const bar = scaleBar(x + 4, y + 6, words.scale, words.unit), north = words.norths ? threeNorths(x + marginWide / 2, paper.height - edge - 14, words.norths) : ''
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${paper.width}mm" height="${paper.height}mm" viewBox="0 0 ${paper.width} ${paper.height}" font-family="'Atkinson Hyperlegible', 'DejaVu Sans', sans-serif">
<title>${escaped(`${words.title}: ${words.view}, one to ${words.scale}`)}</title>
<rect width="${paper.width}" height="${paper.height}" fill="#fff"/>
<clipPath id="room"><rect x="${edge}" y="${edge}" width="${mm(x - edge)}" height="${mm(paper.height - 2 * edge)}"/></clipPath>
<g clip-path="url(#room)">
${drawing}
</g>
<rect x="${edge}" y="${edge}" width="${mm(paper.width - 2 * edge)}" height="${mm(paper.height - 2 * edge)}" fill="none" stroke="#000" stroke-width="0.4"/>
<path d="M${mm(x)} ${edge}V${paper.height - edge}" stroke="#000" stroke-width="0.25"/>
${text}
${bar}
${north}
</svg>
`
}

const perLine = 34

function marginLines({ title, view, scale, date, surveyors, datum, notes }: MarginWords): readonly (readonly [number, string])[] {
  const small = (text: string) => wrapped(text).map(line => [2.7, line] as const)
  return [
    ...wrapped(title, 24).map(line => [4.2, line] as const), ...small(view), [3.4, `Scale 1 : ${scale}`],
    ...date === '' ? [] : small(`Surveyed ${date}`), ...surveyors === '' ? [] : small(`by ${surveyors}`),
    ...small(`Zero of elevations: ${datum === '' ? 'not said' : datum}`), ...notes.flatMap(small),
  ]
}

function wrapped(text: string, most = perLine): readonly string[] {
  const lines: string[] = []
  for (const word of text.split(' ')) {
    const last = lines.at(-1)
    if (last !== undefined && last.length + word.length < most) lines[lines.length - 1] = `${last} ${word}`
    else lines.push(word)
  }
  return lines
}

const foot = 0.3048

/** A bar of 1, 2 or 5 times a power of ten units, as long as the margin lets it be. */
export function scaleBar(x: number, y: number, scale: number, unit: 'm' | 'ft'): string {
  const one = onPaper(unit === 'm' ? 1 : foot, scale), most = (marginWide - 14) / one, power = 10 ** Math.floor(Math.log10(most))
  const length = (most / power >= 5 ? 5 : most / power >= 2 ? 2 : 1) * power, part = length * one / 4
  const parts = [0, 1, 2, 3].map(i => `<rect x="${mm(x + i * part)}" y="${mm(y)}" width="${mm(part)}" height="1.6" fill="${i % 2 === 0 ? '#000' : '#fff'}" stroke="#000" stroke-width="0.15"/>`)
  return `<g class="scale-bar" data-length="${length}" data-unit="${unit}" data-mm="${mm(length * one)}">${parts.join('')}${label(x, y - 1, '0', 2.6)}${label(x + length * one, y - 1, `${length} ${unit}`, 2.6, ' text-anchor="middle"')}</g>`
}

/** Grid, true and magnetic north about one foot. */
function threeNorths(x: number, y: number, { up, trueNorth, magneticNorth }: NonNullable<MarginWords['norths']>): string {
  const arrow = (azimuth: number, long: number, letter: string, dash: string) => {
    const a = (azimuth - up) * Math.PI / 180, at = (r: number) => [x + r * Math.sin(a), y - r * Math.cos(a)] as const
    const [ex, ey] = at(long), [tx, ty] = at(long + 3)
    return `<path d="M${mm(x)} ${mm(y)}L${mm(ex)} ${mm(ey)}" stroke="#000" stroke-width="0.3"${dash}/>${label(tx, ty + 1, letter, 2.8, ' text-anchor="middle"')}`
  }
  const together = Math.abs(trueNorth) < 2
  return `<g class="norths">${together ? arrow(0, 24, 'G, T', '') : `${arrow(0, 16, 'G', '')}${arrow(trueNorth, 24, 'T', '')}`}${arrow(magneticNorth, 24, 'M', ' stroke-dasharray="1.2 0.8"')}</g>`
}
