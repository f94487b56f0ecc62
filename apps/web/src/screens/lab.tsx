import type { Lab } from '@lodebook/answers'
import { Figures } from '../drawer/figures.tsx'
import { Figure, rangeText } from '../drawer/figure.tsx'
import { ask } from '../link/reckoner.ts'
import { Answered } from '../shell/answered.tsx'
import { linkTo } from '../shell/route.ts'
import { BlanksInOrder } from './lab/blanks-in-order.tsx'
import { DuplicateScatter } from './lab/duplicate-scatter.tsx'
import { LabTable } from './lab/lab-table.tsx'
import { LogProbability } from './lab/log-probability.tsx'
import { NextBatchList } from './lab/next-batch-list.tsx'
import { PansShown } from './lab/pans-shown.tsx'
import { PrecisionChart } from './lab/precision-chart.tsx'
import { RunAgain } from './lab/run-again.tsx'
import { StandardsInOrder } from './lab/standards-in-order.tsx'

/** Lab: what did it run, and can we believe it? The answer first, then what speaks for and against it, then every bag with all its looks. */
export function LabScreen() {
  return <Answered asks="What did it run, and can we believe it?" asked={ask('lab')}>{lab => <Shown lab={lab} />}</Answered>
}

const names: Readonly<Record<string, string>> = { 'lab.median': 'middle bag', 'lab.controls': 'controls failed', 'lab.recovery': 'pans keep' }

function Shown({ lab }: { readonly lab: Lab }) {
  const { standards, blanks, duplicates, expected, plotted } = lab
  return (
    <>
      <h1 class="sentence">{lab.sentence}</h1>
      <Figures of={lab.figures.map(answer => ({ name: names[answer.id] ?? answer.id, answer, ...(answer.id === 'lab.controls' ? { text: String(answer.value) } : {}) }))} />
      <RunAgain failed={lab.failed} swaps={lab.swaps} swapSentence={lab.swapSentence} />
      <LabTable samples={lab.samples} />
      <div class="chart-pair">
        {standards.length > 0 && <StandardsInOrder charts={standards} />}
        {blanks.length > 0 && <BlanksInOrder blanks={blanks} />}
        {standards.length + blanks.length === 0 && <NoControls />}
        {duplicates.length > 0 && <DuplicateScatter duplicates={duplicates} />}
        {duplicates.length > 0 && <PrecisionChart duplicates={duplicates} expected={expected} />}
        {plotted.length > 1 && <LogProbability plotted={plotted} of={lab.samples.filter(s => s.role === 'ordinary').length} />}
        <PansShown pans={lab.pans} />
      </div>
      <NextBatchList batch={lab.nextBatch} />
      <Kept lab={lab} />
      <section class="section" aria-labelledby="bench-care"><h2 id="bench-care">At the bench</h2><ul class="cautions">{lab.cautions.map(c => <li key={c}>{c}</li>)}</ul></section>
    </>
  )
}

const NoControls = () => (
  <section class="section" aria-labelledby="no-controls">
    <h2 id="no-controls">Standards and blanks</h2>
    <p class="prose">None has been run, so nothing tells whether the laboratory can be believed. Put barren rock and a certified standard among the next bags, under numbers of their own.</p>
    <p class="row row-start"><a class="btn" href={linkTo('write', 'standard')}>Write a blank or standard</a></p>
  </section>
)

/** Certificates and densities. */
function Kept({ lab: { certificates, densities } }: { readonly lab: Lab }) {
  return (
    <div class="chart-pair">
      <section class="section" aria-labelledby="certificates">
        <h2 id="certificates">Certificates</h2>
        {certificates.length === 0 && <p class="soft">No assay names one yet.</p>}
        <ul class="inputs">{certificates.map(c => (
          <li key={c.name}>
            <span>{c.name}, {c.assays} assays</span>
            <span>{c.kept ? 'kept whole, with its hash' : <a href={linkTo('write', 'certificate', 'named', c.name)}>not kept yet: put the file in</a>}</span>
          </li>
        ))}
        </ul>
      </section>
      <section class="section" aria-labelledby="density">
        <h2 id="density">Density</h2>
        {densities.length === 0
          ? <p class="soft">No test yet; the standing figure is used. <a href={linkTo('write', 'density')}>Weigh a lump dry and in water</a></p>
          : <ul class="inputs">{densities.map(d => <li key={d.id}><span>{d.sentence}</span><span><Figure answer={d} /> <span class="soft small">{rangeText(d)}</span></span></li>)}</ul>}
      </section>
    </div>
  )
}
