import PDFDocument from 'pdfkit'
import encodeQR from 'qr'
import { bytesOf } from '../bytes-of.ts'
import { openFont } from '../open-font.ts'
import { paperSizes, pointsPerMm } from '../paper-size.ts'
import type { PaperName } from '../paper-size.ts'
import { codeSide, labelLayout } from './label-layout.ts'
import type { LabelBox } from './label-layout.ts'

export interface LabelsAsked {
  /** What each label says, in order; the code says the same and nothing else. */
  readonly labels: readonly string[]
  /** Whose they are, in small print. */
  readonly mine: string
  readonly paper: PaperName
  /** How often each is printed: two, so that one goes into the bag and one onto it. */
  readonly copies: 1 | 2
  /** Font files as bytes, WOFF or TTF. */
  readonly fonts: { readonly regular: Uint8Array, readonly bold: Uint8Array }
  /** Milliseconds since 1970, for the file's own date. */
  readonly made: number
  /** Left out or true: packed. */
  readonly packed?: boolean
}

/** The length of the line at the foot of each sheet, against which the print can be checked, mm. */
export const rulerMm = 100

/**
 * Sheets of labels for bags as one PDF at true size: a number to read, a code to scan, and lines to write the place and the day on.
 * The same asked gives the same bytes, in Node and in a browser.
 */
export function labelSheets({ labels, mine, paper, copies, fonts, made, packed = true }: LabelsAsked): Promise<Uint8Array> {
  const { wide, high } = paperSizes[paper], boxes = labelLayout(paper)
  const doc = new PDFDocument({
    size: [wide * pointsPerMm, high * pointsPerMm], margin: 0, autoFirstPage: false, compress: packed,
    info: { Title: `Labels ${labels[0] ?? ''} to ${labels.at(-1) ?? ''}`, Creator: 'Lodebook', Producer: 'Lodebook', CreationDate: new Date(made) },
    font: '',
  })
  const bytes = bytesOf(doc)
  doc.registerFont('regular', openFont(fonts.regular))
  doc.registerFont('bold', openFont(fonts.bold))
  const each = labels.flatMap(text => Array.from({ length: copies }, () => text))
  for (let i = 0; i === 0 || i < each.length; i += boxes.length) {
    doc.addPage()
    doc.scale(pointsPerMm, pointsPerMm)
    each.slice(i, i + boxes.length).forEach((text, k) => { drawLabel(doc, boxes[k]!, text, mine) })
    drawFoot(doc, wide, high, `${mine}; sheet ${i / boxes.length + 1} of ${Math.max(1, Math.ceil(each.length / boxes.length))}`)
  }
  doc.end()
  return bytes
}

type Doc = InstanceType<typeof PDFDocument>

function drawLabel(doc: Doc, { x, y, wide, high }: LabelBox, text: string, mine: string): void {
  doc.lineWidth(0.15).strokeColor('#888888').rect(x, y, wide, high).stroke()
  drawCode(doc, text, x + 3, y + (high - codeSide) / 2)
  const left = x + 3 + codeSide + 3, room = wide - (left - x) - 2.5
  doc.fillColor('#000000').font('bold').fontSize(9)
  doc.fontSize(Math.min(9, 9 * room / doc.widthOfString(text))).text(text, left, y + 3.5, { lineBreak: false })
  doc.font('regular').fontSize(2.5).text(cutTo(doc, mine, room), left, y + 14.2, { lineBreak: false })
  for (const [what, down] of [['place', 21], ['day', 25.5], ['by', 30]] as const) {
    doc.fontSize(2.3).text(what, left, y + down - 2.4, { lineBreak: false })
    doc.lineWidth(0.12).strokeColor('#000000').moveTo(left + 6, y + down).lineTo(left + room, y + down).stroke()
  }
}

/** As much of a line as there is room for. */
function cutTo(doc: Doc, line: string, room: number): string {
  let length = line.length
  while (length > 0 && doc.widthOfString(line.slice(0, length)) > room) length--
  return length < line.length ? `${line.slice(0, Math.max(0, length - 1)).trimEnd()}…` : line
}

/** The code as dark squares, those side by side drawn as one, so that no hairline of white runs between them. */
function drawCode(doc: Doc, text: string, x: number, y: number): void {
  const bordered = encodeQR(text, 'raw', { ecc: 'quartile', border: 1 }), rows = bordered.slice(1, -1).map(row => row.slice(1, -1)), side = codeSide / rows.length
  doc.fillColor('#000000')
  rows.forEach((row, r) => {
    for (let c = 0; c < row.length; c++) {
      const start = c
      while (row[c] === true) c++
      if (c > start) doc.rect(x + start * side, y + r * side, (c - start) * side, side)
    }
  })
  doc.fill()
}

function drawFoot(doc: Doc, wide: number, high: number, says: string): void {
  const y = high - 9, left = (wide - rulerMm) / 2
  doc.lineWidth(0.3).strokeColor('#000000').moveTo(left, y).lineTo(left + rulerMm, y).stroke()
  for (let mm = 0; mm <= rulerMm; mm += 10) doc.moveTo(left + mm, y).lineTo(left + mm, y - (mm % 50 === 0 ? 2 : 1)).stroke()
  doc.fillColor('#000000').font('regular').fontSize(2.6).text(`This line is ${rulerMm} mm long when printed at full size. ${says}`, left, y + 1.2, { lineBreak: false })
}
