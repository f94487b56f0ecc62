import type { Problem } from '../schema/problem.ts'

/** A problem with the row it stands in, in its parts and in its sentence. */
export const inRow = (problem: Problem, row: number): Problem => ({ ...problem, row, message: `Row ${row}, ${problem.message}` })
