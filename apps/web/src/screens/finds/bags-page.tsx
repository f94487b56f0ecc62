import type { Bags } from '@lodebook/answers'
import { openAnswer, openEntry } from '../../drawer/drawer-state.ts'
import { Figures } from '../../drawer/figures.tsx'
import { ask } from '../../link/reckoner.ts'
import { Answered } from '../../shell/answered.tsx'
import { linkTo } from '../../shell/route.ts'
import { BagWay } from './bag-way.tsx'
import { Rolls } from './rolls.tsx'
import { Trees } from './trees.tsx'

/** Whether every bag can be accounted for; or, with a bag in the address, that bag's way. */
export function BagsPage({ bag }: { readonly bag: string | undefined }) {
  return (
    <Answered asks="Can every bag be accounted for, from the wall to its result?" asked={ask('bags')}>
      {bags => bag === undefined ? <Shown bags={bags} /> : <BagWay bags={bags} bag={bag} />}
    </Answered>
  )
}

function Shown({ bags }: { readonly bags: Bags }) {
  const [taken, followed, open] = bags.figures
  return (
    <>
      <h1 class="sentence">{bags.sentence}</h1>
      <Figures of={[
        { name: 'bags written', answer: taken!, text: String(taken!.value) }, { name: 'followed from hand to hand', answer: followed!, text: String(followed!.value) },
        { name: 'left open', answer: open!, text: String(open!.value) },
      ]}
      />
      <p class="row begin"><a class="btn" href={linkTo('write', 'custody')}>Write what was done with bags</a></p>
      <section class="section" aria-labelledby="faults">
        <h2 id="faults">Left open</h2>
        {bags.faults.length === 0 ? <p class="soft">Nothing.</p> : (
          <ul class="faults">
            {bags.faults.map(f => (
              <li key={f.sentence}>
                <span class="sort">{f.sort}</span>
                <p>{f.sentence}</p>
                <p class="todo">{f.todo}</p>
                {f.entries.length > 0 && f.entries.length <= 3 && (
                  <p class="several-entries">
                    {f.entries.map((id, i) => <button key={id} type="button" class="fig" onClick={() => openEntry(id)}>{i === 0 ? 'Open the entry' : 'Open the other'}</button>)}
                  </p>
                )}
                {f.entries.length > 3 && <p><button type="button" class="fig" onClick={() => openAnswer(open!)}>Open the entries</button></p>}
              </li>
            ))}
          </ul>
        )}
      </section>
      {bags.cautions.length > 0 && <ul class="cautions">{bags.cautions.map(c => <li key={c}>{c}</li>)}</ul>}
      <Rolls rolls={bags.rolls} />
      <Trees trees={bags.trees} />
    </>
  )
}
