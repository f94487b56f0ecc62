import type { Entry } from '@lodebook/book'
import { quantityOf, textOf } from '../read.ts'
import type { WidthAt } from '../shapes.ts'
import { entryTitle } from '../entry-title.ts'
import { figure } from '../words.ts'
import { median, robustSd } from './second-look.ts'
import type { SecondLook } from './second-look.ts'

/** Ratios that a slip of the unit makes: feet written for metres and the other way, inches for centimetres. */
const slips = [
  { ratio: 1 / 0.3048, says: 'metres written where feet were meant' }, { ratio: 0.3048, says: 'feet written where metres were meant' },
  { ratio: 2.54, says: 'inches written where centimetres were meant' }, { ratio: 1 / 2.54, says: 'centimetres written where inches were meant' },
]
const neighbours = 8
/** Departures this many standard deviations off are named. With a few hundred widths about one honest one in ten books would be. */
const limit = 4

/** Logs of neighbouring true widths differ at least so much on any vein: 10 %. Common practice, no source. */
const leastSpread = 0.1

/** Widths that no neighbour resembles: a slip of the unit, or a tape laid down the dip instead of across. */
export function oddWidths(widths: readonly WidthAt[], entries: ReadonlyMap<string, Entry>): readonly SecondLook[] {
  if (widths.length < neighbours + 1) return []
  const logs = widths.map(w => Math.log(w.width))
  const apart = widths.map((w, i) => {
    const near = widths.map((other, j) => ({ j, away: Math.hypot(other.at.along - w.at.along, other.at.down - w.at.down) }))
      .filter(({ j }) => j !== i).sort((a, b) => a.away - b.away).slice(0, neighbours)
    return logs[i]! - median(near.map(({ j }) => logs[j]!))
  })
  // Tapes read to the inch on a vein that seems even: less than this apart is no finding, however alike the neighbours are.
  const usual = Math.max(robustSd(apart), leastSpread)
  return widths.flatMap((w, i): SecondLook[] => {
    const times = Math.abs(apart[i]!) / usual
    const entry = entries.get(w.entry)
    if (!(times > limit) || !entry) return []
    const ratio = Math.exp(apart[i]!)
    const slip = slips.find(s => Math.abs(Math.log(ratio / s.ratio)) < 2 * usual)
    const field = entry.kind === 'width' ? 'measured' : 'width'
    const may = [...(slip ? [slip.says] : []), ...(ratio > 1.5 ? ['a tape laid down the dip and not across'] : [])].join(', or ')
    return [{
      sort: 'width', entries: [w.entry], times,
      sentence: `${entryTitle(entry)}: ${quantityOf(entry, field)!.text} makes ${figure(w.width, 2)} m true width, ${figure(ratio, 2)} times what its neighbours have${may ? `; perhaps ${may}` : ''}.`,
      todo: 'Tape it again, square to the vein, and correct the entry.',
    }]
  }).sort((a, b) => b.times - a.times)
}

/** Widths taped down the dip: the tape lay in the vein and measured no width of it. They are left out of every mean until taped again. */
export const widthsInTheVein = (entries: readonly Entry[]): readonly SecondLook[] => entries.filter(e => textOf(e, 'direction') === 'down the dip').map(entry => ({
  sort: 'width', entries: [entry.id], times: Infinity,
  sentence: `${entryTitle(entry)} was taped down the dip: the tape lay in the vein, so it says nothing of its width and is not counted.`,
  todo: 'Tape it again, square to the vein, and correct the entry.',
}))
