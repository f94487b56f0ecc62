import type { Grade, VeinAt } from '@lodebook/answers'
import { ask } from '../link/reckoner.ts'
import { Answered } from '../shell/answered.tsx'
import { Figure, rangeText, valueText } from '../drawer/figure.tsx'
import { PanelTable } from './grade/panel-table.tsx'
import { SampleTable } from './grade/sample-table.tsx'
import { VeinSheet } from './grade/vein-sheet.tsx'

/** Grade: how much gold, where, and how sure are we? The vein as one sheet, panels and samples on it. */
export function GradeScreen() {
  const asked = ask('grade'), vein = ask('vein').value
  return (
    <Answered asks="How much gold, where, and how sure are we?" asked={asked}>
      {grade => <Shown grade={grade} vein={vein && !('notEnough' in vein) ? vein : undefined} />}
    </Answered>
  )
}

function Shown({ grade, vein }: { readonly grade: Grade, readonly vein: VeinAt | undefined }) {
  return (
    <>
      <h1 class="sentence">{grade.sentence}</h1>
      <p class="big"><span class="value"><Figure answer={grade.ounces} /></span><span class="range">{rangeText(grade.ounces)}</span></p>
      <ul class="figures">
        <li>in <Figure answer={grade.tonnes} /> of vein <span class="soft small">{rangeText(grade.tonnes)}</span></li>
        <li>at <Figure answer={grade.grade} /> <span class="soft small">{rangeText(grade.grade)}</span></li>
        <li>over <Figure answer={grade.width} /> width <span class="soft small">{rangeText(grade.width)}</span></li>
        <li>by plain averages <Figure answer={grade.audit}>{valueText(grade.audit)}</Figure></li>
      </ul>
      {vein && <VeinSheet grade={grade} vein={vein} />}
      {grade.cautions.length > 0 && <ul class="cautions">{grade.cautions.map(c => <li key={c}>{c}</li>)}</ul>}
      <PanelTable panels={grade.panels} />
      <SampleTable samples={grade.samples} />
      <section class="section" aria-labelledby="carry">
        <h2 id="carry">How far the gold carries</h2>
        <ul class="plain-list prose">{grade.variograms.map(v => <li key={v.of}>{v.sentence}</li>)}</ul>
      </section>
    </>
  )
}
