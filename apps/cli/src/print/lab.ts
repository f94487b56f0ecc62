import type { CrewUnits, Lab } from '@lodebook/answers'
import { figure, plural } from '@lodebook/answers'
import { convert } from '@lodebook/reckon/units'
import { cautionsPart, figuresPart, figuresTable, page, short, under } from './page-parts.ts'
import { sentences } from './problems.ts'
import { table } from './table.ts'

const samplesShown = 15

/** What it ran and whether it can be believed: controls, duplicates, pans against assays, the bags with their one belief, the next batch. */
export function labPage(lab: Lab, units: CrewUnits, width: number): string {
  const put = (grade: number) => figure(convert(grade, 'g/t', units.grade), 2)
  const rows = lab.samples.slice(0, samplesShown).map(s => [
    s.bag, `${s.below ? '<' : ''}${put(s.below ? s.high : s.grade)}`, `${put(s.low)} to ${put(s.high)}`,
    s.looks.map(l => `${l.kind} ${l.mark === 'below' ? '<' : l.mark === 'above' ? '>' : ''}${put(l.grade)}`).join(', '), s.doubts.join('; '),
  ])
  const unit = short[units.grade] ?? units.grade
  return page(sentences([lab.sentence], width), figuresPart(lab.figures, width),
    under('Standards and blanks', sentences([...lab.standards.map(s => s.sentence), ...lab.blanks.filter(b => b.failed).map(b => b.answer.sentence)], width)),
    under('Run again', sentences(lab.failed.map(f => f.answer.sentence), width)),
    under('Duplicates', sentences(lab.duplicates.map(d => d.sentence), width)),
    under('Pans against assays', 'notEnough' in lab.pans ? sentences([lab.pans.sentence], width)
      : sentences([lab.pans.sentence, ...lab.pans.lines.map(l => l.answer.sentence)], width)),
    under('Bags changed over', sentences([...lab.swaps.map(s => s.answer.sentence), lab.swapSentence], width)),
    under(lab.samples.length > samplesShown ? `The ${samplesShown} of ${plural(lab.samples.length, 'bag')} with most gold` : 'Bags',
      figuresTable(['Bag', unit, '80 %', 'Looks', 'Doubts'], rows, width, ['left', 'right', 'right', 'left', 'left'])),
    under('Next batch', sentences([lab.nextBatch.sentence], width) +
      table(lab.nextBatch.places.map((p, i) => [String(i + 1), p.name, p.why]), { width, indent: 2, sides: ['right', 'left', 'left'] })),
    under('Density', figuresPart(lab.densities, width)), cautionsPart(lab.cautions, width))
}
