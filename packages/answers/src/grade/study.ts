import { DegenerateError, InputError } from '@lodebook/reckon'
import { plural } from '../words.ts'
import { fewestForVariogram } from './few-samples.ts'
import { notResource } from './notice.ts'
import { averagesOf, topCutOf } from './study-averages.ts'
import type { StudyInput } from './study-input.ts'
import type { GradeStudy } from './study-shapes.ts'
import { leftOutOf, middleModel, partedOf, variogramOf } from './study-variogram.ts'

/** What stands beside the headline. With few samples it says so and gives means of few values in the place of a curve. */
export function studyOf(input: StudyInput): GradeStudy {
  const enough = input.used.length >= fewestForVariogram
  const spatial = enough ? spatialOf(input) : undefined
  return {
    sentence: spatial?.variogram ? spatial.variogram.answer.sentence
      : enough ? 'The samples say nothing of how far one resembles another: they lie at one place, or run alike.'
        : `${plural(input.used.length, 'sample')}: a variogram would be noise drawn as a curve (${fewestForVariogram} at least). Means of few values stand in its place.`,
    averages: averagesOf(input), topCut: topCutOf(input), variogram: spatial?.variogram, leftOut: spatial?.leftOut, parted: spatial?.parted ?? [],
    cautions: [notResource, 'A high value is not cut before its wall has been sampled again: it may be a mistake, or the reason to be there.'],
  }
}

function spatialOf(input: StudyInput) {
  try {
    const { model } = middleModel(input)
    return { variogram: variogramOf(input), leftOut: leftOutOf(input, model), parted: partedOf(input, model) }
  } catch (error) {
    if (error instanceof DegenerateError || error instanceof InputError) return undefined
    throw error
  }
}
