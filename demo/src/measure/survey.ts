import { dayText, timeOn } from '../write/clock.ts'
import { ives, wren, type Person } from '../write/crew.ts'
import { azimuth, distance, inclination, roughly } from '../write/as-written.ts'
import type { Making } from '../making.ts'
import { azimuthOf, inclinationOf, length, minus } from '../truth/vectors.ts'
import type { Leg, Offsets } from '../truth/working.ts'
import { clothTape, firstCompass, secondCompass, steelTape, tools } from './tools.ts'

interface Party { readonly working: string, readonly day: string, readonly writer: Person, readonly compass: string, readonly tape: string }

const first = { compass: firstCompass, tape: clothTape }, second = { compass: secondCompass, tape: steelTape }
/** Who surveyed what, and when. */
const parties: readonly Party[] = [
  { working: 'Adit', day: '2026-05-04', writer: wren, ...first },
  { working: 'Left drift', day: '2026-05-05', writer: wren, ...first },
  { working: 'Right drift', day: '2026-05-06', writer: ives, ...first },
  { working: 'Left crosscut', day: '2026-05-07', writer: ives, ...first },
  { working: 'First raise', day: '2026-05-08', writer: ives, ...second },
  { working: 'Second raise', day: '2026-05-08', writer: ives, ...second },
  { working: 'Sublevel', day: '2026-05-09', writer: wren, ...second },
  { working: 'Sublevel, right end', day: '2026-05-09', writer: wren, ...second },
  { working: 'Winze', day: '2026-05-11', writer: wren, ...first },
  { working: 'Blind crosscut', day: '2026-05-11', writer: wren, ...first },
  { working: 'Old stope', day: '2026-05-12', writer: ives, ...second },
  { working: 'Hill', day: '2026-05-13', writer: wren, ...second },
]
/** A second visit, back along the same legs, on a later day. */
const again: Omit<Party, 'working'> = { day: '2026-05-14', writer: ives, ...first }

/** Shots in all: every leg once, and as many again the other way as make up the number. */
const shots = 120

/** Writes every leg as a shot with its backsight and offsets, and some of them again the other way. */
export function survey(making: Making): void {
  const { ore } = making, rng = making.numbers('survey'), minutes = new Map<string, number>()
  const written = new Map<string, string>()
  function shoot(leg: Leg, party: Omit<Party, 'working'>, offsets: Offsets | undefined): void {
    const minute = (minutes.get(party.day) ?? 0) + rng.whole(4, 9)
    minutes.set(party.day, minute)
    const a = ore.stations.get(leg.from)!, b = ore.stations.get(leg.to)!, line = minus(b.point, a.point)
    const inclined = inclinationOf(line), sigma = Math.abs(inclined) > 35 ? tools.steepCompass : tools.compass
    const needle = azimuthOf(line) - ore.declination - (party.compass === secondCompass ? tools.secondCompassLow : 0)
    const sight = (station: string, turn: number) => needle + turn + ore.attraction.get(station)! + rng.normal(0, sigma)
    const { writer } = party, turn = rng.whole(0, 27), tape = length(line)
    const back = leg.splay ? undefined : sight(leg.to, 180)
    const slip = making.careless && leg.from === 'C4' && back !== undefined && party !== again ? 10 : 0
    const at = timeOn(party.day, 9, minute)
    const entry = making.diary.write(writer, at, 'shot', {
      from: leg.from, to: leg.to, distance: distance(writer, tape + rng.normal(0, tools.tape + tools.tapeShare * tape), turn),
      azimuth: azimuth(sight(leg.from, 0), turn % 9 === 4), inclination: inclination(inclined + rng.normal(0, tools.clinometer), turn % 11 === 6),
      ...(back === undefined ? {} : {
        backAzimuth: azimuth(back + slip, turn % 9 === 4), backInclination: inclination(rng.normal(0, tools.clinometer) - inclined, turn % 11 === 6),
      }),
      ...(offsets === undefined ? {} : walls(writer, offsets, (value: number) => value + rng.normal(0, 0.03))),
      compass: party.compass, tape: party.tape, surveyors: `${wren.name}, ${ives.name}`, taken: dayText(at),
      note: leg.splay ? 'Sight to the edge of the old stope, no backsight.' : undefined,
    })
    written.set(`${leg.from}-${leg.to}`, entry)
    if (slip !== 0) {
      making.mistakes.push({ sort: 'backsight', entries: [entry], right: azimuth(back!),
        sentence: `The backsight of shot ${leg.from} to ${leg.to} was written 10° too large.` })
    }
  }
  for (const party of parties) {
    for (const leg of ore.legs.filter(leg => leg.working === party.working)) shoot(leg, party, offsetsAt(making, leg))
  }
  for (const leg of legsAgain(making)) shoot({ ...leg, from: leg.to, to: leg.from }, again, turned(ore.stations.get(leg.to)!.offsets))
}

const walls = (writer: Person, o: Offsets, read: (value: number) => number) =>
  ({ left: roughly(writer, read(o.left)), right: roughly(writer, read(o.right)), up: roughly(writer, read(o.up)), down: roughly(writer, read(o.down)) })

/** Offsets are taped looking onward along a station's own working, so not where another one turns off. */
function offsetsAt({ ore }: Making, leg: Leg): Offsets | undefined {
  const own = ore.workings.find(working => working.stations.includes(leg.from))
  return leg.splay || own?.name !== leg.working ? undefined : ore.stations.get(leg.from)!.offsets
}
const turned = (o: Offsets | undefined): Offsets | undefined => o === undefined ? undefined : { left: o.right, right: o.left, up: o.up, down: o.down }

/** The last leg of each drift, so that its end is taped too, and others by lot. */
function legsAgain({ ore, numbers }: Making): Leg[] {
  const underground = ore.legs.filter(leg => !leg.splay && leg.working !== 'Hill' && !/raise|Winze/.test(leg.working))
  // A leg that ends on a station of another working would be taped across that working.
  const own = underground.filter(leg => ore.workings.find(working => working.stations.includes(leg.to))?.name === leg.working)
  const last = own.filter(leg => ore.workings.find(working => working.name === leg.working)!.stations.at(-1) === leg.to)
  const rest = numbers('survey again').shuffle(own.filter(leg => !last.includes(leg)))
  return [...last, ...rest].slice(0, shots - ore.legs.length)
}
