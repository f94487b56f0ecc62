import type { CrewUnits, PlanWish, SamplePlanFound, SamplePlanning } from '@lodebook/answers'
import { imperial, massText, metric, planFor, shareText } from '@lodebook/answers'
import { useMemo, useState } from 'preact/hooks'
import { Figure } from '../../drawer/figure.tsx'
import { book } from '../../link/desk.ts'
import { ask } from '../../link/reckoner.ts'
import { Answered } from '../../shell/answered.tsx'
import { ChoiceRow } from '../../shell/choice-row.tsx'
import { linkTo } from '../../shell/route.ts'
import { plain } from '../../words/number.ts'
import { asked } from './plan-fields.ts'

/** How much to take, and how to bring it down: before the bag is filled. */
export function HowMuchPage() {
  return <Answered asks="How much should we take, and how do we bring it down?" asked={ask('samplePlan')}>{planning => <Shown planning={planning} />}</Answered>
}

const ways = ['cut evenly across', 'thrown in as broken'] as const

function Shown({ planning }: { readonly planning: SamplePlanning }) {
  const units: CrewUnits = book.value!.units === 'feet and oz/ton' ? imperial : metric
  const [texts, setTexts] = useState<Readonly<Partial<Record<keyof PlanWish, string>>>>({}), [cut, setCut] = useState(planning.wish.cut)
  const fields = asked(units)
  const read = (name: keyof typeof fields) => texts[name] === undefined ? planning.wish[name] : fields[name].from(Number(texts[name]))
  const wish: PlanWish = {
    grade: read('grade'), grain: read('grain'), fragment: read('fragment'), precision: read('precision'), finalMass: read('finalMass'), finalSize: read('finalSize'), cut,
  }
  const wrong = (Object.keys(fields) as (keyof typeof fields)[]).find(name => !(wish[name] > 0 && Number.isFinite(wish[name])))
  const own = Object.keys(texts).length > 0 || cut !== planning.wish.cut
  const found: SamplePlanFound | undefined = useMemo(
    () => wrong ? undefined : own ? planFor(wish, units) : planning,
    [wrong, own, JSON.stringify(wish), planning])
  return (
    <>
      <h1 class="sentence" aria-live="polite">{found?.sentence ?? `${fields[wrong!].label}: a number above zero is needed.`}</h1>
      {found && (
        <ol class="chain section plan-steps">
          <li>Take <Figure answer={found.bag}>{massText(found.bag.value, units)}</Figure>{cut ? ', cut evenly across the face or the vein' : ', as it falls'}.</li>
          {found.steps.map((s, i) => <li key={s} class={i === found.steps.length - 1 ? 'end' : undefined}>{s}</li>)}
        </ol>
      )}
      {found && (
        <p>
          Together <Figure answer={found.precision}>{shareText(found.precision.value)}</Figure>; one standard deviation.
          About {plain(Math.round(found.minutes / 5) * 5)} minutes of one pair of hands.
        </p>
      )}
      <section class="section" aria-labelledby="material">
        <h2 id="material">For rock like this</h2>
        <div class="wish">
          {(Object.keys(fields) as (keyof typeof fields)[]).map(name => (
            <div class="field" key={name}>
              <label class="label" for={`wish-${name}`}>{fields[name].label}, {fields[name].unit}</label>
              <input
                id={`wish-${name}`}
                class="box"
                type="text"
                inputMode="decimal"
                value={texts[name] ?? plain(fields[name].to(planning.wish[name])).replaceAll(',', '')}
                aria-invalid={wrong === name}
                onInput={e => setTexts({ ...texts, [name]: e.currentTarget.value })}
              />
              <p class="hint">{texts[name] === undefined ? planning.whence[name] : 'your own figure, for this page only'}</p>
            </div>
          ))}
        </div>
        <ChoiceRow label="The rock goes into the bag" show of={ways} value={cut ? ways[0] : ways[1]} onChoose={way => setCut(way === ways[0])} />
        {own && <p class="row begin"><button type="button" class="btn" onClick={() => { setTexts({}); setCut(planning.wish.cut) }}>As the book has it</button></p>}
      </section>
      {found && <BagTable found={found} units={units} />}
      {found && <ul class="cautions">{found.cautions.map(c => <li key={c}>{c}</li>)}</ul>}
      <p class="row begin"><a class="btn strong" href={linkTo('write', 'sample')}>Write the sample</a></p>
    </>
  )
}

/** What bags of several masses can have at best. */
const BagTable = ({ found, units }: { readonly found: SamplePlanFound, readonly units: CrewUnits }) => (
  <section class="section" aria-labelledby="at-best">
    <h2 id="at-best">What a bag can tell at best</h2>
    <div class="scroll-x" tabIndex={0} role="group" aria-labelledby="at-best">
      <table>
        <thead>
          <tr>
            <th scope="col" class="n">Bag</th><th scope="col" class="n">cut evenly, %</th><th scope="col" class="n">as broken, %</th><th scope="col" class="n">grains that matter</th>
            <th scope="col" class="n">holds none, %</th>
          </tr>
        </thead>
        <tbody>{found.bags.map(b => (
          <tr key={b.mass}>
            <td class="n">{massText(b.mass, units)}</td><td class="n">{shareText(b.atBest).replace(' %', '')}</td><td class="n">{shareText(b.asBroken).replace(' %', '')}</td>
            <td class="n">{plain(Number(b.grains.toPrecision(2)))}</td><td class="n">{b.none < 0.01 ? 'under 1' : plain(Math.round(b.none * 100))}</td>
          </tr>
        ))}
        </tbody>
      </table>
    </div>
    <p class="hint">One standard deviation over the grade. Where it is more than about 30 %, most such bags read low and a few very high.</p>
  </section>
)
