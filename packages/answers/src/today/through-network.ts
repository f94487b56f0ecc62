import type { Entry } from '@lodebook/book'
import { airNetwork, airway } from '@lodebook/reckon/air'
import type { AirBranch } from '@lodebook/reckon/air'
import type { Answer, NotEnough } from '../answer.ts'
import type { Assume } from '../assumptions.ts'
import { buildAnswer } from '../build-answer.ts'
import type { StationPlace } from '../places/place-in-space.ts'
import { valueOf } from '../read.ts'
import { figure, flow as flowWords } from '../words.ts'
import type { CrewUnits } from '../words.ts'
import type { Breathing } from './breathing-shapes.ts'
import type { OutsideNow } from './outside-now.ts'
import type { AirLeg } from './sections.ts'

const outdoors = 'open air'
const gravity = 9.80665
/** Entry 0.5 and exit 1: which an opening is, is only known afterwards, so each takes the middle. From memory. */
const openingShock = 0.75

/** Weight of air, kg/m3: P / (287.04 T), with the pressure of the standard atmosphere at the portal's height. */
const density = (celsius: number, elevation: number): number => 101_325 * (1 - 2.25577e-5 * elevation) ** 5.25588 / (287.04 * (celsius + 273.15))

/** Draught through workings with two openings or more: each leg resists, and each is pressed by as much as the air in it is lighter than outside,
  times its rise. */
export function throughNetwork({ legs, openings, inside, outside, mine, assume, units }: {
  readonly legs: readonly AirLeg[]
  readonly openings: Breathing['openings']
  readonly inside: Answer
  readonly outside: OutsideNow
  readonly mine: Entry | undefined
  readonly stations: ReadonlyMap<string, StationPlace>
  readonly assume: Assume
  readonly units: CrewUnits
}): { readonly flow: Answer, readonly legs: Breathing['legs'] } | NotEnough {
  const elevation = (mine && valueOf(mine, 'elevation')) ?? 0, within = density(inside.value, elevation), without = density(outside.celsius, elevation), k = assume('friction of headings')
  const branches: AirBranch[] = [
    ...legs.map((l, i): AirBranch => ({
      name: `leg ${i}`, from: l.from, to: l.to, drive: (without - within) * gravity * l.rise,
      resistance: airway({ lengthM: l.length, areaM2: l.width * l.height, perimeterM: 2 * (l.width + l.height), frictionKgM3: k.value,
        densityKgM3: within }).resistance,
    })),
    ...openings.map((o): AirBranch => ({ name: o.name, from: o.station, to: outdoors, resistance: openingShock * within / (2 * (o.width * o.height) ** 2) * (o.state === 'part blocked' ? 4 : 1) })),
  ]
  const solved = airNetwork(branches), atOpening = solved.branches.slice(legs.length), flow = atOpening.reduce((sum, b) => sum + Math.max(0, b.flowM3S), 0)
  const ins = atOpening.filter(b => b.flowM3S < 0).map(b => b.name), outs = atOpening.filter(b => b.flowM3S > 0).map(b => b.name)
  return {
    legs: legs.map((l, i) => ({ from: l.from, to: l.to, flow: solved.branches[i]!.flowM3S,
      speed: Math.abs(solved.branches[i]!.flowM3S) / (l.width * l.height) })),
    flow: buildAnswer({
      id: 'breathing.flow', value: flow, unit: 'm3/s',
      sentence: flow === 0 ? 'Inside and outside are alike: no draught.' : `${flowWords(flow, units)} in at ${ins.join(', ')} and out at ${outs.join(', ')} on ${outside.says}, reckoned.`,
      method: { name: 'network of airways', page: 'breathing', working: [
        `outside ${figure(outside.celsius)} °C, ${figure(without, 4)} kg/m3; inside ${figure(inside.value)} °C, ${figure(within, 4)} kg/m3`,
        `${legs.length} legs and ${openings.length} openings; each leg pressed by (${figure(without, 4)} − ${figure(within, 4)}) × 9.81 × its rise`, `settled in ${solved.rounds} rounds`] },
      sources: ['Atkinson\'s equation; Kirchhoff\'s laws with R Q² (H. Cross, University of Illinois Bulletin 286, 1936, from memory)', 'density P/(287.04 T): McPherson, ch. 14 (from memory)'],
      from: [...openings.flatMap(o => o.entry ?? []), ...outside.from], parts: [inside], assumed: [k],
      cautions: ['Falls, waste and water in the way are not in it. Measure the draught with smoke or a vane.'],
    }),
  }
}
