import type { ComponentChildren } from 'preact'

/** Label, hint, the field itself, how it was understood, and what is wrong with it: always in that order and place. */
export function FieldFrame({ id, label, hint, echo, problem, doubts, required, children, group = false }: {
  readonly id: string
  readonly label: string
  readonly hint: string | undefined
  readonly echo: string
  readonly problem: string
  readonly doubts: readonly string[]
  readonly required: boolean
  readonly children: ComponentChildren
  /** Several controls under one name. */
  readonly group?: boolean
}) {
  const title = <>{label}{required && <span class="needed"> needed</span>}</>
  const rest = (
    <>
      {hint && <p class="hint" id={`${id}-hint`}>{hint}</p>}
      {children}
      {echo && <output class="echo" id={`${id}-echo`}>{echo}</output>}
      {problem && <p class="problem" id={`${id}-problem`}>{problem}</p>}
      {doubts.map(d => <p class="doubt" key={d}>{d}</p>)}
    </>
  )
  return group
    ? <fieldset class="field" id={id} aria-describedby={describedBy(id, hint, echo, problem)}><legend class="label">{title}</legend>{rest}</fieldset>
    : <div class="field"><label class="label" for={id}>{title}</label>{rest}</div>
}

/** The ids of what stands under a field, for its aria-describedby. */
export const describedBy = (id: string, hint: string | undefined, echo: string, problem: string): string | undefined =>
  [hint && `${id}-hint`, echo && `${id}-echo`, problem && `${id}-problem`].filter(Boolean).join(' ') || undefined
