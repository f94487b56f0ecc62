import type { Heaps } from '@lodebook/answers'
import { cautionsPart, figuresPart, page, under } from './page-parts.ts'
import { sentences } from './problems.ts'

/** What the heaps of broken rock hold, each with its tonnes, grade and ounces. */
export const heapsPage = ({ sentence, heaps, untold, cautions }: Heaps, _: unknown, width: number): string => page(
  sentences([sentence], width), figuresPart(heaps.flatMap(h => [h.ounces, h.tonnes, h.grade]), width),
  under('Not told yet', sentences(untold.map(u => `${u.name}: ${u.why}.`), width)), cautionsPart(cautions, width))
