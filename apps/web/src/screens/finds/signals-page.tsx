import type { Finds, VeinAt, Workings } from '@lodebook/answers'
import { Figures } from '../../drawer/figures.tsx'
import { ask } from '../../link/reckoner.ts'
import { Answered } from '../../shell/answered.tsx'
import { linkTo } from '../../shell/route.ts'
import { FindsSheet } from './finds-sheet.tsx'
import { OpenTargets } from './open-targets.tsx'
import { SweepTable } from './sweep-table.tsx'
import { there } from '../../words/there.ts'

/** What was heard, what is still in the wall, and what swept ground was silent. */
export function SignalsPage() {
  const workings = ask('workings').value, vein = ask('vein').value
  return (
    <Answered asks="What did we see, hear and take, and exactly where?" asked={ask('finds')}>
      {finds => <Shown finds={finds} workings={there(workings)} vein={there(vein)} />}
    </Answered>
  )
}

function Shown({ finds, workings, vein }: { readonly finds: Finds, readonly workings: Workings | undefined, readonly vein: VeinAt | undefined }) {
  const [open, gold, swept, silent] = finds.figures
  return (
    <>
      <h1 class="sentence">{finds.sentence}</h1>
      <Figures of={[
        { name: 'to follow up', answer: open!, text: `${open!.value} targets` }, { name: 'gold from signals', answer: gold! },
        { name: 'opening gone over', answer: swept! }, { name: 'of it silent', answer: silent! },
      ]}
      />
      <p class="row begin">
        <a class="btn" href={linkTo('write', 'sweep')}>Write a sweep</a><a class="btn strong" href={linkTo('write', 'target')}>Mark a signal</a>
      </p>
      {workings && <FindsSheet finds={finds} workings={workings} vein={vein} />}
      {finds.cautions.length > 0 && <ul class="cautions">{finds.cautions.map(c => <li key={c}>{c}</li>)}</ul>}
      <OpenTargets finds={finds} />
      <SweepTable finds={finds} />
    </>
  )
}
