import { InputError, positive } from '../core/index.ts'
import { mean } from '../statistics/index.ts'

export interface ScreenAssay {
  /** What stayed on the screen: its mass and its grade. */
  readonly plus: { readonly mass: number, readonly grade: number }
  /** What passed: its mass and the grades of one or more charges of it. */
  readonly minus: { readonly mass: number, readonly grades: readonly number[] }
}

/**
 * Grade of a sample whose coarse gold was screened out and assayed apart: (m+ G+ + m- mean G-)/(m+ + m-).
 *
 * The quick way, adding the coarse metal to one charge of fines, weighs the coarse part by charge over sample instead of charge over fines and reads high.
 * Any one unit of mass and of grade.
 * @throws InputError
 * Source: Beringer, A Text-Book of Assaying, 9th ed. 1904.
 */
export function screenAssay({ plus, minus }: ScreenAssay): number {
  positive(plus.mass, 'plus.mass_g')
  positive(minus.mass, 'minus.mass_g')
  if (minus.grades.length === 0) throw new InputError('minus.grades', minus.grades, 'one or more grades')
  const checked = (grade: number, field: string): number => {
    if (!(grade >= 0 && Number.isFinite(grade))) throw new InputError(field, grade, 'a grade, zero or more')
    return grade
  }
  checked(plus.grade, 'plus.grade')
  minus.grades.forEach((grade, i) => checked(grade, `minus.grades[${i}]`))
  return (plus.mass * plus.grade + minus.mass * mean(minus.grades)) / (plus.mass + minus.mass)
}
