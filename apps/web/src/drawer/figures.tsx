import type { Answer } from '@lodebook/answers'
import { Figure, rangeText } from './figure.tsx'

/** A few figures side by side, each with its name above, its range below, and its trail behind it. */
export const Figures = ({ of }: { readonly of: readonly { readonly name: string, readonly answer: Answer, readonly text?: string }[] }) => (
  <dl class="figures">
    {of.map(({ name, answer, text }) => (
      <div key={name}><dt>{name}</dt><dd><Figure answer={answer}>{text}</Figure></dd>{answer.range && <dd class="soft small">{rangeText(answer)}</dd>}</div>
    ))}
  </dl>
)
