import type { Answer, Assumed } from '@lodebook/answers'
import { plain, withUnit } from '../words/number.ts'
import { deeper, shut } from './drawer-state.ts'
import { EntriesBehind } from './entries-behind.tsx'
import { Figure, rangeText, valueText } from './figure.tsx'
import { linkTo } from '../shell/route.ts'

/** A figure's trail: the sentence, the working with its numbers, sources, what was taken as given, and what it rests on, one level down. */
export function AnswerPage({ answer }: { readonly answer: Answer<unknown> }) {
  const { method, range } = answer
  return (
    <>
      <h2 id="drawer-title" class="drawer-sentence">{answer.sentence}</h2>
      {(typeof answer.value === 'number' || typeof answer.value === 'string') && (
        <p class="drawer-value">{valueText(answer)}{range && <span class="soft"> {rangeText(answer)}</span>}</p>
      )}
      {range?.because && range.because.length > 0 && (
        <section><h3>Why the range is as wide as it is</h3><ol class="ranked">{range.because.map(why => <li key={why}>{why}</li>)}</ol></section>
      )}
      {answer.cautions.length > 0 && <ul class="cautions">{answer.cautions.map(c => <li key={c}>{c}</li>)}</ul>}
      <section>
        <h3>How it was worked out</h3>
        <p>{method.name}</p>
        {method.working && method.working.length > 0 && <ol class="working">{method.working.map((line, i) => <li key={i}>{line}</li>)}</ol>}
      </section>
      {answer.assumed.length > 0 && (
        <section>
          <h3>Taken as given</h3>
          <ul class="assumed">{answer.assumed.map(a => <AssumedLine key={a.name} assumed={a} />)}</ul>
        </section>
      )}
      {answer.parts.length > 0 && (
        <section>
          <h3>Rests on</h3>
          <ul class="rests">
            {answer.parts.map(part => (
              <li key={part.id}><span>{part.sentence}</span> <Figure answer={part} onOpen={a => deeper({ is: 'answer', answer: a })} /></li>
            ))}
          </ul>
        </section>
      )}
      {answer.from.length > 0 && <section><h3>Entries</h3><EntriesBehind ids={answer.from} /></section>}
      {answer.sources.length > 0 && <section><h3>Where the method comes from</h3><ul class="sources">{answer.sources.map(s => <li key={s}>{s}</li>)}</ul></section>}
    </>
  )
}

function AssumedLine({ assumed }: { readonly assumed: Assumed }) {
  const value = typeof assumed.value === 'number' ? withUnit(plain(assumed.value), assumed.unit) : assumed.value
  return (
    <li>
      <span><b>{assumed.name}</b>: {value}</span>
      <span class="soft">{assumed.why}</span>
      {assumed.entry === undefined
        ? <a href={linkTo('write', 'assumption', 'named', assumed.name)} onClick={shut}>Write down your own figure</a>
        : <button type="button" class="fig" onClick={() => deeper({ is: 'entry', id: assumed.entry! })}>The crew’s entry</button>}
    </li>
  )
}
