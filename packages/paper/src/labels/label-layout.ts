import { paperSizes } from '../paper-size.ts'
import type { PaperName } from '../paper-size.ts'

/** One label on a sheet: its top left corner and size, millimetres from the top left of the sheet. */
export interface LabelBox { readonly x: number, readonly y: number, readonly wide: number, readonly high: number }

/** A label as it is cut out, and the room between two of them for the knife, mm. */
export const label = { wide: 62, high: 32, gap: 2 } as const
/** Kept free at the edge, where printers do not print, and at the foot for the ruler, mm. */
const edge = 8
const foot = 10
/** The side of the code, mm: large enough for a phone at arm's length and a smudged thumb. */
export const codeSide = 24

/** Where the labels stand on one sheet, row by row. */
export function labelLayout(paper: PaperName): readonly LabelBox[] {
  const { wide, high } = paperSizes[paper]
  const fit = (room: number, size: number) => Math.floor((room + label.gap) / (size + label.gap))
  const [columns, rows] = [fit(wide - 2 * edge, label.wide), fit(high - 2 * edge - foot, label.high)]
  const left = (wide - columns * label.wide - (columns - 1) * label.gap) / 2
  return Array.from({ length: columns * rows }, (_, i) => ({
    x: left + i % columns * (label.wide + label.gap), y: edge + Math.floor(i / columns) * (label.high + label.gap), wide: label.wide, high: label.high,
  }))
}
