import type { BagTree } from '@lodebook/answers'
import { useState } from 'preact/hooks'
import { openEntry } from '../../drawer/drawer-state.ts'
import { linkTo } from '../../shell/route.ts'
import { counted } from '../../words/number.ts'

const atFirst = 8

/** Bags that were split or doubled, drawn as trees: each under what it came from. */
export function Trees({ trees }: { readonly trees: readonly BagTree[] }) {
  const [all, setAll] = useState(false)
  if (trees.length === 0) return null
  const doubled = trees.filter(t => t.of.some(o => o.is === 'duplicate')), sorted = [...doubled, ...trees.filter(t => !doubled.includes(t))]
  const shown = all ? sorted : sorted.slice(0, atFirst)
  return (
    <section class="section" aria-labelledby="trees">
      <h2 id="trees">Splits and duplicates</h2>
      <div class="trees">{shown.map(t => <TreeOf key={t.entry} tree={t} />)}</div>
      {shown.length < sorted.length && <p class="section"><button type="button" class="btn" onClick={() => setAll(true)}>Show all {counted(sorted.length, 'tree')}</button></p>}
    </section>
  )
}

export const TreeOf = ({ tree }: { readonly tree: BagTree }) => <ul class="tree"><Branch tree={tree} /></ul>

const Branch = ({ tree }: { readonly tree: BagTree }) => (
  <li>
    {tree.is === 'pan' || tree.is === 'assay'
      ? <button type="button" class="fig" onClick={() => openEntry(tree.entry)}>{tree.is}</button>
      : <a href={linkTo('finds', 'bags', tree.bag)}>{tree.is === 'duplicate' ? `duplicate ${tree.bag}` : tree.bag}</a>}
    {' '}<span class="soft">{tree.says}</span>
    {tree.of.length > 0 && <ul>{tree.of.map(t => <Branch key={t.entry} tree={t} />)}</ul>}
  </li>
)
