import type { Entry } from '@lodebook/book'
import { drawsFrom } from '@lodebook/reckon'
import { coneHeap, groundMaterial, groundMaterials, heapRoom } from '@lodebook/reckon/earthwork'
import type { GroundMaterial } from '@lodebook/reckon/earthwork'
import type { Answer } from '../answer.ts'
import type { Assume } from '../assumptions.ts'
import { buildAnswer, quantile, rangeOf } from '../build-answer.ts'
import type { PlaceContext } from '../places/place-in-space.ts'
import { numberOf, textOf, valueOf } from '../read.ts'
import { figure, length, plural, rock, volume } from '../words.ts'
import type { CrewUnits } from '../words.ts'
import { carryingOf } from './carrying.ts'
import { jobVolume } from './job-volume.ts'
import type { Digging } from './shapes.ts'
import { pacedBy, tallyOf } from './tally-of.ts'

export interface DiggingGiven {
  readonly job: Entry
  readonly sections: readonly Entry[]
  readonly spots: readonly Entry[]
  readonly loads: readonly Entry[]
  readonly context: PlaceContext
  readonly assume: Assume
  readonly units: CrewUnits
}

/** Equally likely outcomes of one job, for adding jobs up: loads left and crew days left. */
export interface DiggingOutcomes { readonly volume: readonly number[], readonly loads: readonly number[], readonly days: readonly number[] }

const seed = 1897, outcomes = 1000
/** 1.2816: one in ten of a normal lies beyond it. */
const decile = 1.2816
/** Days differ by weather, tools and who came: the spread of a whole job's time about its pace, of the logarithm. Common practice, no source. */
const dayToDay = 0.2

/** One digging job from its size to its days, or why it has no size. */
export function diggingOf(given: DiggingGiven): { readonly digging: Digging, readonly outcomes: DiggingOutcomes } | { readonly why: string } {
  const { job, loads, assume, units } = given
  const name = textOf(job, 'name')!, sort = textOf(job, 'sort')!, id = `access.${slug(name)}`
  const material = groundMaterial(textOf(job, 'material') ?? '') ?? groundMaterials.find(m => m.name.startsWith(sort === 'clear' ? 'broken rock' : 'slope wash'))!
  const sized = jobVolume({ ...given, material })
  if ('why' in sized) return sized
  const measured = numberOf(job, 'swell'), swell = measured ?? material.swellPct
  const bank = sized.fills ? sized.volume / material.packed : sized.volume, looseVolume = bank * (1 + swell / 100)
  const carrying = carryingOf(id, job, material, swell, sort !== 'clear', assume, units)
  const paced = pacedBy(id, loads, carrying.cycle), state = (textOf(job, 'state') ?? (paced.done > 0 ? 'at it' : 'to do')) as Digging['state']
  const hours = assume('hours of digging a day'), draws = drawsFrom(seed + loads.length)
  const spread = (z: number, low: number, middle: number, high: number) => middle + z * (z < 0 ? middle - low : high - middle) / decile
  const made = { volume: [] as number[], loads: [] as number[], days: [] as number[] }
  for (let k = 0; k < outcomes; k++) {
    const size = Math.exp(sized.sigma * draws.normal()), z = draws.normal()
    const swelled = measured ?? Math.max(0, spread(z, material.swellLowPct, material.swellPct, material.swellHighPct))
    const all = bank * size * (1 + swelled / 100) / carrying.load, left = state === 'done' ? 0 : Math.max(0, all - paced.done)
    const { minutes: usual, low, high } = paced.rate, minutes = usual * Math.exp(draws.normal() * Math.log(high / low) / 2 / decile + dayToDay * draws.normal())
    made.volume.push(all > 0 ? bank * size * left / all : 0)
    made.loads.push(left)
    made.days.push(left * minutes / 60 / Math.max(0.5, spread(draws.normal(), hours.low, hours.value, hours.high)))
  }
  const sorted = (values: readonly number[]) => [...values].sort((a, b) => a - b), middle = (values: readonly number[]) => quantile(sorted(values), 0.5)
  const volumeAnswer = buildAnswer({
    id: `${id}.volume`, value: sized.volume, unit: 'm3', range: { low: sized.volume * Math.exp(-decile * sized.sigma), high: sized.volume * Math.exp(decile * sized.sigma), confidence: 0.8, because: ['ground between what was taped'] },
    sentence: `${volume(sized.volume, units)} ${sized.fills ? 'of packed fill' : 'in place'}: ${sized.method}.`, method: { name: sized.method, page: sized.page, working: sized.working },
    sources: sized.sources, from: sized.from, assumed: sized.assumed,
  })
  const swellRange = measured === undefined ? ` (${material.swellLowPct} to ${material.swellHighPct} %)` : ', measured'
  const loose = buildAnswer({
    id: `${id}.loose`, value: looseVolume, unit: 'm3', sentence: `${volume(looseVolume, units)} loose, ${rock(bank * material.density, units)} of ${material.name}.`,
    method: {
      name: 'bank, loose and packed', page: 'muck',
      working: [
        ...(sized.fills ? [`in place: ${volume(sized.volume, units)} packed / ${material.packed} = ${volume(bank, units)}`] : []),
        `${volume(bank, units)} × (1 + ${figure(swell, 3)} %${swellRange}) = ${volume(looseVolume, units)}`,
      ],
    },
    sources: [`${material.name}: ${material.source}${material.status === 'V' ? ' (read in the source)' : ''}`], from: [job.id], parts: [volumeAnswer],
  })
  const all = looseVolume / carrying.load
  const loadsAnswer = buildAnswer({
    id: `${id}.loads`, value: Math.round(all), unit: plainLoads(carrying.carrier), sentence: `About ${plural(Math.round(all), `${carrying.carrier} load`)} in all.`, method: { name: 'loose volume over one load', page: 'muck', working: [`${volume(looseVolume, units)} / ${volume(carrying.load, units, 2)} = ${figure(all, 3)}`] },
    parts: [loose, carrying.loadMass], range: rangeOf(made.loads.map(l => l + (state === 'done' ? all : paced.done)), ['the ground between what was taped', 'swell']),
  })
  const left = buildAnswer({
    id: `${id}.left`, value: Math.round(middle(made.loads)), unit: 'loads', range: rangeOf(made.loads, ['the ground between what was taped', 'swell']),
    sentence: `About ${plural(Math.round(middle(made.loads)), 'load')} still to go.`, method: { name: 'loads in all less loads tipped', page: 'load-pace', working: [`${figure(all, 3)} − ${paced.done}`] }, from: loads.map(l => l.id), parts: [loadsAnswer],
  })
  const days = buildAnswer({
    id: `${id}.days`, value: middle(made.days), unit: 'days', range: rangeOf(made.days, ['the pace', 'ground between what was taped', 'days differ']),
    sentence: state === 'done' ? 'Done.' : `About ${figure(middle(made.days), 2)} days for ${carrying.people} still to do.`,
    method: {
      name: 'loads left × pace / hours of digging a day, drawn many times', page: 'load-pace',
      working: [`${figure(left.value, 3)} loads × ${figure(paced.rate.minutes, 3)} min / 60 / ${figure(hours.value, 2)} h = ${figure(left.value * paced.rate.minutes / 60 / hours.value, 3)} days`, `${outcomes} outcomes, seed ${seed}`],
    },
    parts: [left, paced.pace], assumed: [hours],
  })
  const moved = paced.done > 0 && state !== 'done' && middle(made.loads) === 0 ? ['More loads are tipped than the measures said there were: tape it again.'] : []
  return {
    outcomes: made,
    digging: {
      entry: job.id, name, sort, state, volume: volumeAnswer, loose, loads: loadsAnswer, loadMass: carrying.loadMass, days, sections: sized.sections,
      tally: tallyOf(id, paced, loads, left), heap: heapOf(id, job, sized.fills ? 0 : looseVolume, material, units),
      cautions: [...sized.cautions, ...carrying.cautions, ...moved],
      sentence: state === 'done' ? `${name}: done; ${volume(sized.volume, units, 2)}, ${plural(paced.done, 'load')} tallied.`
        : `${name}: ${volume(sized.volume, units, 2)} ${sized.fills ? 'of fill' : 'in place'}, ${volume(looseVolume, units, 2)} loose; about ${plural(left.value, 'load')} and ${figure(days.value, 2)} days to go.`,
    },
  }
}

/** The heap that the spoil makes, against the room there is for it. */
function heapOf(id: string, job: Entry, loose: number, material: GroundMaterial, units: CrewUnits): Answer {
  const [long, wide, most] = ['spoilLength', 'spoilWidth', 'spoilHeight'].map(field => valueOf(job, field))
  const method = { name: 'heap at its angle of repose', page: 'heap' }, cone = coneHeap(loose, material.repose)
  const say = (sentence: string, working: readonly string[]) => buildAnswer({ id: `${id}.heap`, value: loose, unit: 'm3', sentence, method: { ...method, working }, sources: [`${material.name}: ${material.source}`], from: [job.id] })
  if (loose === 0) return say('All of it goes into the fill; no heap.', [])
  if (long === undefined || wide === undefined) {
    return say(`Heaped round it would lie ${length(cone.across, units, 2)} across and ${length(cone.height, units, 2)} high at ${material.repose}°; the room for it is not written.`, [`V = π r³ tan ${material.repose}° / 3`])
  }
  const room = heapRoom(long, wide, material.repose, most ?? Infinity), fits = room.holds >= loose
  return say(`${fits ? 'The heap fits' : 'The heap does not fit'}: ${volume(loose, units, 2)} into ${length(long, units, 2)} by ${length(wide, units, 2)}, which holds ${volume(room.holds, units, 2)} up to ${length(room.height, units, 2)} high.`,
    [`h (A0 + 4 Am + A1) / 6 with h ${length(room.height, units, 3)} and sides at ${material.repose}° = ${volume(room.holds, units)}`])
}

const plainLoads = (carrier: string): string => `${carrier} loads`
const slug = (name: string): string => name.toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^-|-$/g, '') || 'job'
