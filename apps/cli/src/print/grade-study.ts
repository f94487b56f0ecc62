import type { GradeStudy } from '@lodebook/answers'
import { cautionsPart, figuresPart, page, under } from './page-parts.ts'
import { sentences } from './problems.ts'

/** What stands beside the headline of grade. */
export const gradeStudyPage = ({ sentence, averages, topCut, leftOut, parted, cautions }: GradeStudy, _: unknown, width: number): string => page(
  sentences([sentence], width), under('The same ground by other averages', figuresPart(averages, width)),
  topCut ? under('High values', page(sentences([topCut.sentence], width), figuresPart([topCut.uncut, ...topCut.cuts.map(c => c.answer)], width))) : '',
  leftOut ? figuresPart([leftOut.answer], width) : '', under('Where two ways part', sentences(parted.map(p => p.sentence), width)), cautionsPart(cautions, width))
