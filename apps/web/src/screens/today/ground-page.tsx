import type { GroundSeen, JointPlace } from '@lodebook/answers'
import { openEntry } from '../../drawer/drawer-state.ts'
import { Figure } from '../../drawer/figure.tsx'
import { book } from '../../link/desk.ts'
import { ask } from '../../link/reckoner.ts'
import { linkTo } from '../../shell/route.ts'
import { crewText } from '../../words/crew-value.ts'
import { dayText, momentText } from '../../words/moment.ts'
import { azimuthText } from '../../words/number.ts'
import { farText } from './far-text.ts'
import { JointNet } from './joint-net.tsx'

/** The ground: what was seen, place by place; what the classifications make of it; the blocks that joints can cut loose; the scaling log. */
export function GroundPage() {
  const { value } = ask('ground')
  return value ? <Shown ground={value} /> : <p class="waiting" role="status">Working it out…</p>
}

function Shown({ ground }: { readonly ground: GroundSeen }) {
  return (
    <>
      <h1 class="sentence">{ground.sentence}</h1>
      <ul class="cautions">{ground.cautions.map(c => <li key={c}>{c}</li>)}</ul>
      <p class="row row-start"><a class="btn strong" href={linkTo('write', 'ground')}>Write a ground note</a><a class="btn" href={linkTo('write', 'scaling')}>What was barred down</a><a class="btn" href={linkTo('write', 'rock')}>Rock quality</a></p>
      <section class="section" aria-labelledby="notes">
        <h2 id="notes">Place by place, as one comes to it</h2>
        {ground.places.length === 0 ? <p class="soft">No ground note yet.</p> : (
          <ol class="ground-places rail">
            {ground.places.map((p) => {
              const [last, ...before] = p.notes
              return (
                <li key={p.name} class="item">
                  <span class="far">{farText(p.distance)}</span>
                  <div>
                    <p class="asks"><button type="button" class="fig" onClick={() => openEntry(last!.entry)}>{p.name}: {last!.found.join(', ')}</button>{last!.scaled ? ', scaled' : ''}</p>
                    <p class="soft small">{last!.taken === undefined ? 'no date' : dayText(last!.taken)}{last!.action === undefined ? '' : `; ${last!.action}`}{before.map(b => `; before, ${b.taken === undefined ? '' : dayText(b.taken)}: ${b.found.join(', ')}`).join('')}</p>
                  </div>
                </li>
              )
            })}
          </ol>
        )}
      </section>
      <section class="section" aria-labelledby="joints">
        <h2 id="joints">Blocks that joints can cut loose</h2>
        {ground.joints.length === 0 ? <p>Three directions of joints read within 15 m of heading are needed. <a class="btn" href={linkTo('write', 'structure')}>Write a joint</a></p> : ground.joints.map(j => <Joints key={j.name} at={j} />)}
      </section>
      <section class="section" aria-labelledby="rock">
        <h2 id="rock">What two classifications make of the rock</h2>
        {ground.rock.length === 0 ? <p class="soft">Nothing is written for a classification yet.</p> : (
          <ul class="inputs">{ground.rock.map(r => (
            <li key={r.entry}>
              <div><p><b>{r.where}</b> <span class="far">{farText(r.distance)}</span></p>{r.says.map(s => <p key={s}>{s}</p>)}</div>
              <span>{r.rating && <>RMR <Figure answer={r.rating}>{r.rating.value}</Figure> </>}{r.quality && <>Q <Figure answer={r.quality} /></>}</span>
            </li>
          ))}
          </ul>
        )}
      </section>
      <section class="section" aria-labelledby="scaling">
        <h2 id="scaling">Scaling log</h2>
        {ground.scaling.length === 0 ? <p class="soft">Nothing is written of what was barred down.</p> : (
          <ul class="plain-list">{ground.scaling.map(s => <li key={s.entry}><button type="button" class="fig" onClick={() => openEntry(s.entry)}>{momentText(s.taken)}, {s.where}</button>: {s.pieces === undefined ? 'no count' : `${s.pieces} ${s.pieces === 1 ? 'piece' : 'pieces'}`}{s.largest === undefined ? '' : `, largest ${s.largest}`}{s.left === undefined ? '' : `; left up: ${s.left}`}</li>)}</ul>
        )}
      </section>
    </>
  )
}

const moves = { falls: 'drops straight out', 'slides on one': 'slides on one joint', 'slides on two': 'slides on two joints' } as const

function Joints({ at }: { readonly at: JointPlace }) {
  const units = book.value?.units ?? 'metres and g/t'
  return (
    <article class="joint-place">
      <div>
        <h3>{at.name} <span class="far">{farText(at.distance)}</span></h3>
        <p class="soft small">Heading {azimuthText(at.azimuth)} by grid, {crewText(at.width, 'm', units)} wide, {crewText(at.height, 'm', units)} high. {at.sets.length} directions: {at.sets.map(s => `${azimuthText(s.strike)}/${Math.round(s.dip)}° (${s.readings})`).join(', ')}.</p>
        {at.blocks.length === 0 ? <p>None of these joints, by three, cuts a block that its weight moves. A fourth that was not read may.</p> : (
          <table><thead><tr><th scope="col">Surface</th><th scope="col">At most</th><th scope="col">Reaches in</th><th scope="col">Moves</th></tr></thead>
            <tbody>{at.blocks.slice(0, 6).map(b => <tr key={b.answer.id}><td>{b.surface}</td><td class="nowrap"><Figure answer={b.answer} /></td><td class="nowrap">{crewText(b.depth, 'm', units)}</td><td>{moves[b.move]}</td></tr>)}</tbody>
          </table>
        )}
        {at.heldByWeight > 0 && <p class="soft small">{at.heldByWeight} more that their weight holds in place, until something under them is taken.</p>}
      </div>
      <JointNet net={at.net} azimuth={at.azimuth} name={at.name} />
    </article>
  )
}
