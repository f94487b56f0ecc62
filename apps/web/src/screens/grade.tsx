import type { Grade, HeadingShape, VeinAt } from '@lodebook/answers'
import { useState } from 'preact/hooks'
import { ask } from '../link/reckoner.ts'
import { Answered } from '../shell/answered.tsx'
import { Figure, rangeText } from '../drawer/figure.tsx'
import { Figures } from '../drawer/figures.tsx'
import { CutOffCurve } from './grade/cut-off-curve.tsx'
import { HeapList } from './grade/heap-list.tsx'
import { PanelTable } from './grade/panel-table.tsx'
import { SampleTable } from './grade/sample-table.tsx'
import { StudyParts } from './grade/study-parts.tsx'
import { VeinSheet } from './grade/vein-sheet.tsx'
import { there } from '../words/there.ts'

/** Grade: how much gold, where, and how sure are we? The vein as one sheet, panels and samples on it. */
export function GradeScreen() {
  const asked = ask('grade'), vein = ask('vein').value, workings = ask('workings').value
  return (
    <Answered asks="How much gold, where, and how sure are we?" asked={asked}>
      {grade => <Shown grade={grade} vein={there(vein)} headings={there(workings)?.headings ?? []} />}
    </Answered>
  )
}

function Shown({ grade, vein, headings }: { readonly grade: Grade, readonly vein: VeinAt | undefined, readonly headings: readonly HeadingShape[] }) {
  const [cut, setCut] = useState(0), at = Math.min(cut, grade.cutOffs.length - 1)
  const near = new Set(vein?.stations.map(s => s.name))
  return (
    <>
      <h1 class="sentence">{grade.sentence}</h1>
      <p class="big"><span class="value"><Figure answer={grade.ounces} /></span><span class="range">{rangeText(grade.ounces)}</span></p>
      <Figures of={[{ name: 'rock', answer: grade.tonnes }, { name: 'grade over the vein', answer: grade.grade }, { name: 'as broken', answer: grade.broken.grade }, { name: 'true width', answer: grade.width }, { name: 'by plain averages', answer: grade.audit }]} />
      {vein && <VeinSheet grade={grade} vein={vein} cut={at} onVein={name => headings.find(h => h.name === name)?.stations.every(s => near.has(s)) ?? false} />}
      <CutOffCurve cutOffs={grade.cutOffs} cut={at} onCut={setCut} />
      {grade.cautions.length > 0 && <ul class="cautions">{grade.cautions.map(c => <li key={c}>{c}</li>)}</ul>}
      <PanelTable panels={[...grade.drawn, ...grade.panels]} />
      <HeapList />
      <SampleTable samples={grade.samples} />
      <StudyParts />
    </>
  )
}
