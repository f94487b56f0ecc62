import type { Entry } from '@lodebook/book'
import { portalExchange } from '@lodebook/reckon/air'
import { classForSpan, muck, openUp } from '@lodebook/reckon/earthwork'
import type { Cut, WayStation } from '@lodebook/reckon/earthwork'
import { convert } from '@lodebook/reckon/units'
import type { NotEnough } from '../answer.ts'
import type { Assume, AssumedFigure } from '../assumptions.ts'
import { buildAnswer, quantile } from '../build-answer.ts'
import { valueOf } from '../read.ts'
import { figure, length, volume } from '../words.ts'
import type { CrewUnits } from '../words.ts'
import type { Opening, OpeningCase, Way } from './shapes.ts'

const cuts: readonly { readonly cut: Cut, readonly name: string, readonly taper: 'brow taper' | 'fall of the sill' }[] = [
  { cut: 'brow', name: 'Raise the brow', taper: 'brow taper' }, { cut: 'sill', name: 'Lower the sill', taper: 'fall of the sill' }, { cut: 'ribs', name: 'Draw the ribs back', taper: 'brow taper' },
]
/** How far in the smallest opening still holds back what the portal lets through, m. Common practice, no source. */
const throat = 8
const steps = 12

const cautions = [
  'Digging under a brow or a slope can bring it down on whoever digs. A competent person looks first, from outside; nobody works under loose ground, alone, or with others above.',
  'A wider or higher opening is ground without its old support: what the tables give is no permission. Local codes and licensed people decide; many places want a permit before a portal is touched.',
  'The air gain is an upper bound near the portal. It opens no dead end further in: read the meter at the face.',
]

/** What a cut at the portal by so much does to the muck, the air, the walking and the span. */
export function openingOf(way: Way | undefined, air: readonly Entry[], assume: Assume, units: CrewUnits): Opening | NotEnough {
  if (!way) return { notEnough: true, sentence: 'Without a surveyed adit nothing can be said of opening it up.', wanted: [{ kind: 'shot', why: 'the adit in from the portal, with its four offsets' }, { kind: 'heading', why: 'which stations make the adit' }], cautions }
  const dry = air.flatMap((entry) => { const t = valueOf(entry, 'dryBulb'); return t === undefined ? [] : [{ entry: entry.id, t }] }).sort((a, b) => a.t - b.t)
  const inside = dry.length > 0 ? quantile(dry.map(d => d.t), 0.5) : 11
  const given = { way, inside, insideFrom: dry.map(d => d.entry), assume, units, outside: assume('outside air') }
  const size = units.length === 'ft' ? convert(0.25, 'ft', 'm') : 0.1
  return {
    heading: way.heading, cautions: [...cautions, ...(way.rough ? ['Offsets are missing at some stations of this heading: usual ones stand in for them.'] : [])],
    cuts: cuts.map(({ cut, name, taper }) => ({ cut, name, cases: Array.from({ length: steps + 1 }, (_, i) => caseOf(given, cut, assume(taper), i * size)) })),
  }
}

interface Given {
  readonly way: Way
  readonly inside: number
  readonly insideFrom: readonly string[]
  readonly outside: AssumedFigure
  readonly assume: Assume
  readonly units: CrewUnits
}

function caseOf({ way, inside, insideFrom, outside, assume, units }: Given, cut: Cut, taper: AssumedFigure, depth: number): OpeningCase {
  const id = `access.open.${cut}.${Math.round(depth * 1000)}`, { bank, runs, way: opened } = openUp(way.stations, cut, depth, taper.value)
  const [swell, density, broken] = [assume('swell of wall rock'), assume('wall density'), assume('tonnes broken a person-day')]
  const { looseVolume } = muck(bank, swell.value, 1), personDays = bank * density.value / broken.value
  const [before, after] = [flowIn(way.stations, inside, outside.value), flowIn(opened, inside, outside.value)]
  const [lowBefore, low] = [headRoomIn(way.stations), headRoomIn(opened)], portal = opened[0]!
  const [widest, wasWidest] = [portal.width, way.stations[0]!.width], rating = classForSpan(widest)
  const says = length(depth, units, 2), from = [way.entry]
  const answers = {
    muck: buildAnswer({
      id: `${id}.muck`, value: looseVolume, unit: 'm3', sentence: depth === 0 ? 'Nothing to move.' : `${volume(bank, units, 2)} in place, ${volume(looseVolume, units, 2)} as muck, cut ${length(runs, units, 2)} in; about ${figure(personDays, 2)} person-days to break by hand.`,
      method: { name: `${cut} cut tapering inward`, page: 'opening-up', working: [`taper ${figure(taper.value, 2)}: runs in ${length(runs, units)}`, `${volume(bank, units)} × ${figure(1 + swell.value / 100, 3)} = ${volume(looseVolume, units)}`, `${volume(bank, units)} at ${figure(density.value, 3)} t/m³ and ${figure(broken.value, 2)} t a person-day`] }, from, assumed: [taper, swell, density, broken],
    }),
    air: buildAnswer({
      id: `${id}.air`, value: after.flow, unit: 'm3/s', sentence: `Up to ${figure(after.flow * 1000, 2)} L/s each way${depth === 0 ? '' : `, ${figure(after.flow / before.flow, 3)} times what it is`}, at ${figure(Math.abs(outside.value - inside), 2)} °C difference${after.at > 0 ? `; held back by the opening ${length(after.at, units, 2)} in` : ''}.`,
      method: { name: 'exchange through one opening, the smallest near the portal', page: 'portal-exchange', working: [`(Cd/3) W H √(g ΔT/T H) with W ${length(after.width, units)}, H ${length(after.height, units)}; inside ${figure(inside, 3)} °C, outside ${figure(outside.value, 3)} °C`] },
      sources: ['Brown & Solvason, Int. J. Heat Mass Transfer 5 (1962) 859-868'], from: [...from, ...insideFrom], assumed: [outside],
    }),
    headRoom: buildAnswer({
      id: `${id}.head-room`, value: low.room, unit: 'm', sentence: `${length(portal.back - portal.sill, units, 2)} at the portal; the lowest place of the first ${length(throat, units, 2)} is ${length(low.room, units, 2)}${depth === 0 || low.room === lowBefore.room ? '' : `, was ${length(lowBefore.room, units, 2)}`}.`,
      method: { name: 'back less sill along the way', page: 'opening-up' }, from,
    }),
    span: buildAnswer({
      id: `${id}.span`, value: widest, unit: 'm', sentence: `Span ${length(widest, units, 2)}${widest > wasWidest ? `, was ${length(wasWidest, units, 2)}` : ', as it is'}; ribs ${length(portal.back - portal.sill, units, 2)} high. By the chart of RMR89 such a span asks for rock rated ${rating ? `${rating.name} or better (${length(rating.span, units, 2)} stood about ${rating.stands})` : 'beyond its best class'}; the rock here must be rated by a competent person.`,
      method: { name: 'spans of the rock classes', page: 'opening-up' }, sources: ['Z. T. Bieniawski, Engineering Rock Mass Classifications, 1989 (from memory)'], from,
    }),
  }
  return { depth, says, way: opened, ...answers, sentence: depth === 0 ? 'As it is.' : `${says}: ${answers.muck.sentence}` }
}

interface Throat { readonly flow: number, readonly at: number, readonly width: number, readonly height: number }

/** What the smallest place from the portal to the throat lets through: the exchange goes with W H √H. */
function flowIn(stations: readonly WayStation[], inside: number, outside: number): Throat {
  return near(stations).map((s) => {
    const [width, height] = [Math.max(s.width, 0.05), Math.max(s.back - s.sill, 0.05)]
    return { at: s.at - stations[0]!.at, width, height, flow: portalExchange(width, height, inside, outside === inside ? inside + 0.1 : outside).flowM3S }
  }).reduce((least, one) => one.flow < least.flow ? one : least)
}

const headRoomIn = (stations: readonly WayStation[]): { readonly room: number } => ({ room: Math.min(...near(stations).map(s => s.back - s.sill)) })
const near = (stations: readonly WayStation[]): readonly WayStation[] => stations.filter((s, i) => i === 0 || s.at - stations[0]!.at <= throat)
