import type { LostPart, VeinAt, VeinSheet, Workings } from '@lodebook/answers'
import { ask } from '../../../link/reckoner.ts'
import { Answered } from '../../../shell/answered.tsx'
import { linkTo } from '../../../shell/route.ts'
import { SpaceView } from './space-view.tsx'
import { there } from '../../../words/there.ts'

/** The mine in three dimensions: passages, the vein, the fault, where the vein may have gone, and everything that has a place. */
export function InSpaceScreen() {
  const asked = ask('workings')
  const vein = there<VeinAt>(ask('vein').value), sheet = there<VeinSheet>(ask('veinSheet').value), lost = there<LostPart>(ask('lostPart').value)
  return (
    <Answered asks="Where is everything, and where did the vein go?" asked={asked}>
      {workings => (
        <>
          <h1 class="sentence">{wordsOf(workings, vein, lost)}</h1>
          <p class="row row-start"><a class="btn" href={linkTo('vein')}>Back to the vein</a><a class="btn" href={linkTo('workings')}>Plan and long section</a></p>
          <SpaceView workings={workings} vein={vein} sheet={sheet} lost={lost} />
        </>
      )}
    </Answered>
  )
}

const wordsOf = (workings: Workings, vein: VeinAt | undefined, lost: LostPart | undefined): string => {
  const with_ = [vein && `${vein.name} as one plane`, vein?.fault && `${vein.fault.name} where it cuts it off`, lost && 'twenty cases of where it may go on'].filter(Boolean)
  const list = with_.length > 1 ? `${with_.slice(0, -1).join(', ')} and ${with_.at(-1)!}` : with_.join('')
  return `${workings.stations.length} stations and ${workings.placed.length} placed entries in three dimensions${list ? `, with ${list}` : ''}.`
}
