import type { VeinSheet } from '@lodebook/answers'
import { isAnswer } from '@lodebook/answers'
import { Figure } from '../../drawer/figure.tsx'

/** What the crew named on the vein, in its own words. */
export function MaterialList({ sheet }: { readonly sheet: VeinSheet }) {
  const all = [...sheet.materials.map(m => m.answer), ...(isAnswer(sheet.gouge) ? [sheet.gouge] : []), ...sheet.walls]
  if (all.length === 0) return null
  return (
    <details class="section more">
      <summary>What was named on it, and where</summary>
      <ul class="said">{all.map(a => <li key={a.id}><Figure answer={a}>{a.sentence}</Figure></li>)}</ul>
    </details>
  )
}
