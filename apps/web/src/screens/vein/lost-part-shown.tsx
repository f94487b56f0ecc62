import type { LostHeading, LostPart, NotEnough, Workings } from '@lodebook/answers'
import { Figure, rangeText } from '../../drawer/figure.tsx'
import { book } from '../../link/desk.ts'
import { NotEnoughShown } from '../../words/not-enough.tsx'
import { linkTo } from '../../shell/route.ts'
import { crewText } from '../../words/crew-value.ts'
import { azimuthText, decimal, outOf } from '../../words/number.ts'
import { ChanceCurve } from './chance-curve.tsx'
import { LostSheet } from './lost-sheet.tsx'

/** Where the vein went past the fault: the sentence, its family on plan and section, how to reach it, what it rests on and what would tell more. */
export function LostPartShown({ lost, workings }: { readonly lost: LostPart | NotEnough, readonly workings: Workings }) {
  if ('notEnough' in lost) return <NotEnoughShown answer={lost} />
  const { heading, shortest, faces } = lost
  return (
    <>
      <p class="prose"><Figure answer={lost.apart}>{lost.apart.sentence}</Figure></p>
      <p class="prose">{tellsWords(lost)} It lies {side(lost)} in {Math.round(20 * lost.handChance)} of 20 cases. It rests on {lost.rests}.</p>
      <LostSheet lost={lost} workings={workings} />
      {'notEnough' in heading
        ? <p class="prose doubt">{heading.sentence}</p>
        : (
            <>
              <ChanceCurve heading={heading} shortest={'notEnough' in shortest ? undefined : shortest} />
              <Ways ways={[{ name: 'level', way: heading }, ...('notEnough' in shortest ? [] : [{ name: 'shortest of all', way: shortest }]), ...faces.map(way => ({ name: 'level', way }))]} />
            </>
          )}
      {lost.cautions.length > 0 && <ul class="cautions">{lost.cautions.map(c => <li key={c}>{c}</li>)}</ul>}
      <h3 class="sub">What it rests on</h3>
      <ul class="said">{lost.evidence.slice(1).map(e => <li key={e.id}><Figure answer={e}>{e.sentence}</Figure></li>)}</ul>
      {lost.wanted.length > 0 && (
        <>
          <h3 class="sub">What would tell more</h3>
          <ul class="wanted-list">{lost.wanted.map(w => <li key={w.why}><span class="capital">{w.why}</span> <a class="btn" href={linkTo('write', w.kind)}>Write it down</a></li>)}</ul>
        </>
      )}
    </>
  )
}

const side = ({ hand }: LostPart): string => hand === 'above' || hand === 'below' ? hand : `to the ${hand}`

const tellsWords = ({ tells }: LostPart): string => tells === 'where'
  ? 'The evidence tells where.'
  : tells === 'which hand' ? 'The evidence tells on which hand it lies, not how far.' : 'The evidence cannot tell on which hand it lies: what is drawn is all that may be.'

function Ways({ ways }: { readonly ways: readonly { readonly name: string, readonly way: LostHeading }[] }) {
  const units = book.value?.units ?? 'metres and g/t'
  return (
    <div class="scroll-x" tabIndex={0} role="group" aria-label="Headings that would reach it">
      <table>
        <thead><tr><th scope="col">From</th><th scope="col">Way</th><th scope="col">Bearing</th><th scope="col">Slope</th><th scope="col" class="n">Half of the cases</th><th scope="col" class="n">8 in 10</th><th scope="col" class="n">Met at all</th></tr></thead>
        <tbody>{ways.map(({ name, way }) => (
          <tr key={way.length.id}>
            <th scope="row">{way.station}</th><td>{name}</td><td>{azimuthText(way.bearing)}</td><td>{Math.abs(way.inclination) < 0.5 ? 'level' : `${decimal(Math.abs(way.inclination), 0)}° ${way.inclination > 0 ? 'up' : 'down'}`}</td>
            <td class="n"><Figure answer={way.length}>{crewText(way.length.value, 'm', units)}</Figure></td><td class="n">{rangeText(way.length).replace(/, 8.in.10$/, '') || 'no end'}</td><td class="n">{outOf(way.meets, 20)}</td>
          </tr>
        ))}
        </tbody>
      </table>
    </div>
  )
}
