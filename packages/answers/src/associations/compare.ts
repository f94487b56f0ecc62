import { DegenerateError } from '@lodebook/reckon'
import { groupShift, rankCorrelation } from '@lodebook/reckon/statistics'
import type { GroupShift, WithinLimits } from '@lodebook/reckon/statistics'
import { buildAnswer } from '../build-answer.ts'
import { figure } from '../words.ts'
import type { Association } from './shapes.ts'

/** ln of a bag's grade, known or only below a limit, and the entry it stands in. */
export interface GoldOf { readonly entry: string, readonly gold: WithinLimits }

/** A question with what came out, before it is known how many were asked. */
export interface Asked {
  readonly name: string
  readonly asks: string
  readonly one: string
  readonly other: string
  readonly shift: GroupShift | undefined
  readonly tau?: number
  readonly p: number | undefined
  readonly with: readonly GoldOf[]
  readonly without: readonly GoldOf[]
}

/** Fewer bags than this on either side say nothing. */
export const fewestEach = 5
const confidence = 0.8
/** A yes among all that was asked is told below this chance. */
const level = 0.1
/** A range of the ratio this wide leaves a real difference open: factor. */
const tooWide = 5

const shiftOf = (x: readonly GoldOf[], y: readonly GoldOf[]): GroupShift | undefined => {
  if (x.length < fewestEach || y.length < fewestEach) return undefined
  try { return groupShift(x.map(b => b.gold), y.map(b => b.gold), confidence) } catch (error) {
    if (error instanceof DegenerateError) return undefined
    throw error
  }
}

/** Bags in which something is seen against those in which it is not. */
export function comparePresent(name: string, withIt: readonly GoldOf[], without: readonly GoldOf[]): Asked {
  const shift = shiftOf(withIt, without)
  return { name, asks: `${name} against the rest`, one: `bags with ${name}`, other: 'the rest', shift, p: shift?.p, with: withIt, without }
}

/** Bags ranked by something measured: whether gold rises with it, and the upper half against the lower. */
export function compareMeasured<B extends GoldOf>(
  name: string, more: string, less: string, bags: readonly B[], of: (bag: B) => number | undefined, text: (value: number) => string,
): Asked {
  const measured = bags.flatMap((bag) => { const value = of(bag); return value === undefined ? [] : [{ bag, value }] }).sort((a, b) => a.value - b.value)
  const middle = measured[Math.floor(measured.length / 2)]?.value ?? 0
  const above = measured.filter(m => m.value >= middle && m.value > measured[0]!.value), below = measured.filter(m => !above.includes(m))
  const shift = shiftOf(above.map(m => m.bag), below.map(m => m.bag))
  const said = { name, asks: `${more} against ${less}, parted at ${text(middle)}`, one: `bags ${more}`, other: `those ${less}`, with: above.map(m => m.bag), without: below.map(m => m.bag) }
  if (measured.length < 2 * fewestEach || !shift) return { ...said, shift: undefined, p: undefined }
  try {
    const { tau, p } = rankCorrelation(measured.map(({ value }): WithinLimits => [value, value]), measured.map(m => m.bag.gold), confidence)
    return { ...said, shift, tau, p }
  } catch (error) {
    if (error instanceof DegenerateError) return { ...said, shift: undefined, p: undefined }
    throw error
  }
}

/** What a question comes to, once it is known how many were asked together. */
export function told(asked: Asked, raised: number | undefined, questions: number): Association {
  const { name, asks, one, other, shift, tau, p } = asked, low = shift ? Math.exp(shift.low) : 0, high = shift ? Math.exp(shift.high) : Infinity
  const counts = `${asked.with.length} bags against ${asked.without.length}`
  const range = `8 in 10: ${low === 0 ? 'any' : figure(low, 2)} to ${Number.isFinite(high) ? figure(high, 2) : 'any'} times`
  const stands = raised !== undefined && raised < level, up = tau === undefined ? (shift?.shift ?? 0) > 0 : tau > 0
  const says = !shift || raised === undefined ? 'not enough to say' : stands ? up ? 'more gold' : 'less gold' : high / low > tooWide ? 'not enough to say' : 'no difference told'
  const ratio = shift?.shift === undefined ? undefined : Math.exp(shift.shift)
  const chance = p === undefined || raised === undefined ? '' : `; by chance ${figure(p, 2)}, ${figure(raised, 2)} with all ${questions} questions counted`
  const head = capital(one)
  const sentence = says === 'not enough to say'
    ? `${capital(name)}: not enough to say (${counts}${shift ? `; ${range}` : `; ${fewestEach} on each side are the least`}).`
    : says === 'no difference told' ? `${head} ${low > 1 || high < 1 ? `lean to ${low > 1 ? 'more' : 'less'} gold than ${other}, which with all ${questions} questions counted may be chance` : `run about as much gold as ${other}`} (${range}; ${counts}).`
      : `${head} run ${ratio === undefined ? (up ? 'more' : 'less') : `${figure(ratio, 2)} times as much`} gold ${ratio === undefined ? 'than' : 'as'} ${other} (${range}; ${counts}${chance}).`
  return {
    name, asks, says, sentence, low, high, p, raised, withIt: asked.with.length, without: asked.without.length, ...tau === undefined ? {} : { tau },
    ratio: ratio === undefined ? undefined : buildAnswer({
      id: `associations.${name.replaceAll(' ', '-')}`, value: ratio, unit: 'times', sentence,
      range: { low, high: Number.isFinite(high) ? high : Number.MAX_VALUE, confidence, because: ['how few bags there are on each side', 'how erratic coarse gold is from bag to bag'] },
      method: {
        name: 'Hodges-Lehmann shift of ln grade, rank tests, Holm', page: 'associations',
        working: [`ln ratio ${figure(shift!.shift!, 3)}, from ${figure(shift!.low, 3)} to ${figure(shift!.high, 3)}`, ...tau === undefined ? [] : [`Kendall's tau ${figure(tau, 2)}`], ...chance === '' ? [] : [chance.slice(2)]],
      },
      from: [...asked.with, ...asked.without].map(b => b.entry),
    }),
  }
}

const capital = (text: string): string => text.replace(/^./, c => c.toUpperCase())
