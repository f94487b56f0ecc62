import type { Finds, VeinAt, Workings } from '@lodebook/answers'
import type { Enu } from '@lodebook/reckon'
import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import { open as openDrawer, openAnswer } from '../../drawer/drawer-state.ts'
import { Drawing } from '../../drawing/drawing.tsx'
import { SectionTicks } from '../../drawing/grid.tsx'
import { fitTogether, layOut } from '../../drawing/layout.ts'
import { lookingAlong, wind } from '../../drawing/turn.ts'
import { useSize } from '../../drawing/use-size.ts'
import type { Size } from '../../drawing/use-size.ts'
import { boundsOf } from '../../drawing/view.ts'
import type { Point, View } from '../../drawing/view.ts'
import { book } from '../../link/desk.ts'
import { go } from '../../shell/route.ts'
import { ground } from '../../shell/ground.ts'
import { crewUnit, crewValue } from '../../words/crew-value.ts'
import { azimuthText } from '../../words/number.ts'
import { PlanLines, SectionLines } from '../workings/lines.tsx'
import { onPlan, onSection } from '../workings/section-line.ts'
import { sheetModel } from '../workings/sheet.ts'
import { follow } from '../workings/together.ts'
import { FindsMargin } from './finds-margin.tsx'
import { SweptLines } from './swept-lines.tsx'
import { markedFinds, shownKinds } from './things.ts'
import type { ShownKind } from './things.ts'

const hiddenAtFirst: readonly ShownKind[] = ['other signals', 'samples', 'relics', 'photos']

/** Plan and long section of what was found, with the ground that was swept drawn along the sides it was swept on. */
export function FindsSheet({ finds, workings, vein }: { readonly finds: Finds, readonly workings: Workings, readonly vein: VeinAt | undefined }) {
  const [hidden, setHidden] = useState<ReadonlySet<string>>(new Set(hiddenAtFirst)), [says, setSays] = useState(''), [finger, setFinger] = useState<Enu>()
  const model = useMemo(() => {
    const lies = sheetModel(workings, vein, false)
    const points = [...finds.finds.flatMap(f => f.point ? [f.point] : []), ...finds.sweeps.flatMap(s => s.lines.flatMap(l => l.points))]
    return {
      ...lies, plan: boundsOf(points.map(p => onPlan(p, lies.planAzimuth))) ?? lies.plan,
      section: boundsOf(points.map(p => onSection(p, lies.sectionAzimuth))) ?? lies.section,
    }
  }, [workings, vein, finds])
  const all = useMemo(() => markedFinds(finds, workings), [finds, workings])
  const marked = useMemo(() => all.filter(m => m.thing.id.startsWith('station:') || !hidden.has(m.kind)), [all, hidden])
  const onPlanHere = (p: Enu): Point => onPlan(p, model.planAzimuth), onSectionHere = (p: Enu): Point => onSection(p, model.sectionAzimuth)
  const planThings = useMemo(() => marked.map(m => ({ ...m.thing, at: onPlanHere(m.at) })), [marked, model])
  const sectionThings = useMemo(() => marked.map(m => ({ ...m.thing, at: onSectionHere(m.at) })), [marked, model])
  const [plan, setPlan] = useState<View>(), [section, setSection] = useState<View>()
  const [sizes, setSizes] = useState<{ readonly plan?: Size, readonly section?: Size }>({})
  const column = useRef<HTMLDivElement>(null), room = useSize(column), paper = ground.value === 'print'
  const laid = useMemo(() => layOut([model.plan, model.section], room.width, innerHeight, paper), [model, room.width, paper])
  const fitted = useMemo(
    () => sizes.plan && sizes.section && fitTogether([model.plan, model.section], [sizes.plan, sizes.section], laid.scale),
    [model, sizes, laid])
  useEffect(() => { setPlan(fitted?.[0]); setSection(fitted?.[1]) }, [fitted])
  const { units } = book.value!, unit = crewUnit('m', units), perMetre = crewValue(1, 'm', units).value
  const inCrewUnits = (v: View): View => ({ ...v, k: v.k / perMetre })

  const point = (_: Point | undefined, id: string | undefined) => {
    const one = marked.find(m => m.thing.id === id)
    setSays(one?.thing.says ?? '')
    setFinger(one?.at)
  }
  const visit = (id: string) => { go('finds', 'at', id.replace('find:', '')) }
  const pick = (ids: readonly string[]) => {
    const found = ids.filter(id => id.startsWith('find:')), station = workings.stations.find(s => `station:${s.name}` === ids[0])
    if (found.length === 1) visit(found[0]!)
    else if (found.length > 1) {
      openDrawer({ is: 'several', title: 'Which of these?', of: found.slice(0, 12).map(id => ({
        label: marked.find(m => m.thing.id === id)!.thing.says, page: { is: 'entry' as const, id: id.replace('find:', '') } })) })
    } else if (station) openAnswer(station.answer)
  }

  return (
    <section class="sheet" aria-label="Plan and long section of finds">
      <div class="sheet-body">
        <div ref={column}>
          <Drawing
            name="Plan of finds"
            height={laid.heights[0]!}
            view={plan}
            fitted={fitted?.[0]}
            onView={(v) => { setPlan(v); setSection(s => s && sizes.section && follow(v, s, sizes.section.height, true)) }}
            onSize={size => setSizes(s => ({ ...s, plan: size }))}
            things={planThings}
            onPick={pick}
            onPoint={point}
            finger={finger && onPlanHere(finger)}
            head={<p><b>Plan</b> {azimuthText(model.sectionAzimuth)} to the right; ribs swept are drawn along the walls</p>}
          >
            <PlanLines workings={workings} vein={vein} model={model} ellipses={false} />
            <SweptLines sweeps={finds.sweeps} project={onPlanHere} sheet="plan" />
          </Drawing>
          <Drawing
            name="Long section of finds"
            height={laid.heights[1]!}
            view={section}
            fitted={fitted?.[1]}
            onView={(v) => { setSection(v); setPlan(p => p && sizes.plan && follow(v, p, sizes.plan.height, true)) }}
            onSize={size => setSizes(s => ({ ...s, section: size }))}
            things={sectionThings}
            onPick={pick}
            onPoint={point}
            finger={finger && onSectionHere(finger)}
            head={(
              <p>
                <b>Long section</b> along {azimuthText(model.sectionAzimuth)}, looking {wind(lookingAlong(model.sectionAzimuth))};
                back and sill swept are drawn along them
              </p>
            )}
            over={(view, size) => <SectionTicks view={inCrewUnits(view)} size={size} along={`along, ${unit}`} up={`elevation, ${unit}`} />}
          >
            <SectionLines workings={workings} vein={vein} model={model} />
            <SweptLines sweeps={finds.sweeps} project={onSectionHere} sheet="section" />
          </Drawing>
          <p class="finger-says" aria-live="off">{says || <span class="soft">Point at a mark to read it. Tap it for its story.</span>}</p>
        </div>
        <FindsMargin
          marked={all}
          kinds={shownKinds}
          hidden={hidden}
          onHidden={setHidden}
          k={plan?.k}
          scale={laid.scale}
          up={(model.planAzimuth + 270) % 360}
          norths={workings.norths}
        />
      </div>
    </section>
  )
}
