import { InputError, positive } from '../core/index.ts'

/** A stretch across the vein, or a sample of a stretch of vein: true width, grade, and density if it differs from the others'. */
export interface GradedWidth { readonly width: number, readonly grade: number, readonly density?: number }

export interface WeightedGradeInput {
  readonly intervals: readonly GradedWidth[]
  /** Least width that can be broken. */
  readonly minimumWidth?: number
  /** What is broken beside the vein to reach it: grade 0 and the vein's density unless said. */
  readonly wallGrade?: number
  readonly wallDensity?: number
}

export interface WeightedGrade {
  readonly width: number
  readonly grade: number
  readonly dilutedWidth: number
  readonly dilutedGrade: number
}

/**
 * Grade over a width of several parts, each counting by its width (by its mass, where densities are given), and the same broken to a least width.
 *
 * A plain mean of assays lets a rich stringer count for as much as the whole vein. Widths must be true widths. Any one unit of width and of grade.
 * @throws InputError; densities must be given for all intervals or for none
 * Source: weighting by width: Hoover, Principles of Mining, 1909, ch. II; dilution by mass balance.
 */
export function weightedGrade({ intervals, minimumWidth = 0, wallGrade = 0, wallDensity }: WeightedGradeInput): WeightedGrade {
  checkIntervals(intervals)
  if (!(minimumWidth >= 0 && Number.isFinite(minimumWidth))) throw new InputError('minimum_width', minimumWidth, 'zero or more')
  if (!(wallGrade >= 0 && Number.isFinite(wallGrade))) throw new InputError('wall_grade', wallGrade, 'zero or more')
  if (wallDensity !== undefined) positive(wallDensity, 'wall_density')
  if (wallDensity !== undefined && intervals[0]!.density === undefined) throw new InputError('intervals[0].density', undefined, 'a density, since the wall has one')
  const width = intervals.reduce((sum, i) => sum + i.width, 0)
  const mass = intervals.reduce((sum, i) => sum + i.width * (i.density ?? 1), 0)
  const metal = intervals.reduce((sum, i) => sum + i.width * (i.density ?? 1) * i.grade, 0)
  const dilutedWidth = Math.max(width, minimumWidth)
  const wall = (dilutedWidth - width) * (wallDensity ?? mass / width)
  return { width, grade: metal / mass, dilutedWidth, dilutedGrade: (metal + wall * wallGrade) / (mass + wall) }
}

function checkIntervals(intervals: readonly GradedWidth[]): void {
  if (intervals.length === 0) throw new InputError('intervals', intervals, 'one or more intervals')
  const dense = intervals[0]!.density !== undefined
  intervals.forEach(({ width, grade, density }, i) => {
    positive(width, `intervals[${i}].width`)
    if (!(grade >= 0 && Number.isFinite(grade))) throw new InputError(`intervals[${i}].grade`, grade, 'a grade, zero or more')
    if ((density !== undefined) !== dense) throw new InputError(`intervals[${i}].density`, density, 'a density for every interval, or for none')
    if (density !== undefined) positive(density, `intervals[${i}].density`)
  })
}
