import type { Opening } from '@lodebook/answers'
import { useState } from 'preact/hooks'
import { Figure } from '../../drawer/figure.tsx'
import { ChoiceRow } from '../../shell/choice-row.tsx'
import { LongProfile } from './long-profile.tsx'

/** One drawing, one slider, four answers: what a cut at the portal by so much is in muck, gives in air and head room, and does to the span. */
export function OpeningShown({ opening }: { readonly opening: Opening }) {
  const [name, choose] = useState(opening.cuts[1]!.name), [step, setStep] = useState(5)
  const { cases, cut } = opening.cuts.find(c => c.name === name)!, one = cases[step]!, before = cases[0]!
  return (
    <div class="opening">
      <ChoiceRow label="What is cut" of={opening.cuts.map(c => c.name)} value={name} onChoose={choose} />
      <label class="slide">
        <span>{name} of {opening.heading} by <b>{one.says}</b></span>
        <input type="range" min={0} max={cases.length - 1} step={1} value={step} aria-valuetext={one.says} onInput={e => setStep(Number(e.currentTarget.value))} />
      </label>
      {cut === 'ribs' ? null : <LongProfile name={`The way in with the ${cut} cut by ${one.says}`} stations={one.way} before={before.way} />}
      <dl class="four">
        {([['muck', one.muck], ['air', one.air], ['head room', one.headRoom], ['span', one.span]] as const).map(([title, answer]) => (
          <div key={title}><dt>{title}</dt><dd><Figure answer={answer}>{title === 'air' ? answer.sentence.replace(/ each way.*$/, '') : undefined}</Figure><p>{answer.sentence}</p></dd></div>
        ))}
      </dl>
    </div>
  )
}
