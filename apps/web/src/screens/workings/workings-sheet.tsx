import type { VeinAt, Workings } from '@lodebook/answers'
import type { Enu } from '@lodebook/reckon'
import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import type { SurveyedBy } from '../../bookkeeper/desk.ts'
import { openAnswer, openEntry, open } from '../../drawer/drawer-state.ts'
import type { Page } from '../../drawer/drawer-state.ts'
import { Drawing } from '../../drawing/drawing.tsx'
import { GridCrosses, SectionTicks } from '../../drawing/grid.tsx'
import { fitTogether, layOut } from '../../drawing/layout.ts'
import { lookingAlong, turned, wind } from '../../drawing/turn.ts'
import { useSize } from '../../drawing/use-size.ts'
import type { Size } from '../../drawing/use-size.ts'
import type { Point, View } from '../../drawing/view.ts'
import { book, desk } from '../../link/desk.ts'
import { ChoiceRow } from '../../shell/choice-row.tsx'
import { ground } from '../../shell/ground.ts'
import { crewText } from '../../words/crew-value.ts'
import { azimuthText } from '../../words/number.ts'
import { gridText, onTraverse } from './finger.ts'
import type { Pointed } from './finger.ts'
import { PlanLines, SectionLines } from './lines.tsx'
import { Margin } from './margin.tsx'
import { onPlan, onSection } from './section-line.ts'
import { hiddenAtFirst, sheetModel, standing } from './sheet.ts'
import { follow } from './together.ts'

const lays = ['along vein', 'north up'] as const

/** Plan above, long section below, one margin. They are one object: a finger on one moves a mark on the other, and they are enlarged together. */
export function WorkingsSheet({ workings, vein }: { readonly workings: Workings, readonly vein: VeinAt | undefined }) {
  const [lay, setLay] = useState<typeof lays[number]>('along vein'), [ellipses, setEllipses] = useState(false)
  const [hidden, setHidden] = useState<ReadonlySet<string>>(new Set(hiddenAtFirst))
  const model = useMemo(() => sheetModel(workings, vein, lay === 'north up'), [workings, vein, lay])
  const shown = useMemo(() => new Set(['stations', ...workings.placed.map(p => p.kind)].filter(k => !hidden.has(k))), [workings, hidden])
  const things = useMemo(() => standing(workings, shown), [workings, shown])
  const planThings = useMemo(() => things.map(s => ({ ...s.thing, at: onPlan(s.at, model.planAzimuth) })), [things, model])
  const sectionThings = useMemo(() => things.map(s => ({ ...s.thing, at: onSection(s.at, model.sectionAzimuth) })), [things, model])
  const [plan, setPlan] = useState<View>(), [section, setSection] = useState<View>()
  const [pointed, setPointed] = useState<Pointed>(), [surveyed, setSurveyed] = useState<SurveyedBy>()
  useEffect(() => { void desk.surveyedBy().then(setSurveyed) }, [workings])

  // The two views share their scale, and their distance along when the plan lies along the section; the other way of each stays in the middle.
  const aligned = lay !== 'north up'
  const column = useRef<HTMLDivElement>(null), room = useSize(column), paper = ground.value === 'print'
  const laid = useMemo(() => layOut([model.plan, model.section], room.width, innerHeight, paper), [model, room.width, paper])
  const [sizes, setSizes] = useState<{ readonly plan?: Size, readonly section?: Size }>({})
  const fitted = useMemo(
    () => sizes.plan && sizes.section && fitTogether([model.plan, model.section], [sizes.plan, sizes.section], laid.scale),
    [model, sizes, laid])
  useEffect(() => { setPlan(fitted?.[0]); setSection(fitted?.[1]) }, [fitted])
  const onPlanView = (view: View) => { setPlan(view); setSection(s => s && sizes.section && follow(view, s, sizes.section.height, aligned)) }
  const onSectionView = (view: View) => { setSection(view); setPlan(p => p && sizes.plan && follow(view, p, sizes.plan.height, aligned)) }

  const point = (project: (p: Enu) => Point, view: View | undefined) => (p: Point | undefined, id: string | undefined) => {
    if (!p || !view) { setPointed(undefined); return }
    const thing = things.find(t => t.id === id)
    setPointed(thing ? { at: thing.at, says: `${thing.thing.says}.` } : onTraverse(workings, project, p, 28 / view.k) ?? { at: undefined, says: '' })
  }
  const pageOf = (id: string): Page => {
    const station = id.startsWith('station:') ? workings.stations.find(s => `station:${s.name}` === id) : undefined
    return station ? { is: 'answer', answer: station.answer } : { is: 'entry', id: id.replace('entry:', '') }
  }
  const pick = (ids: readonly string[]) => {
    const page = pageOf(ids[0]!)
    if (ids.length > 1) open({ is: 'several', title: 'Which of these?', of: ids.slice(0, 12).map(id => ({ label: things.find(t => t.id === id)?.thing.says ?? id, page: pageOf(id) })) })
    else if (page.is === 'entry') openEntry(page.id)
    else if (page.is === 'answer') openAnswer(page.answer)
  }
  const onPlanHere = (p: Enu) => onPlan(p, model.planAzimuth), onSectionHere = (p: Enu) => onSection(p, model.sectionAzimuth)
  const toGrid = (x: number, y: number): readonly [number, number] => {
    const back = turned(x, y, 180 - model.planAzimuth) // the turn undone
    return [back.x, back.y]
  }
  const looking = lookingAlong(model.sectionAzimuth)

  return (
    <section class="sheet" aria-label="Plan and long section">
      <div class="sheet-body">
        <div ref={column}>
          <Drawing
            name="Plan"
            height={laid.heights[0]!}
            view={plan}
            fitted={fitted?.[0]}
            onView={onPlanView}
            onSize={size => setSizes(all => ({ ...all, plan: size }))}
            things={planThings}
            onPick={pick}
            onPoint={point(onPlanHere, plan)}
            finger={pointed?.at && onPlanHere(pointed.at)}
            head={(
              <>
                <p><b>Plan</b> {aligned ? `${azimuthText(model.sectionAzimuth)} to the right` : 'grid north up'}{vein && `; vein drawn at elevation ${crewText(model.level, 'm', book.value!.units, 1)}`}</p>
                <ChoiceRow label="The plan lies" of={lays} value={lay} onChoose={setLay} />
              </>
            )}
            over={(view, size) => (
              <GridCrosses view={view} size={size} marks={planThings.map(t => t.at)} toGrid={toGrid} toPlan={(e, n) => onPlanHere([e, n, 0])} />
            )}
          >
            <PlanLines workings={workings} vein={vein} model={model} ellipses={ellipses} />
          </Drawing>
          <Drawing
            name="Long section"
            height={laid.heights[1]!}
            view={section}
            fitted={fitted?.[1]}
            onView={onSectionView}
            onSize={size => setSizes(all => ({ ...all, section: size }))}
            things={sectionThings}
            onPick={pick}
            onPoint={point(onSectionHere, section)}
            finger={pointed?.at && onSectionHere(pointed.at)}
            head={<p><b>Long section</b> along {azimuthText(model.sectionAzimuth)}, looking {wind(looking)}</p>}
            over={(view, size) => <SectionTicks view={view} size={size} along="along" up="elevation" />}
          >
            <SectionLines workings={workings} vein={vein} model={model} />
          </Drawing>
          <p class="finger-says" aria-live="off">{pointed?.says || (pointed?.at && gridText(pointed.at)) || <span class="soft">Point at the sheet to read where you are. Tap a mark to open it.</span>}</p>
        </div>
        <Margin
          workings={workings}
          k={plan?.k}
          scale={laid.scale}
          upAzimuth={(model.planAzimuth + 270) % 360}
          surveyed={surveyed}
          hidden={hidden}
          onHidden={setHidden}
          ellipses={ellipses}
          onEllipses={setEllipses}
        />
      </div>
    </section>
  )
}
