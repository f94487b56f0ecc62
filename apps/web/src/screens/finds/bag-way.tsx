import type { Bags } from '@lodebook/answers'
import { bagKey } from '@lodebook/answers'
import { openEntry } from '../../drawer/drawer-state.ts'
import { linkTo } from '../../shell/route.ts'
import { dayText, momentText } from '../../words/moment.ts'
import { TreeOf } from './trees.tsx'

/** One bag: from the wall to its result, hand by hand. */
export function BagWay({ bags, bag }: { readonly bags: Bags, readonly bag: string }) {
  const found = bags.bags.filter(b => bagKey(b.bag) === bagKey(bag)), tree = bags.trees.find(t => holds(t, bag))
  if (found.length === 0) {
    return (
      <div class="empty">
        <h1 class="sentence">No bag {bag} is written yet.</h1>
        <p class="row begin"><a class="btn strong" href={linkTo('write', 'sample', 'with', 'bag', bag)}>Write it as a sample</a><a class="btn" href={linkTo('write', 'split', 'with', 'bag', bag)}>Write it as a split</a></p>
      </div>
    )
  }
  return (
    <>
      {found.length > 1 && <p class="doubt">This number is on {found.length} bags. Each is shown.</p>}
      {found.map(b => (
        <section key={b.entry}>
          <h1 class="sentence">Bag {b.bag}: {b.fate}{b.gaps.length > 0 ? `, with ${b.gaps.length === 1 ? 'a gap' : `${b.gaps.length} gaps`} in its way` : ''}.</h1>
          {b.gaps.length > 0 && <ul class="cautions">{b.gaps.map(g => <li key={g}>{g}</li>)}</ul>}
          <ol class="chain section">
            {b.steps.map((s, i) => (
              <li key={s.entry + s.act} class={i === b.steps.length - 1 ? 'end' : undefined}>
                <button type="button" class="fig" onClick={() => openEntry(s.entry)}>{s.says}</button>
                <small>{[s.who, s.when.length === 10 ? dayText(s.when) : momentText(s.when), s.seal && `seal ${s.seal}`, s.intact && `seal ${s.intact}`].filter(Boolean).join(', ')}</small>
              </li>
            ))}
          </ol>
        </section>
      ))}
      <p class="row begin"><a class="btn strong" href={linkTo('write', 'custody', 'with', 'bags', found[0]!.bag)}>Write what was done with it</a></p>
      {tree && <section class="section" aria-labelledby="family"><h2 id="family">What was taken from it</h2><TreeOf tree={tree} /></section>}
      <p class="section"><a href={linkTo('finds', 'bags')}>All bags</a></p>
    </>
  )
}

const holds = (tree: Bags['trees'][number], bag: string): boolean => bagKey(tree.bag) === bagKey(bag) || tree.of.some(t => holds(t, bag))
