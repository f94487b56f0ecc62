import { paperScale } from './scale-bar.ts'
import type { Size } from './use-size.ts'
import type { Bounds, View } from './view.ts'

/** Drawings that stand under each other at one scale. */
export interface Layout {
  /** How high each is, pixels. */
  readonly heights: readonly number[]
  /** On paper: one to so many. */
  readonly scale?: number
}

/** Room kept free round a drawing, pixels; less on a phone. */
export const insetFor = (width: number): number => width < 600 ? 30 : 46

const least = 5 // metres; fewer are drawn as if they were so many
const lowest = 200, lowestAlone = 440, share = 0.66, most = 0.75 // of the window's height: the first drawing, any drawing
const pixelsPerMillimetre = 96 / 25.4 // as styles define both
/** What an A4 sheet laid across has between its margins and the heads of its drawings, pixels. */
const paperRoom = 600

const wideOf = (bounds: readonly Bounds[]): number => Math.max(least, ...bounds.map(b => b.maxX - b.minX))
const highOf = (b: Bounds): number => Math.max(least, b.maxY - b.minY)

/**
 * The heights at which drawings fill the width they have at one scale, without the first running out of the window; on paper, at the largest
 * drafting scale at which all of them go on one sheet.
 */
export function layOut(bounds: readonly Bounds[], width: number, windowHeight: number, paper: boolean): Layout {
  const inset = insetFor(width), wide = wideOf(bounds), highs = bounds.map(highOf)
  if (paper) {
    const inMillimetres = (pixels: number) => Math.max(pixels, 1) / pixelsPerMillimetre
    const scale = paperScale(wide, highs.reduce((a, b) => a + b, 0), inMillimetres(width - 2 * inset), inMillimetres(paperRoom - bounds.length * 2 * inset))
    return { scale, heights: highs.map(high => Math.round(high * paperK(scale) + 2 * inset)) }
  }
  const k = Math.min((width - 2 * inset) / wide, (windowHeight * share - 2 * inset) / highs[0]!)
  const floor = bounds.length === 1 && width >= 600 ? lowestAlone : lowest
  return { heights: highs.map(high => Math.round(Math.min(Math.max(high * k + 2 * inset, floor), windowHeight * most))) }
}

/** Pixels a metre at one to so many. */
export const paperK = (scale: number): number => 1000 * pixelsPerMillimetre / scale

/** Views that show all of each drawing in its room, at one scale; undefined while there is no room to draw in. */
export function fitTogether(bounds: readonly Bounds[], sizes: readonly Size[], scale?: number): readonly View[] | undefined {
  const rooms = sizes.map(({ width, height }) => ({ width: width - 2 * insetFor(width), height: height - 2 * insetFor(width) }))
  if (rooms.some(r => r.width <= 0 || r.height <= 0)) return undefined
  const k = scale === undefined ? Math.min(...bounds.map((b, i) => Math.min(rooms[i]!.width / wideOf([b]), rooms[i]!.height / highOf(b)))) : paperK(scale)
  return bounds.map((b, i) => ({ k, x: sizes[i]!.width / 2 - (b.minX + b.maxX) / 2 * k, y: sizes[i]!.height / 2 + (b.minY + b.maxY) / 2 * k }))
}
