import type { Problem } from '@lodebook/book'
import { useState } from 'preact/hooks'
import { counted } from '../../words/number.ts'

const atFirst = 20

/** What will not do and what is doubtful in a file, each with its row. Rows with an error are not added; doubtful ones are. */
export function ProblemsByRow({ problems }: { readonly problems: readonly Problem[] }) {
  const [all, setAll] = useState(false)
  if (problems.length === 0) return null
  const shown = all ? problems : problems.slice(0, atFirst)
  return (
    <>
      <h3>{counted(problems.filter(p => !p.warning).length, 'error')} and {counted(problems.filter(p => p.warning).length, 'doubt')}</h3>
      <ul class="plain-list">
        {shown.map((p, i) => <li key={i} class={p.warning ? 'doubt' : 'problem'}>{p.row === undefined ? '' : `Row ${p.row}: `}{p.message}</li>)}
      </ul>
      {shown.length < problems.length && <p><button type="button" class="btn" onClick={() => setAll(true)}>Show all {problems.length}</button></p>}
    </>
  )
}
