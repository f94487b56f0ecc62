import type { LostPart, NotEnough, VeinAt, VeinSheet, Workings } from '@lodebook/answers'
import { isAnswer } from '@lodebook/answers'
import { Figures } from '../drawer/figures.tsx'
import { Figure } from '../drawer/figure.tsx'
import { ask } from '../link/reckoner.ts'
import { Answered } from '../shell/answered.tsx'
import { lazyScreen } from '../shell/lazy-screen.tsx'
import { linkTo } from '../shell/route.ts'
import { FaultList } from './vein/fault-list.tsx'
import { LieSheet } from './vein/lie-sheet.tsx'
import { LostPartShown } from './vein/lost-part-shown.tsx'
import { MaterialList } from './vein/material-list.tsx'
import { ThicknessSheet } from './vein/thickness-sheet.tsx'
import { there } from '../words/there.ts'

const InSpace = lazyScreen(async () => (await import('./vein/in-space/in-space-screen.tsx')).InSpaceScreen)

/** Vein: what does it do, how thick is it, and where did it go? Or, one level down, the mine in three dimensions. */
export function VeinScreen({ path }: { readonly path: readonly string[] }) {
  return path[0] === '3d' ? <InSpace /> : <Told />
}

function Told() {
  const asked = ask('veinSheet'), vein = there(ask('vein').value), lost = ask('lostPart').value, workings = there(ask('workings').value)
  return (
    <Answered asks="What does the vein do, how thick is it, and where did it go?" asked={asked}>
      {sheet => vein && workings ? <Shown sheet={sheet} vein={vein} lost={lost} workings={workings} /> : <p class="waiting" role="status">Working it out…</p>}
    </Answered>
  )
}

function Shown({ sheet, vein, lost, workings }: {
  readonly sheet: VeinSheet
  readonly vein: VeinAt
  readonly lost: LostPart | NotEnough | undefined
  readonly workings: Workings
}) {
  const found = there(lost)
  return (
    <>
      <h1 class="sentence">{sheet.sentence}{lost && ` ${lost.sentence}`}</h1>
      <Figures of={[
        { name: 'strike', answer: vein.strike }, { name: 'dip', answer: vein.dip },
        ...(isAnswer(sheet.thickness.answer) ? [{ name: 'true width', answer: sheet.thickness.answer }] : []),
        ...(found ? [{ name: `past ${found.fault}, ${found.hand === 'above' || found.hand === 'below' ? found.hand : `to the ${found.hand}`}`, answer: found.apart }] : []),
      ]}
      />
      <p class="row row-start"><a class="btn" href={linkTo('vein', '3d')}>See it in three dimensions</a></p>
      <LieSheet sheet={sheet} vein={vein} workings={workings} />
      {isAnswer(sheet.lie.answer) ? <p class="said-one"><Figure answer={sheet.lie.answer}>{sheet.lie.answer.sentence}</Figure></p> : <p class="said-one soft">{sheet.lie.answer.sentence} {sheet.lie.answer.wanted[0]?.why}.</p>}
      {sheet.cautions.length > 0 && <ul class="cautions">{sheet.cautions.map(c => <li key={c}>{c}</li>)}</ul>}
      <section class="section" aria-labelledby="lost"><h2 id="lost">Where did it go?</h2>{lost ? <LostPartShown lost={lost} workings={workings} /> : <p class="waiting">Working it out…</p>}</section>
      <section class="section" aria-labelledby="thick"><h2 id="thick">How thick, and what is in it</h2><ThicknessSheet sheet={sheet} vein={vein} lost={found} workings={workings} /></section>
      <MaterialList sheet={sheet} />
      <FaultList sheet={sheet} />
    </>
  )
}
