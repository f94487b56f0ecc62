import type { Book, Entry } from '@lodebook/book'
import { computed } from '@preact/signals-core'
import type { ReadonlySignal } from '@preact/signals-core'
import { notEnough } from '../answer.ts'
import type { NotEnough } from '../answer.ts'
import { assumer } from '../assumptions.ts'
import { beliefsOf, looksByBag } from '../lab/beliefs.ts'
import { bagOf } from '../lab/looks.ts'
import { densitiesOf } from '../lab/densities.ts'
import { measuredDensity } from '../lab/measured-density.ts'
import { placedBeliefs } from '../lab/placed-beliefs.ts'
import { swappedBags } from '../lab/swapped-bags.ts'
import { headingShapes } from '../places/heading-shapes.ts'
import type { PlaceContext } from '../places/place-in-space.ts'
import { placedKinds, placing } from '../places/placed-entries.ts'
import { stationPlaces } from '../places/walls.ts'
import { textOf } from '../read.ts'
import type { Reckoned } from '../reckoned.ts'
import { renamesOf } from '../survey/renames.ts'
import { surveyOf } from '../survey/survey.ts'
import { workingsOf } from '../survey/workings.ts'
import { veinOf } from '../vein/vein.ts'
import type { VeinFound } from '../vein/vein.ts'
import { sited } from '../vein/vein-data.ts'
import { imperial, metric } from '../words.ts'

const none: readonly Entry[] = []

export type Graph = ReturnType<typeof graphOf>

/**
 * The nodes on which every part of the answers stands: nothing is computed until asked for, and after a change only what hangs on it is
 * computed again.
 * @param part  another part's answer, for parts that rest on parts
 * @param runs  how often each node has been computed; counted up here
 */
export function graphOf(book: ReadonlySignal<Book | undefined>, part: <P extends keyof Reckoned>(name: P) => Reckoned[P], runs: Record<string, number>) {
  const node = <T>(name: string, make: () => T): ReadonlySignal<T> => computed(() => { runs[name] = (runs[name] ?? 0) + 1; return make() })
  const shared = new Map<string, ReadonlySignal<unknown>>()
  /** A node that several parts rest on: made when first named, the same one after. */
  const once = <T>(name: string, make: () => T): ReadonlySignal<T> => {
    const made = shared.get(name) ?? node(name, make)
    shared.set(name, made)
    return made as ReadonlySignal<T>
  }
  const lists = new Map<string, { readonly value: readonly Entry[] }>()
  // A list is its own node: a posting of another kind leaves the same array and so stops here.
  const listOf = (kind: string): readonly Entry[] => {
    let list = lists.get(kind)
    if (!list) {
      const written = computed(() => book.value?.of(kind) ?? none)
      list = kind === 'rename' ? written : computed(() => renames.value.apply(written.value))
      lists.set(kind, list)
    }
    return list.value
  }
  // Stations go by their present names everywhere: what was written at an old name moves with it.
  const renames = node('renames', () => renamesOf(listOf('rename')))
  const of = listOf

  const densities = node('densities', () => densitiesOf(of('density')))
  const assume = node('assumptions', () => measuredDensity(assumer(of('assumption')), densities.value))
  const mine = computed(() => of('mine').at(-1))
  const units = computed(() => mine.value && textOf(mine.value, 'units') === 'feet and oz/ton' ? imperial : metric)
  const survey = node('survey', () => surveyOf({
    shots: of('shot'), ties: of('tie'), instruments: of('instrument'), surveys: of('survey'), paced: of('paced'), mine: mine.value,
  }, assume.value))
  const stations = node('stations', () => stationPlaces(survey.value))
  const context = node('places', (): PlaceContext => ({ stations: stations.value, adrift: survey.value.adrift, grid: survey.value.grid, precision: assume.value('placing precision').value }))
  const placings = new Map(placedKinds.map(kind => [kind as string, node(`placed ${kind}`, () => placing(of(kind), context.value))]))
  const at = (kind: typeof placedKinds[number]) => sited(of(kind), placings.get(kind)!.value.at)
  const headings = node('headings', () => headingShapes(of('heading'), stations.value))
  const workings = node('workings', () => workingsOf(
    survey.value, context.value, headings.value, [...placings.values()].map(p => p.value), of('worked-out'), units.value, renames.value.cautions))
  const vein = node('vein', (): VeinFound | NotEnough => {
    const drawn = workings.value
    return veinOf({
      survey: survey.value, stations: stations.value, structures: at('structure'), widths: at('width'), samples: at('sample'), headings: headings.value,
      workedOut: notEnough(drawn) ? [] : drawn.workedOut, units: units.value,
    })
  })
  // A piece that the detector rang on was picked for its gold: it says nothing of the ground's grade, nor of the grains in it.
  const picked = node('picked', () => new Set(of('sample').filter(sample => textOf(sample, 'method') === 'piece').map(bagOf)))
  const ofGround = (entries: readonly Entry[]) => picked.value.size === 0 ? entries : entries.filter(entry => !picked.value.has(bagOf(entry)))
  const looks = node('looks', () => looksByBag({ splits: of('split'), pans: ofGround(of('pan')), assays: ofGround(of('assay')), assume: assume.value }))
  const beliefs = node('beliefs', () => beliefsOf(looks.value, of('sample'), units.value))
  const swaps = node('swaps', () => {
    const found = vein.value
    return swappedBags(notEnough(found) ? [] : placedBeliefs(at('sample'), beliefs.value, found), assume.value, units.value)
  })
  return { node, once, part, of, assume, mine, units, survey, stations, context, placings, at, headings, workings, vein, looks, beliefs, swaps, densities }
}
