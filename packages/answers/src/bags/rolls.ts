import type { Entry } from '@lodebook/book'
import { numberOf, textOf } from '../read.ts'
import { bagKey, bagNumber, labelText } from './bag-number.ts'
import type { RollUse } from './shapes.ts'

interface Run { readonly entry: string, readonly prefix: string, readonly first: number, readonly last: number, readonly digits: number }

/** What a label-roll entry stands for. */
export function rollOf(entry: Entry): Run {
  const [first, last] = [numberOf(entry, 'first')!, numberOf(entry, 'last')!]
  return { entry: entry.id, prefix: textOf(entry, 'prefix')!, first, last, digits: numberOf(entry, 'digits') ?? Math.max(3, String(last).length) }
}

/** Every number on a roll, in order. */
export const labelsOn = (entry: Entry): readonly string[] => {
  const { prefix, first, last, digits } = rollOf(entry)
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => labelText(prefix, first + i, digits))
}

/** A run of numbers that no roll explains is looked at only when it holds so many bags, so that odd names make no run. */
const fewestInRun = 5

/**
 * How far each roll is used, and which numbers were passed over. Numbers of bags that lie on no roll make a run of their own from the lowest to
 * the highest used.
 * @param bags  every number that a sample or a split carries
 */
export function rollUses(rolls: readonly Entry[], bags: readonly string[]): readonly RollUse[] {
  const used = new Set(bags.map(bagKey)), numbers = bags.flatMap((bag) => { const n = bagNumber(bag); return n ? [n] : [] })
  const known = rolls.map(rollOf)
  const onRoll = (n: typeof numbers[number]) => known.some(r => bagKey(r.prefix) === bagKey(n.prefix) && n.number >= r.first && n.number <= r.last)
  const loose = new Map<string, (typeof numbers[number])[]>()
  for (const n of numbers) if (!onRoll(n)) loose.set(`${bagKey(n.prefix)} ${n.digits}`, [...loose.get(`${bagKey(n.prefix)} ${n.digits}`) ?? [], n])
  const runs = [...loose.values()].filter(list => list.length >= fewestInRun).map((list): Run => ({
    entry: '', prefix: list[0]!.prefix, first: Math.min(...list.map(n => n.number)), last: Math.max(...list.map(n => n.number)), digits: list[0]!.digits,
  }))
  return [...known, ...runs].map(run => useOf(run, used))
}

function useOf({ entry, prefix, first, last, digits }: Run, used: ReadonlySet<string>): RollUse {
  const all = Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => labelText(prefix, first + i, digits))
  const isUsed = all.map(label => used.has(bagKey(label))), furthest = isUsed.lastIndexOf(true)
  return {
    entry, prefix, first: labelText(prefix, first, digits), last: labelText(prefix, last, digits), name: `${labelText(prefix, first, digits)} to ${labelText(prefix, last, digits)}`,
    used: isUsed.filter(Boolean).length, skipped: all.slice(0, furthest + 1).filter((_, i) => !isUsed[i]), next: entry === '' ? '' : all[furthest + 1] ?? '', left: entry === '' ? 0 : all.length - furthest - 1,
  }
}
