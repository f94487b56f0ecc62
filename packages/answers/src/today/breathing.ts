import type { Entry } from '@lodebook/book'
import { airPerPerson, breathingOutlook, clearingTime, fanDuct, jointGaps, middleToMean, portalExchange, traverse } from '@lodebook/reckon/air'
import type { MonthOutside } from '@lodebook/reckon/air'
import type { Answer, NotEnough } from '../answer.ts'
import { isAnswer } from '../answer.ts'
import type { Assume } from '../assumptions.ts'
import { buildAnswer, mean } from '../build-answer.ts'
import type { Located, StationPlace } from '../places/place-in-space.ts'
import { placeOf, textOf, valueOf } from '../read.ts'
import type { Survey } from '../survey/survey.ts'
import { figure, flow as flowWords, length, temperature } from '../words.ts'
import type { CrewUnits } from '../words.ts'
import { placeName } from './place-name.ts'
import type { Breathing } from './breathing-shapes.ts'
import type { OutsideNow } from './outside-now.ts'
import { throughNetwork } from './through-network.ts'
import { airLegs, portalSection, sectionAt } from './sections.ts'
import type { AirLeg } from './sections.ts'
import type { Way } from './way-in.ts'

export interface BreathingInput {
  readonly survey: Survey
  readonly stations: ReadonlyMap<string, StationPlace>
  readonly way: Way | undefined
  readonly air: readonly Entry[]
  readonly airAt: ReadonlyMap<string, Located>
  readonly openings: readonly Entry[]
  readonly outside: readonly Entry[]
  readonly fans: readonly Entry[]
  readonly mine: Entry | undefined
  readonly assume: Assume
  readonly units: CrewUnits
}

const monthNames = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December']
/** Deeper in than this a dry bulb reads the mine and not the day. Common practice, no source. */
const insideFrom = 15
const exchangeSource = 'Brown and Solvason, Int. J. Heat Mass Transfer 5 (1962) 859-868, as given in the LBNL Modelica Buildings library (read)'

/** How the workings get their air: by one opening's two-way exchange, or by draught between openings; and what that is enough for. */
export function breathingOf(input: BreathingInput): Breathing | NotEnough {
  const { survey, stations, way, units, assume } = input
  if (!way || way.stations.length < 2) return { notEnough: true, sentence: 'Without a survey nothing can be said of how the workings get their air.', wanted: [{ kind: 'shot', why: 'the way in with its widths and heights' }], cautions: [] }
  const legs = airLegs(survey, stations, way), portal = portalSection(stations, way, legs)
  const openings = openingsOf(input, way, portal), open = openings.filter(o => o.state !== 'shut')
  const inside = insideOf(input, way), months = monthsOf(input.outside)
  const outsideNow = outsideOf(input, way, months)
  const flow = !isAnswer(inside) ? inside : outsideNow === undefined ? wantOutside
    : open.length > 1 ? throughNetwork({ legs, openings: open, inside, outside: outsideNow, mine: input.mine, stations, assume,
      units }) : exchangeOf(open[0], inside, outsideNow, units)
  const outlook = isAnswer(inside) && open.length === 1 ? breathingOutlook(open[0]!.width, open[0]!.height, inside.value, months) : []
  const volume = volumeOf(legs, units), known = 'notEnough' in flow ? undefined : flow.flow
  return {
    sentence: sentenceOf(open.length, known, outlook, units), openings, inside, flow: known ?? (flow as NotEnough), legs: 'notEnough' in flow ? [] : flow.legs,
    months: outlook.map(({ lowC, highC, ...rest }) => ({ ...rest, low: lowC, high: highC })), monthsWanted: months.length === 0 ? wantOutside : undefined,
    people: known && peopleOf(known, units), volume, clearing: known ? clearingOf(known, volume, assume) : [],
    measured: measuredOf(input, way), fans: input.fans.map(fan => fanAnswer(fan, units)),
    cautions: [
      'What is reckoned here is the most that may come in at the opening; a far dead end may get none of it. The meter at the face decides.',
      'Draught turns with the weather and the hour, and stops when inside and outside are alike. Nobody leans on it for air.',
      ...legs.some(l => !l.taped) ? ['Some sections were not taped and are taken as their neighbour\'s.'] : [],
    ],
  }
}

const wantOutside: NotEnough = { notEnough: true, sentence: 'How warm it is outside is not written, so nothing can be said of the draught.', wanted: [{ kind: 'outside', why: 'usual low and high of each month, from the nearest weather station' }, { kind: 'air', why: 'dry bulb at the portal' }], cautions: [] }

type Opening = Breathing['openings'][number]

function openingsOf({ openings, stations }: BreathingInput, way: Way, portal: { width: number, height: number } | undefined): readonly Opening[] {
  const written = openings.flatMap((entry): Opening[] => {
    const station = textOf(entry, 'station')!, place = stations.get(station), usual = place && sectionAt(place, 0)
    return place ? [{ name: textOf(entry, 'name')!, station, width: valueOf(entry, 'width') ?? usual!.width, height: valueOf(entry, 'height') ?? usual!.height, state: textOf(entry, 'state') ?? 'open', entry: entry.id }] : []
  })
  return written.some(o => o.station === way.portal) || !portal ? written : [{ name: 'Portal', station: way.portal, width: portal.width, height: portal.height, state: 'open' }, ...written]
}

function insideOf({ air, airAt, units }: BreathingInput, way: Way): Answer | NotEnough {
  const read = air.flatMap((entry) => {
    const value = valueOf(entry, 'dryBulb'), far = way.distanceOf(placeOf(entry), airAt.get(entry.id))
    return value !== undefined && far !== undefined && far > insideFrom ? [{ entry: entry.id, value }] : []
  })
  if (read.length === 0) return { notEnough: true, sentence: 'Nobody has read a dry bulb well inside yet.', wanted: [{ kind: 'air', why: 'dry bulb far enough in that the day does not reach it' }], cautions: [] }
  const value = mean(read.map(r => r.value))
  return buildAnswer({
    id: 'breathing.inside', value, unit: 'C', sentence: `Inside it is ${temperature(value, units)}, from ${read.length} readings more than ${length(insideFrom, units, 2)} in.`,
    method: { name: 'mean of dry bulbs inside', page: 'portal-exchange' }, from: read.map(r => r.entry),
  })
}

const monthsOf = (entries: readonly Entry[]): readonly (MonthOutside & { readonly entry: string })[] => entries.flatMap((entry) => {
  const month = textOf(entry, 'month'), low = valueOf(entry, 'low'), high = valueOf(entry, 'high')
  return month === undefined || low === undefined || high === undefined ? [] : [{ month, lowC: low, highC: high, entry: entry.id }]
}).sort((a, b) => monthNames.indexOf(a.month) - monthNames.indexOf(b.month))

/** How warm it is outside for the reckoning: the middle of the month of the last air reading, or else the last dry bulb at the portal. */
function outsideOf({ air, airAt }: BreathingInput, way: Way, months: readonly (MonthOutside & { readonly entry: string })[]): OutsideNow | undefined {
  const latest = [...air].sort((a, b) => Date.parse(textOf(a, 'taken') ?? '') - Date.parse(textOf(b, 'taken') ?? '')).at(-1)
  const named = latest && monthNames[Number((textOf(latest, 'taken') ?? '').slice(5, 7)) - 1], month = months.find(m => m.month === named) ?? months[0]
  if (month) return { celsius: (month.lowC + month.highC) / 2, says: `the middle of a day in ${month.month}`, from: [month.entry] }
  const atPortal = air.filter(e => (way.distanceOf(placeOf(e), airAt.get(e.id)) ?? Infinity) < insideFrom && valueOf(e, 'dryBulb') !== undefined).at(-1)
  return atPortal && { celsius: valueOf(atPortal, 'dryBulb')!, says: 'the last dry bulb at the portal', from: [atPortal.id] }
}

function exchangeOf(opening: Opening | undefined, inside: Answer, outside: OutsideNow, units: CrewUnits): { readonly flow: Answer, readonly legs: Breathing['legs'] } | NotEnough {
  if (!opening) return { notEnough: true, sentence: 'No opening is written as open.', wanted: [{ kind: 'opening', why: 'where air can come in, with its width and height' }], cautions: [] }
  const { width, height } = opening, { flowM3S, directionTop, cautions } = portalExchange(width, height, inside.value, outside.celsius)
  return {
    legs: [],
    flow: buildAnswer({
      id: 'breathing.flow', value: flowM3S, unit: 'm3/s',
      sentence: `${opening.name}, ${length(width, units)} by ${length(height, units)}: at most ${flowWords(flowM3S, units)} each way on ${outside.says}, ${directionTop === 'none' ? 'standing still' : `${directionTop} along the back and ${directionTop === 'out' ? 'in' : 'out'} along the sill`}.`,
      method: { name: 'two-way exchange through one opening', page: 'portal-exchange', working: [
        'Q = (Cd/3) W H sqrt(g dT/T H), Cd 0.65', `W ${figure(width)} m, H ${figure(height)} m, inside ${figure(inside.value)} °C, outside ${figure(outside.celsius)} °C`, `= ${figure(flowM3S)} m3/s each way`] },
      sources: [exchangeSource], from: [...opening.entry === undefined ? [] : [opening.entry], ...outside.from], parts: [inside], cautions,
    }),
  }
}

function peopleOf(flow: Answer, units: CrewUnits): Answer {
  const people = Math.floor(flow.value / airPerPerson)
  return buildAnswer({
    id: 'breathing.people', value: people, unit: 'people',
    sentence: people === 0 ? `Less than the ${flowWords(airPerPerson, units)} that one person is to have.` : `At ${flowWords(airPerPerson, units)} a person, at most enough for ${people}; and only as far in as it reaches.`,
    method: { name: 'air for each person', page: 'breathing', working: [`${figure(flow.value)} m3/s / ${figure(airPerPerson)} m3/s = ${figure(flow.value / airPerPerson)}`] },
    sources: ['200 cubic feet a minute for each person underground: California, 8 CCR 8437(a) (read); 29 CFR 1926.800(k) the same (from memory)'], parts: [flow],
  })
}

function volumeOf(legs: readonly AirLeg[], units: CrewUnits): Answer {
  const value = legs.reduce((sum, l) => sum + l.length * l.width * l.height, 0), far = legs.reduce((sum, l) => sum + l.length, 0)
  return buildAnswer({
    id: 'breathing.volume', value, unit: 'm3', sentence: `${figure(units.length === 'ft' ? value / 0.028316846592 : value)} ${units.length === 'ft' ? 'ft³' : 'm³'} of air in ${length(far, units)} of surveyed headings.`,
    method: { name: 'length times section, leg by leg', page: 'breathing', working: ['sections as rectangles from the taped offsets; stopes are not in it'] }, from: legs.map(l => l.entry),
  })
}

const strengths = [
  { id: 'carbon-monoxide', name: 'Carbon monoxide after a shot or a fire, 400 to 25 ppm', from: 400, to: 25 },
  { id: 'smoke', name: 'Smoke or fumes, down to a hundredth part', from: 100, to: 1 },
] as const

/** Least time and a likelier one for air that mixes badly, for the surveyed workings as a whole. */
function clearingOf(flow: Answer, volume: Answer, assume: Assume): readonly Answer[] {
  if (!(flow.value > 0)) return []
  const mixing = assume('mixing in a dead end')
  return strengths.map(({ id, name, from, to }) => {
    const { minutes, cautions } = clearingTime(volume.value, flow.value, from, to), likely = minutes * mixing.value
    return buildAnswer({
      id: `breathing.clear.${id}`, value: likely / 60, unit: 'h', range: { low: minutes / 60 * mixing.low, high: minutes / 60 * mixing.high, confidence: 0.8, because: ['how badly a dead end mixes'] },
      sentence: `${name}: ${span(minutes)} at the very least, more likely ${span(likely)} in a dead end. Wait the time and take a reading that passes, both.`,
      method: { name: 'thinning out', page: 'clearing-time', working: [`t = V/Q ln(C0/C) = ${figure(volume.value)} / ${figure(flow.value)} × ln(${from}/${to}) = ${figure(minutes)} min, if it mixed at once`, `× ${figure(mixing.value)} for a dead end = ${figure(likely)} min`] },
      sources: ['dilution by perfect mixing; after a blast at least 15 minutes: 8 CCR 8437(d) (read)'], parts: [flow, volume], assumed: [mixing], cautions,
    })
  })
}

const span = (minutes: number): string => minutes < 90 ? `${figure(minutes, 2)} min` : minutes < 60 * 36 ? `${figure(minutes / 60, 2)} h` : `${figure(minutes / 1440, 2)} days`

function measuredOf({ air, stations, units }: BreathingInput, way: Way): readonly Answer[] {
  const latest = new Map<string, Entry>()
  for (const entry of [...air].sort((a, b) => Date.parse(textOf(a, 'taken') ?? '') - Date.parse(textOf(b, 'taken') ?? ''))) if (valueOf(entry, 'airSpeed') !== undefined) latest.set(placeName(placeOf(entry)), entry)
  return [...latest].flatMap(([where, entry]): Answer[] => {
    const place = placeOf(entry), station = place?.by === 'station' ? stations.get(place.station) : undefined, next = way.stations.find(s => s.distance > (way.distanceOf(place, undefined) ?? Infinity))
    if (!station || !next) return []
    const to = stations.get(next.name)!, azimuth = Math.atan2(to.point[0] - station.point[0], to.point[1] - station.point[1]) * 180 / Math.PI
    const { width, height } = sectionAt(station, azimuth), speed = valueOf(entry, 'airSpeed')!, found = traverse([speed], width * height)
    return [buildAnswer({
      id: `breathing.measured.${entry.id}`, value: found.flowM3S, unit: 'm3/s',
      sentence: `Measured at ${where}: ${flowWords(found.flowM3S, units)}${textOf(entry, 'airDirection') === undefined ? '' : `, ${textOf(entry, 'airDirection')!}`} (${textOf(entry, 'taken')!.slice(0, 10)}).`,
      method: { name: 'speed times area', page: 'breathing', working: [`${figure(speed)} m/s × ${middleToMean} for one reading in the middle × ${figure(width)} × ${figure(height)} m`] },
      sources: ['common practice (McPherson, Subsurface Ventilation Engineering, ch. 6, from memory)'], from: [entry.id], cautions: found.cautions,
    })]
  })
}

function fanAnswer(entry: Entry, units: CrewUnits): Answer {
  const v = (field: string) => valueOf(entry, field)!, leak = (textOf(entry, 'leak') ?? 'usual') as keyof typeof jointGaps, piece = valueOf(entry, 'piece')
  const found = fanDuct({ freeFlowM3S: v('freeFlow'), shutPressurePa: v('shutPressure'), ductDiameterM: v('duct'), ductLengthM: v('length'), gap: jointGaps[leak], ...piece === undefined ? {} : { pieceM: piece } })
  return buildAnswer({
    id: `breathing.fan.${entry.id}`, value: found.faceFlowM3S, unit: 'm3/s',
    sentence: `${textOf(entry, 'name')!}: of ${flowWords(found.fanFlowM3S, units)} at the fan ${flowWords(found.faceFlowM3S, units)} come out at the end of ${length(v('length'), units)} of duct with ${leak} joints; ${Math.round(100 * found.lost)} % is lost on the way.`,
    method: { name: 'fan against a leaking duct', page: 'breathing', working: [`fan: p = ${figure(v('shutPressure'))} (1 − (Q/${figure(v('freeFlow'))})²) Pa`, `joint gap ${jointGaps[leak] * 100} % of the section, k 0.0037 kg/m3`, `${figure(found.fanPressurePa)} Pa at the fan`] },
    sources: ['Atkinson\'s equation and flow through a gap; gaps and k from memory, no source'], from: [entry.id], cautions: found.cautions,
  })
}

function sentenceOf(open: number, flow: Answer | undefined, outlook: Breathing['months'] | readonly { readonly month: string, readonly turns: boolean }[], units: CrewUnits): string {
  const turning = outlook.filter(m => m.turns).map(m => m.month)
  return [
    open > 1 ? `${open} openings let air through.` : 'One opening: the workings breathe in and out through it, and only because inside and outside differ in warmth.',
    flow ? `${open > 1 ? 'Reckoned draught' : 'At most'} ${flowWords(flow.value, units)}${open > 1 ? '' : ' each way, at the opening'}.` : '',
    turning.length > 0 ? `In ${turning.join(', ')} it stops and turns round within the day.` : '',
  ].filter(Boolean).join(' ')
}
