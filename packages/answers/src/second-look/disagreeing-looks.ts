import type { Look } from '../lab/looks.ts'
import { figure } from '../words.ts'
import type { SecondLook } from './second-look.ts'

/** Pan and assay of one bag may part by chance; beyond this many standard deviations they are named. */
const limit = 3.5

/** ln grade of a look with its own standard deviation: grain count and other errors. Nothing found stands at one grain. */
function reading({ look }: Look): { log: number, sd: number } | undefined {
  const found = 'grade' in look.found ? look.found.grade : 'below' in look.found ? look.found.below : undefined
  if (found === undefined) return undefined
  const grains = Math.max(1, found * look.mass / (1000 * look.grain))
  const grade = grains * 1000 * look.grain / look.mass / look.recovery
  return { log: Math.log(grade), sd: Math.sqrt(1 / grains + look.relativeSd ** 2) }
}

const between = (a: Look, b: Look): number => {
  const [x, y] = [reading(a), reading(b)]
  // The doubt of a count is its expected one: the lower reading borrows the mean of the two.
  return x && y ? (x.log - y.log) / Math.hypot(Math.max(x.sd, y.sd), Math.min(x.sd, y.sd)) : 0
}

/**
 * Bags whose pans and assays can hardly be of one rock, and the pair of them that would agree if their assays changed places.
 * With gold as coarse as this many swaps can't be seen at all; finding none proves nothing.
 */
export function disagreeingLooks(bags: ReadonlyMap<string, readonly Look[]>): readonly SecondLook[] {
  const pairs = [...bags].flatMap(([bag, looks]) => {
    const pan = looks.find(l => l.entry.kind === 'pan'), assay = looks.find(l => l.entry.kind === 'assay')
    return pan && assay ? [{ bag, pan, assay, times: between(pan, assay) }] : []
  })
  const odd = pairs.filter(p => Math.abs(p.times) > limit)
  return odd.map((one): SecondLook => {
    const partner = pairs.filter(p => p !== one && Math.sign(p.times) !== Math.sign(one.times))
      .map(p => ({ p, gain: one.times ** 2 + p.times ** 2 - between(one.pan, p.assay) ** 2 - between(p.pan, one.assay) ** 2 }))
      .filter(({ gain }) => gain > limit ** 2 / 2).sort((a, b) => b.gain - a.gain)[0]?.p
    return {
      sort: 'bags', times: Math.abs(one.times), entries: [one.assay.entry.id, one.pan.entry.id, ...(partner ? [partner.assay.entry.id, partner.pan.entry.id] : [])],
      sentence: `Bag ${one.bag}: ${one.pan.says}, but ${one.assay.says}; that is ${figure(Math.abs(one.times), 2)} standard deviations apart${partner ? `. With bag ${partner.bag}'s assay in its place both would agree: they may have been changed over` : ''}.`,
      todo: 'See the bags\' way on paper, and have both assayed again from what was kept.',
    }
  }).sort((a, b) => b.times - a.times)
}
