import type { Access } from '@lodebook/answers'
import { useState } from 'preact/hooks'
import { Figures } from '../drawer/figures.tsx'
import { ask } from '../link/reckoner.ts'
import { Answered } from '../shell/answered.tsx'
import { ChoiceRow } from '../shell/choice-row.tsx'
import { linkTo } from '../shell/route.ts'
import { NotEnoughShown } from '../words/not-enough.tsx'
import { counted } from '../words/number.ts'
import { JobShown } from './access/job-shown.tsx'
import { LongProfile } from './access/long-profile.tsx'
import { OpeningShown } from './access/opening-shown.tsx'
import { TallyPage } from './access/tally-page.tsx'

/** Access: what will it take to get in and out properly? The jobs with their loads and days, the way in, its timber, and what opening up does. */
export function AccessScreen({ path }: { readonly path: readonly string[] }) {
  return (
    <Answered asks="What will it take to get in and out properly?" asked={ask('access')}>
      {access => path[0] === 'tally' ? <TallyPage access={access} entry={path[1] ?? ''} /> : <Shown access={access} />}
    </Answered>
  )
}

function Shown({ access }: { readonly access: Access }) {
  const { ways } = access, [name, choose] = useState(ways[0]?.heading), way = ways.find(w => w.heading === name) ?? ways[0]
  return (
    <div class="access">
      <h1 class="sentence">{access.sentence}</h1>
      {access.figures.length > 0 && <Figures of={access.figures} />}
      <section class="section" aria-labelledby="jobs">
        <h2 id="jobs">To dig, fill and carry</h2>
        <ol class="jobs">{access.jobs.map(job => <JobShown key={job.entry} job={job} />)}</ol>
        {access.unsized.map(job => <p key={job.entry}>{job.name}: {job.why}.</p>)}
        <p class="row row-start"><a class="btn" href={linkTo('write', 'digging')}>Write a digging job</a><a class="btn" href={linkTo('write', 'section')}>Tape a cross section</a></p>
      </section>
      {way && (
        <section class="section" aria-labelledby="way">
          <h2 id="way">Walking and wheeling in</h2>
          {ways.length > 1 && <ChoiceRow label="Heading" of={ways.map(w => w.heading)} value={way.heading} onChoose={choose} />}
          <p>{way.sentence}</p>
          <LongProfile key={way.heading} name={`Long profile of ${way.heading}`} stations={way.stations} names={way.names} pinches={way.pinches} ponds={way.ponds} />
          {way.rough && <p class="doubt">Offsets are missing at some stations: usual ones stand in for them.</p>}
          <Figures of={way.figures} />
        </section>
      )}
      <section class="section" aria-labelledby="opening">
        <h2 id="opening">What opening it up would do</h2>
        {'notEnough' in access.opening ? <NotEnoughShown answer={access.opening} /> : <OpeningShown opening={access.opening} />}
      </section>
      <section class="section" aria-labelledby="timber">
        <h2 id="timber">Timber and lagging</h2>
        {'notEnough' in access.timber ? <NotEnoughShown answer={access.timber} /> : (
          <>
            <p>{access.timber.sentence}</p>
            <Figures of={[{ name: 'sets', answer: access.timber.sets, text: counted(access.timber.sets.value, 'set') }, { name: 'lagging', answer: access.timber.lagging, text: counted(access.timber.lagging.value, 'board') }, { name: 'round timber', answer: access.timber.round }]} />
            <ul class="inputs">{access.timber.places.map(p => <li key={`${p.heading}${p.from}`}><span>{p.heading}</span><span>{p.says}</span></li>)}</ul>
          </>
        )}
      </section>
      <ul class="cautions">{[...access.cautions, ...('notEnough' in access.opening ? [] : access.opening.cautions)].map(c => <li key={c}>{c}</li>)}</ul>
    </div>
  )
}
