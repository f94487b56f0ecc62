import type { Entry } from '@lodebook/book'
import type { Assumed } from './answer.ts'
import { numberOf, textOf } from './read.ts'

/** A figure taken as given until the crew writes an assumption entry of the same name. */
export interface Standing {
  readonly value: number
  readonly unit: string
  /** One in ten below and above, when the figure is in doubt. */
  readonly low?: number
  readonly high?: number
  readonly why: string
}

/** Ours until the crew says otherwise. Where a figure has no published source it says so. */
export const standing = {
  'compass precision': { value: 0.7, unit: '°', why: 'one reading of a hand compass, one standard deviation; common practice, no source' },
  'clinometer precision': { value: 0.7, unit: '°', why: 'one reading of a hand clinometer, one standard deviation; common practice, no source' },
  'tape precision': { value: 0.02, unit: 'm', why: 'one taped distance, one standard deviation, with 0.1 % of the length added; common practice, no source' },
  pace: { value: 0.75, unit: 'm', low: 0.65, high: 0.85, why: 'one step of a person walking bent in a low drift, until the crew steps a taped line; common practice, no source' },
  'placing precision': { value: 0.15, unit: 'm', why: 'where along a heading a mark was taped to; common practice, no source' },
  'vein density': { value: 2.65, unit: 't/m3', low: 2.55, high: 2.75, why: 'quartz; tables of minerals give 2.65' },
  'wall density': { value: 2.7, unit: 't/m3', low: 2.6, high: 2.85, why: 'common country rock; published ranges for granite to andesite' },
  'reach of a sample': { value: 4, unit: 'm', why: 'ground further than this from any sample is not counted; common practice, no source' },
  'minimum width': { value: 0.6, unit: 'm', low: 0.5, high: 0.75, why: 'narrowest slot one person can work by hand; common practice, no source' },
  'wall grade': { value: 0, unit: 'g/t', why: 'wall rock carries no gold unless samples say so' },
  'panel size': { value: 2, unit: 'm', why: 'side of a panel; made larger when there would be more than 2,500' },
  'log variance of grade': { value: 1.2, unit: 'ln²', low: 0.6, high: 2.4, why: 'prior for gold in narrow quartz veins before any sample; a wide guess, no source' },
  'range of grade': { value: 6, unit: 'm', low: 2, high: 18, why: 'prior distance over which neighbouring samples resemble each other; a wide guess, no source' },
  'log variance of width': { value: 0.12, unit: 'ln²', low: 0.04, high: 0.36, why: 'prior for the width of a narrow vein before any measure; a wide guess, no source' },
  'log variance of heap grade': { value: 0.5, unit: 'ln²', low: 0.2, high: 1.2, why: 'prior for how grade varies within a heap that was turned over in handling; a wide guess, no source' },
  'loose density': { value: 1.6, unit: 't/m3', low: 1.4, high: 1.8, why: 'broken quartz and schist with 60 to 70 % more room than in place; common practice, no source' },
  'heap volume error': { value: 0.2, unit: 'relative', why: 'a heap paced and guessed over, one standard deviation; common practice, no source' },
  'gold grain': { value: 0.3, unit: 'mg', low: 0.05, high: 2, why: 'mass of the grain that carries most of the gold, until pans tell; a wide guess, no source' },
  'pan recovery': { value: 0.85, unit: 'of the gold', low: 0.7, high: 0.95, why: 'until seeded pans tell; no published table of pan recovery was found' },
  'assay precision': { value: 0.06, unit: 'relative', why: 'analytical part only, one standard deviation; common practice, no source' },
  'tonnes broken a person-day': { value: 0.25, unit: 't', low: 0.12, high: 0.5, why: 'hand tools in a narrow slot, until the work log tells; no published table was found' },
  'tonnes mucked and trammed a person-day': { value: 1.2, unit: 't', low: 0.7, high: 2, why: 'barrow and shovel in a low drift, until the work log tells; no published table was found' },
  'tonnes crushed and washed a person-day': { value: 0.35, unit: 't', low: 0.2, high: 0.6, why: 'small crusher and sluice, until the work log tells; no published table was found' },
  'tonnes timbered a person-day': { value: 2, unit: 't', low: 0.8, high: 5, why: 'rock broken or waste driven for each person-day of setting timber; a wide guess, no source' },
  'tonnes cleaned up a person-day': { value: 4, unit: 't', low: 2, high: 8, why: 'rock washed for each person-day of cleaning up concentrate; a wide guess, no source' },
  'metres driven a person-day': { value: 0.12, unit: 'm', low: 0.06, high: 0.25, why: 'small heading by hand tools, until the work log tells; a published hand driller made 5 to 7 ft of hole a shift, which is not yet a heading' },
  'heading width': { value: 1.1, unit: 'm', why: 'of a heading still to be driven; common practice, no source' },
  'heading height': { value: 1.8, unit: 'm', why: 'of a heading still to be driven; common practice, no source' },
  'shifts a week': { value: 5, unit: 'a week', why: 'until an option says otherwise' },
  season: { value: 20, unit: 'weeks', why: 'weeks in which the ground can be reached; the crew sets it' },
  royalty: { value: 0, unit: 'of what the refiner pays', why: 'none unless the ground is another\'s' },
  'weeks until paid': { value: 3, unit: 'weeks', why: 'from sending a lot to the refiner\'s money; common practice, no source' },
  'discount rate': { value: 10, unit: '% a year', why: 'what money put elsewhere would bring; the crew sets it' },
  'safe rate': { value: 4, unit: '% a year', why: 'what money put by brings, for redeeming a price paid; Hoover 1909 reckons with 4 %' },
  'asking price': { value: 0, unit: 'money', why: 'price of the ground, when it is for sale; left out at nought' },
  'rates move together': { value: 0.5, unit: 'correlation', why: 'ground that is slow to break is slow to move and treat; common practice, no source' },
  'assay fee': { value: 40, unit: 'money', why: 'one fire assay, until a cost each assay is written; common practice, no source' },
  'hours a channel': { value: 0.75, unit: 'h', why: 'one person cutting and bagging a channel across a narrow vein; common practice, no source' },
  'hours a pan': { value: 0.75, unit: 'h', why: 'crushing, splitting and panning one sample; common practice, no source' },
  'hours a sweep': { value: 0.3, unit: 'h', why: 'sweeping the walls at one place with a detector, both ways; common practice, no source' },
  'what a sweep tells': { value: 1.5, unit: 'ln', why: 'how far the gold may be from what a detector\'s signal suggests, one standard deviation of the log; a wide guess, no source' },
  'free-milling share': { value: 0.85, unit: 'of the gold', low: 0.6, high: 0.95, why: 'gold that crushing sets free; old mills won 60 to 85 % on plates (from memory). Without a test do not count on more' },
  'coarse gold kept': { value: 0.95, unit: 'of the grains', low: 0.88, high: 0.98, why: 'grains of 1 mg and more over a sluice; common practice, no source' },
  'fine gold kept': { value: 0.8, unit: 'of the grains', low: 0.6, high: 0.9, why: 'grains of 0.05 to 1 mg over a sluice; common practice, no source' },
  'flour gold kept': { value: 0.4, unit: 'of the grains', low: 0.2, high: 0.6, why: 'grains under 0.05 mg over a sluice; common practice, no source' },
  'other work share': { value: 0.3, unit: 'of the working days', low: 0.15, high: 0.5, why: 'timber, scaling, air, tools and travel beside the counted work; common practice, no source' },
  'gold recovery': { value: 0.65, unit: 'of the gold', low: 0.5, high: 0.8, why: 'free-milling quartz over plates or sluice, 60 to 85 % at an old mill (value from memory); a hand plant is put lower' },
  'refiner pays': { value: 0.97, unit: 'of the value', low: 0.93, high: 0.985, why: 'published refiner terms run from 93 % for sweeps to 98.5 % for doré' },
  'slip of the fault': { value: 5, unit: 'm', low: 1, high: 25, why: 'length of the slip before any marker tells it; a wide guess, no source' },
  'grooves off the slip': { value: 5, unit: '°', why: 'grooves show the last movement; how far the whole slip runs from them, one standard deviation; a guess, no source' },
  'sense of slip right': { value: 0.95, unit: 'of the time', why: 'how far steps and drag read on a fault are trusted; common practice, no source' },
  'grade expected': { value: 10, unit: 'g/t', low: 3, high: 30, why: 'before any bag was panned or assayed; a wide guess, no source' },
  'largest gold grain': { value: 0.8, unit: 'mm', low: 0.3, high: 2, why: 'before any gold was seen; a wide guess, no source' },
  'coarsest piece': { value: 50, unit: 'mm', low: 25, high: 100, why: 'quartz as hammer and chisel bring it off; common practice, no source' },
  'sampling precision wanted': { value: 0.3, unit: 'of the grade', why: 'one standard deviation from taking and splitting; the crew sets it' },
  'friction of headings': { value: 0.014, unit: 'kg/m3', low: 0.009, high: 0.02, why: 'Atkinson\'s k of a small hand-driven heading with uneven sides; a handbook value from memory, measured ones of larger drifts run 0.005 to 0.013' },
  'joint trace': { value: 3, unit: 'm', low: 1, high: 6, why: 'longest trace that a joint makes on the back, until they are taped; common practice, no source' },
  'mixing in a dead end': { value: 5, unit: 'times the least time', low: 3, high: 10, why: 'air in a dead end mixes badly; industrial hygiene takes 3 to 10, from memory' },
  'wage to beat': { value: 150, unit: 'a day', why: 'what a day elsewhere pays; the crew sets it' },
  'barrow load': { value: 0.065, unit: 'm3', low: 0.055, high: 0.085, why: 'heaped; textbooks give 2 or 3 cubic feet for a small barrow' },
  'bucket load': { value: 0.012, unit: 'm3', low: 0.01, high: 0.015, why: 'one builder\'s bucket; common practice, no source' },
  'sled load': { value: 0.06, unit: 'm3', low: 0.04, high: 0.08, why: 'a dragged tub; common practice, no source' },
  'push of a person': { value: 220, unit: 'N', low: 150, high: 300, why: 'steady push kept up over a shift; common practice, no source' },
  'drag of a barrow': { value: 0.08, unit: 'of the weight', low: 0.05, high: 0.12, why: 'one wheel on planks or firm earth; common practice, no source' },
  'drag of a sled': { value: 0.35, unit: 'of the weight', low: 0.25, high: 0.5, why: 'runners on wet earth; common practice, no source' },
  'most on a barrow': { value: 100, unit: 'kg', why: 'what one person lifts by the handles and steadies again and again; common practice, no source' },
  'most in a bucket': { value: 20, unit: 'kg', why: 'carried again and again in one hand; common practice, no source' },
  'ground loosened an hour': { value: 0.4, unit: 'm3', low: 0.2, high: 0.7, why: 'in place, one person with pick and bar; task rates from memory give 2 to 5 m3 a day from very hard to soft' },
  'muck shovelled an hour': { value: 1, unit: 'm3', low: 0.6, high: 1.5, why: 'loose; textbooks give 1.15 to 1.5 m3 of loosened earth into a wagon (1908); rock and bad footing are slower' },
  'walking with a load': { value: 0.8, unit: 'm/s', low: 0.6, high: 1, why: 'on the level over rough ground; common practice, no source' },
  'slowed by grade': { value: 5, unit: 'times the grade', why: 'a loaded way at 1 in 10 takes half as long again; common practice, no source' },
  'rest and small delays': { value: 0.25, unit: 'of the time', low: 0.15, high: 0.4, why: 'about the 27 % that was allowed in shovel work (1911, from memory)' },
  'hours of digging a day': { value: 5, unit: 'h', low: 4, high: 6.5, why: 'what is left of a day for digging beside travel, tools, timber and looking at the ground; common practice, no source' },
  'volume from sections': { value: 0.12, unit: 'relative', why: 'ground between taped sections, one standard deviation; common practice, no source' },
  'volume by eye': { value: 0.35, unit: 'relative', why: 'volume judged by eye, one standard deviation; common practice, no source' },
  'steepest barrow way': { value: 4.8, unit: '°', why: '1 in 12 on planks; from memory, no source found' },
  'head room to walk': { value: 1.7, unit: 'm', why: 'a helmet under the back; the crew sets it' },
  'width for a barrow': { value: 0.8, unit: 'm', why: 'handles and knuckles; the crew sets it' },
  'outside air': { value: 20, unit: '°C', low: 5, high: 30, why: 'a summer day; the crew sets it' },
  'brow taper': { value: 0.3, unit: 'rise over run', why: 'how a raised back falls to meet the old one; common practice, no source' },
  'fall of the sill': { value: 0.01, unit: 'rise over run', why: '1 in 100 drains and lets a loaded barrow run out; common practice, no source' },
  'swell of wall rock': { value: 65, unit: '%', low: 55, high: 72, why: 'published 61 to 72 % for sandstone, limestone, basalt and granite' },
  'set spacing': { value: 1.2, unit: 'm', why: 'three-piece sets in a small drift; common practice, no source' },
  'lagging board': { value: 0.15, unit: 'm', why: 'breadth of one board; common practice, no source' },
  'bad ground reaches': { value: 1.5, unit: 'm', why: 'each way from where it was noted; common practice, no source' },
  'hours in a day': { value: 8, unit: 'h', why: 'one person-day' },
} as const satisfies Readonly<Record<string, Standing>>

export type AssumptionName = keyof typeof standing

export interface AssumedFigure extends Assumed { readonly value: number, readonly low: number, readonly high: number }

/** The figure in force: the crew's own entry of that name, or ours. */
export type Assume = (name: AssumptionName) => AssumedFigure

/** Looks figures up among the book's assumption entries first. The latest entry of a name counts. */
export function assumer(entries: readonly Entry[]): Assume {
  const own = new Map(entries.map(entry => [(textOf(entry, 'name') ?? '').trim().toLowerCase(), entry]))
  return (name) => {
    const given: Standing = standing[name]
    const entry = own.get(name)
    const value = entry && numberOf(entry, 'value')
    if (entry === undefined || value === undefined) {
      return { name, value: given.value, low: given.low ?? given.value, high: given.high ?? given.value, unit: given.unit, why: given.why }
    }
    return {
      name, value, low: numberOf(entry, 'low') ?? value, high: numberOf(entry, 'high') ?? value,
      unit: textOf(entry, 'unit') ?? given.unit, why: textOf(entry, 'why') ?? textOf(entry, 'source') ?? 'the crew\'s own figure', entry: entry.id,
    }
  }
}
