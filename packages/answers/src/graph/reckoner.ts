import type { Book, Entry } from '@lodebook/book'
import { computed, signal } from '@preact/signals-core'
import { assumer } from '../assumptions.ts'
import type { NotEnough } from '../answer.ts'
import { beliefsOf, looksByBag } from '../lab/beliefs.ts'
import { gradeOf } from '../grade/grade.ts'
import { payOf } from '../pay/pay.ts'
import { headingShapes } from '../places/heading-shapes.ts'
import type { PlaceContext } from '../places/place-in-space.ts'
import { placedKinds, placing } from '../places/placed-entries.ts'
import { stationPlaces } from '../places/walls.ts'
import { textOf } from '../read.ts'
import type { Reckoned } from '../reckoned.ts'
import { oddControls } from '../second-look/control-samples.ts'
import { disagreeingLooks } from '../second-look/disagreeing-looks.ts'
import { oddMasses } from '../second-look/odd-masses.ts'
import { oddPlaces } from '../second-look/odd-places.ts'
import { oddVein } from '../second-look/odd-vein.ts'
import { oddWidths, widthsInTheVein } from '../second-look/odd-widths.ts'
import type { LostPart } from '../shapes.ts'
import type { SecondLook } from '../second-look/second-look.ts'
import { surveyOf } from '../survey/survey.ts'
import { workingsOf } from '../survey/workings.ts'
import { lostPartOf } from '../vein/lost-part.ts'
import { veinOf } from '../vein/vein.ts'
import type { VeinFound } from '../vein/vein.ts'
import { sited } from '../vein/vein-data.ts'
import { imperial, metric } from '../words.ts'

/** Keeps the answers to one book. Nothing is computed until asked for, and after a change only what hangs on it is computed again. */
export interface Reckoner {
  /** Takes a newer state of the book. Lists of kinds that did not change must be the same arrays, as the fold gives them. */
  readonly setBook: (book: Book) => void
  readonly workings: () => Reckoned['workings']
  readonly vein: () => Reckoned['vein']
  /** Where the vein goes on past the fault. */
  readonly lostPart: () => LostPart | NotEnough
  readonly grade: () => Reckoned['grade']
  readonly pay: () => Reckoned['pay']
  /** What does not fit the rest and wants looking at again. */
  readonly secondLooks: () => readonly SecondLook[]
  /** How often each part has been computed since the reckoner began. */
  readonly runs: Readonly<Record<string, number>>
}

const notEnough = (value: object): value is NotEnough => 'notEnough' in value
const none: readonly Entry[] = []

export function createReckoner(first?: Book): Reckoner {
  const book = signal<Book | undefined>(first)
  const runs: Record<string, number> = {}
  const node = <T>(name: string, make: () => T) => computed(() => { runs[name] = (runs[name] ?? 0) + 1; return make() })
  const lists = new Map<string, { readonly value: readonly Entry[] }>()
  // A list is its own node: a posting of another kind leaves the same array and so stops here.
  const of = (kind: string): readonly Entry[] => {
    let list = lists.get(kind)
    if (!list) { list = computed(() => book.value?.of(kind) ?? none); lists.set(kind, list) }
    return list.value
  }

  const assume = node('assumptions', () => assumer(of('assumption')))
  const mine = computed(() => of('mine').at(-1))
  const units = computed(() => mine.value && textOf(mine.value, 'units') === 'feet and oz/ton' ? imperial : metric)
  const survey = node('survey', () => surveyOf(of('shot'), of('tie'), of('instrument'), mine.value, assume.value))
  const stations = node('stations', () => stationPlaces(survey.value))
  const context = node('places', (): PlaceContext => ({ stations: stations.value, grid: survey.value.grid, precision: assume.value('placing precision').value }))
  const placings = new Map(placedKinds.map(kind => [kind as string, node(`placed ${kind}`, () => placing(of(kind), context.value))]))
  const at = (kind: typeof placedKinds[number]) => sited(of(kind), placings.get(kind)!.value.at)
  const headings = node('headings', () => headingShapes(of('heading'), stations.value))
  const workings = node('workings', () => workingsOf(
    survey.value, context.value, headings.value, [...placings.values()].map(p => p.value), of('worked-out'), units.value))
  const vein = node('vein', (): VeinFound | NotEnough => {
    const drawn = workings.value
    return veinOf({
      survey: survey.value, stations: stations.value, structures: at('structure'), widths: at('width'), samples: at('sample'), headings: headings.value,
      workedOut: notEnough(drawn) ? [] : drawn.workedOut, units: units.value,
    })
  })
  const lostPart = node('lost part', () => {
    const found = vein.value
    return notEnough(found) ? found : lostPartOf({
      vein: found, survey: survey.value, structures: at('structure'), widths: at('width'), headings: headings.value, assume: assume.value, units: units.value,
    })
  })
  const looks = node('looks', () => looksByBag({ splits: of('split'), pans: of('pan'), assays: of('assay'), assume: assume.value }))
  const beliefs = node('beliefs', () => beliefsOf(looks.value, of('sample'), units.value))
  const grade = node('grade', () => {
    const found = vein.value
    if (notEnough(found)) return found
    const places = placings.get('sample')!.value.at
    return gradeOf({
      vein: found, beliefs: beliefs.value, assume: assume.value, units: units.value,
      samples: of('sample').map(entry => ({ entry, sited: places.has(entry.id) ? { entry, located: places.get(entry.id)! } : undefined })),
    })
  })
  const pay = node('pay', () => {
    const found = grade.value
    return notEnough(found) ? found : payOf({
      grade: found, work: of('work'), costs: of('cost'), prices: of('price'), mine: mine.value, assume: assume.value, units: units.value,
    })
  })
  const secondLooks = node('second looks', (): readonly SecondLook[] => {
    const [found, drawn] = [vein.value, workings.value]
    const byId = new Map([...of('width'), ...of('sample')].map(entry => [entry.id, entry]))
    return [
      ...(notEnough(drawn) ? [] : drawn.suspects.map((s): SecondLook => ({
        sort: 'survey', sentence: `${s.sentence.replace(/^./, c => c.toUpperCase())}.`, entries: [s.entry], times: s.times, todo: 'Shoot it again, or leave the reading out of the adjustment and say why.',
      }))),
      ...oddControls({ samples: of('sample'), assays: of('assay'), standards: of('standard') }),
      ...oddPlaces(placedKinds.flatMap(of), stations.value),
      ...(notEnough(found) ? [] : [...oddVein(found), ...oddWidths(found.at.widths, byId)]),
      ...widthsInTheVein([...of('width'), ...of('sample')]), ...oddMasses(of('sample')), ...disagreeingLooks(looks.value.looks),
    ]
  })
  return {
    secondLooks: () => secondLooks.value,
    setBook: (next) => { book.value = next },
    workings: () => workings.value,
    vein: () => { const found = vein.value; return notEnough(found) ? found : found.at },
    lostPart: () => lostPart.value,
    grade: () => grade.value, pay: () => pay.value, runs,
  }
}
