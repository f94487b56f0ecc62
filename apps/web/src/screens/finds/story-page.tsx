import type { FindAt, Finds, TargetStory } from '@lodebook/answers'
import { Figure } from '../../drawer/figure.tsx'
import { openEntry } from '../../drawer/drawer-state.ts'
import { inTape } from '../../words/in-tape.ts'
import { ask } from '../../link/reckoner.ts'
import { Answered } from '../../shell/answered.tsx'
import { linkTo } from '../../shell/route.ts'
import { Photos } from './photos.tsx'
import { StoryChain } from './story-chain.tsx'

/** One find on one page: how to find it again, its chain from signal to weight, its pictures, and what lies within a metre. */
export function StoryPage({ id }: { readonly id: string }) {
  return (
    <Answered asks="Where was it, and what became of it?" asked={ask('finds')}>
      {finds => <Shown finds={finds} id={id} />}
    </Answered>
  )
}

function Shown({ finds, id }: { readonly finds: Finds, readonly id: string }) {
  const find = finds.finds.find(f => f.entry === id), story = finds.targets.find(t => t.entry === id)
  if (!find) return <p>This find is not in the book on this device, or was struck out. <a href={linkTo('finds')}>All finds</a></p>
  return (
    <>
      <h1 class="sentence">{story ? story.sentence : `${find.title}.`}</h1>
      {story?.gold && <p class="big"><span class="value"><Figure answer={story.gold} /></span><span class="range">of gold at the end of the chain</span></p>}
      <div class="story">
        <div>
          <Where find={find} portal={finds.portal} />
          {story && <Next story={story} />}
          {story && (
            <section class="section" aria-labelledby="chain">
              <h2 id="chain">From the signal to the weight</h2>
              <StoryChain story={story} />
            </section>
          )}
        </div>
        <div>
          <Photos find={find} />
          <Near find={find} />
        </div>
      </div>
      <p class="row begin"><button type="button" class="btn" onClick={() => openEntry(id)}>The entry with its history</button></p>
    </>
  )
}

/** Where it is, as one would tape it again. */
function Where({ find, portal }: { readonly find: FindAt, readonly portal: string }) {
  const text = inTape
  return (
    <section aria-labelledby="again">
      <h2 id="again">To find it again</h2>
      <p class="where">{find.where}</p>
      <dl class="facts">
        {find.way !== undefined && <><dt>On foot from {portal}</dt><dd>{text(find.way)} along the shots</dd></>}
        {find.nearestStation && <><dt>Nearest station</dt><dd>{find.nearestStation.name}, {text(find.nearestStation.metres)} in a straight line</dd></>}
        {find.doubt !== undefined && <><dt>Look within</dt><dd>{text(2 * find.doubt)} of there: twice the doubt of the place</dd></>}
      </dl>
      {find.hazards.length > 0 && <ul class="cautions">{find.hazards.map(h => <li key={h.entry}>{h.tag || 'a hazard'} is written down {text(h.metres)} from here</li>)}</ul>}
    </section>
  )
}

function Next({ story }: { readonly story: TargetStory }) {
  if (!story.open) return null
  return (
    <section class="section" aria-labelledby="next-step">
      <h2 id="next-step">Next</h2>
      <p class="prose">{story.next}</p>
      <p class="row begin"><a class="btn strong" href={linkTo('write', 'target-check', 'with', 'mark', story.mark)}>Write what the next check shows</a></p>
    </section>
  )
}

function Near({ find }: { readonly find: FindAt }) {
  return (
    <section class="section" aria-labelledby="near">
      <h2 id="near">Within {inTape(1)}</h2>
      {find.point === undefined ? <p class="soft">It has no place in the survey yet.</p>
        : find.near.length === 0 ? <p class="soft">Nothing else is written.</p> : (
          <ul class="entries-behind">
            {find.near.map(n => (
              <li key={n.entry}>
                {['target', 'sample', 'relic', 'photo'].includes(n.kind)
                  ? <a href={linkTo('finds', 'at', n.entry)}>{n.title}</a>
                  : <button type="button" class="fig" onClick={() => openEntry(n.entry)}>{n.title}</button>}
                <span class="soft small">{[n.tag, inTape(n.metres)].filter(Boolean).join(', ')}</span>
              </li>
            ))}
          </ul>
        )}
    </section>
  )
}
