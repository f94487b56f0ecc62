import type { VeinAt, Workings } from '@lodebook/answers'
import { useMemo, useState } from 'preact/hooks'
import { openAnswer, openEntry } from '../drawer/drawer-state.ts'
import { Figure } from '../drawer/figure.tsx'
import { ask } from '../link/reckoner.ts'
import { Answered } from '../shell/answered.tsx'
import { linkTo } from '../shell/route.ts'
import { counted } from '../words/number.ts'
import { LeftOutList, SuspectLine } from './workings/decisions.tsx'
import { StationTable } from './workings/station-table.tsx'
import { WorkingsSheet } from './workings/workings-sheet.tsx'
import { there } from '../words/there.ts'

/** Workings: where is everything? Plan and long section of one mine, true to scale. */
export function WorkingsScreen() {
  const asked = ask('workings'), vein = ask('vein').value
  return (
    <Answered asks="Where is everything?" asked={asked}>
      {workings => <Shown workings={workings} vein={there(vein)} />}
    </Answered>
  )
}

function Shown({ workings, vein }: { readonly workings: Workings, readonly vein: VeinAt | undefined }) {
  const [all, setAll] = useState(false)
  const suspects = useMemo(() => [...workings.suspects].sort((a, b) => b.times - a.times), [workings])
  return (
    <>
      <h1 class="sentence">{workings.sentence}</h1>
      <WorkingsSheet workings={workings} vein={vein} />
      <ul class="said">{workings.figures.map(f => <li key={f.id}><Figure answer={f}>{f.sentence}</Figure></li>)}</ul>
      {workings.cautions.length > 0 && <ul class="cautions">{workings.cautions.map(c => <li key={c}>{c}</li>)}</ul>}
      <section class="section" aria-labelledby="suspects">
        <h2 id="suspects">Readings that the rest of the survey disagrees with</h2>
        {suspects.length === 0 ? <p class="soft">None stands out.</p> : (
          <>
            <p class="prose">Nothing has been taken out. Look at each, shoot it again if you can, and mend the entry or leave the reading out: that is yours to decide, and can be taken back.</p>
            <ol class="suspects">{suspects.map(s => <SuspectLine key={s.entry + s.reading} suspect={s} />)}</ol>
          </>
        )}
        <LeftOutList leftOut={workings.leftOut} />
      </section>
      {workings.adrift.length > 0 && (
        <section class="section" aria-labelledby="adrift">
          <h2 id="adrift">Surveyed, but joined to nothing</h2>
          <ul class="plain-list">{workings.adrift.map(a => <li key={a.stations.join()}>{a.sentence}</li>)}</ul>
          <p class="row row-start"><a class="btn" href={linkTo('write', 'shot')}>Write a shot</a><a class="btn" href={linkTo('write', 'tie')}>Write a tie</a></p>
        </section>
      )}
      {workings.notPlaced.length > 0 && (
        <section class="section" aria-labelledby="unplaced">
          <h2 id="unplaced">Not placed yet: {counted(workings.notPlaced.length, 'entry', 'entries')}</h2>
          <ul class="plain-list">
            {(all ? workings.notPlaced : workings.notPlaced.slice(0, 8)).map(n => (
              <li key={n.entry}><button type="button" class="fig" onClick={() => openEntry(n.entry)}>{n.title}</button> <span class="soft">{n.why}</span> <a class="btn" href={linkTo('write', 'mend', n.entry)} aria-label={`Place ${n.title}`}>Place it</a></li>
            ))}
          </ul>
          {!all && workings.notPlaced.length > 8 && <button type="button" class="btn" onClick={() => setAll(true)}>Show all</button>}
        </section>
      )}
      <p class="row row-start"><a class="btn" href={linkTo('vein', '3d')}>See it in three dimensions</a></p>
      <StationTable stations={workings.stations} onOpen={openAnswer} />
    </>
  )
}
