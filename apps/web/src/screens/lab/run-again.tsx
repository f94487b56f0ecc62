import type { FailedControl, SwapSuspicion } from '@lodebook/answers'
import { Figure } from '../../drawer/figure.tsx'

/** What speaks against the figures, and what to ask of the laboratory. */
export function RunAgain({ failed, swaps, swapSentence }: {
  readonly failed: readonly FailedControl[]
  readonly swaps: readonly SwapSuspicion[]
  readonly swapSentence: string
}) {
  return (
    <section class="section" aria-labelledby="again">
      <h2 id="again">{failed.length + swaps.length > 0 ? 'Look again' : 'Nothing to run again'}</h2>
      <ul class="suspects">
        {failed.map(f => <li key={f.answer.id}>{f.answer.sentence} <Figure answer={f.answer}>which, and why</Figure></li>)}
        {swaps.map(s => <li key={s.answer.id}>{s.answer.sentence} <Figure answer={s.answer}>how it is told</Figure></li>)}
      </ul>
      {swaps.length === 0 && <p class="soft prose small">{swapSentence}</p>}
    </section>
  )
}
