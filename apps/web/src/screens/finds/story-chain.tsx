import type { TargetStory } from '@lodebook/answers'
import { openEntry } from '../../drawer/drawer-state.ts'
import { dayText } from '../../words/moment.ts'

/** What happened to a target, one step under the other; each opens to its entry. */
export const StoryChain = ({ story }: { readonly story: TargetStory }) => (
  <ol class="chain">
    {story.steps.map((s, i) => (
      <li key={s.entry} class={i === story.steps.length - 1 && !story.open ? 'end' : undefined}>
        <button type="button" class="fig" onClick={() => openEntry(s.entry)}>{s.says}</button>
        <small>{[s.who, s.when === '' ? '' : dayText(s.when)].filter(Boolean).join(', ')}</small>
      </li>
    ))}
  </ol>
)
