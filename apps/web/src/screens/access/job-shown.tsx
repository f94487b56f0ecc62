import type { Digging } from '@lodebook/answers'
import { openEntry } from '../../drawer/drawer-state.ts'
import { Figure } from '../../drawer/figure.tsx'
import { Figures } from '../../drawer/figures.tsx'
import { linkTo } from '../../shell/route.ts'
import { SectionsDrawn } from './sections-drawn.tsx'

/** One digging job: what is left of it, its tally, its sections, where it goes. */
export function JobShown({ job }: { readonly job: Digging }) {
  const { tally } = job
  return (
    <li class={`job ${job.state === 'done' ? 'is-done' : ''}`}>
      <h3><button type="button" class="fig" onClick={() => openEntry(job.entry)}>{job.name}</button> <span class="soft small">{job.state}</span></h3>
      <p class="job-says">{job.sentence.replace(`${job.name}: `, '').replace(/^./, c => c.toUpperCase())}</p>
      {job.state !== 'done' && <p>{tally.sentence}</p>}
      {job.sections.length > 0 && <SectionsDrawn sections={job.sections} name={job.name} />}
      <Figures of={[
        { name: 'in place', answer: job.volume }, { name: 'loose', answer: job.loose }, { name: 'one load', answer: job.loadMass, text: job.loadMass.sentence.replace(/^One \w+ takes /, '').replace(/:.*$/, '') },
        ...(job.state === 'done' ? [] : [{ name: 'loads left', answer: tally.left }, { name: 'from load to load', answer: tally.pace }, { name: 'days left', answer: job.days }]),
      ]}
      />
      <p><Figure answer={job.heap}>{job.heap.sentence}</Figure></p>
      {job.cautions.map(c => <p key={c} class="doubt">{c}</p>)}
      {job.state !== 'done' && <p><a class="btn strong" href={linkTo('access', 'tally', job.entry)}>Tally loads</a></p>}
    </li>
  )
}
