import { DegenerateError, finite, InputError, positive } from '../core/index.ts'

/** A cut across the vein at a distance along a heading: true width and, if assayed, grade. */
export interface CutAt { readonly at: number, readonly width: number, readonly grade?: number }

export interface AlongHeading {
  /** From the first cut to the last. */
  readonly length: number
  readonly meanWidth: number
  /** Grade over that length, each cut counting for the ground half-way to its neighbours. Undefined unless every cut has one. */
  readonly meanGrade: number | undefined
}

/**
 * Average width and grade along a heading whose cuts are unevenly spaced: area between cuts over length, metal likewise (trapezoids).
 *
 * A plain mean would let cuts that were bunched on a rich spot count too often.
 * @param cuts two or more at different distances, in any order
 * @throws DegenerateError("too few" | "coincident"); InputError
 * Source: Hoover, Principles of Mining, 1909, ch. II, footnote.
 */
export function averageAlong(cuts: readonly CutAt[]): AlongHeading {
  if (cuts.length < 2) throw new DegenerateError('too few', 'cuts', cuts.length, 'two or more cuts')
  cuts.forEach(({ at, width, grade }, i) => {
    finite(at, `cuts[${i}].at`)
    positive(width, `cuts[${i}].width`)
    if (grade !== undefined && !(grade >= 0 && Number.isFinite(grade))) throw new InputError(`cuts[${i}].grade`, grade, 'a grade, zero or more')
  })
  const sorted = [...cuts].sort((a, b) => a.at - b.at)
  const length = sorted.at(-1)!.at - sorted[0]!.at
  if (length === 0) throw new DegenerateError('coincident', 'cuts', length, 'cuts at different distances')
  const swept = (value: (cut: CutAt) => number) =>
    sorted.slice(1).reduce((sum, cut, i) => sum + (cut.at - sorted[i]!.at) * (value(cut) + value(sorted[i]!)) / 2, 0)
  const area = swept(cut => cut.width)
  return {
    length, meanWidth: area / length,
    meanGrade: cuts.every(cut => cut.grade !== undefined) ? swept(cut => cut.width * cut.grade!) / area : undefined,
  }
}
