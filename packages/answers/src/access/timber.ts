import type { Entry } from '@lodebook/book'
import type { Enu } from '@lodebook/reckon'
import { timberCount } from '@lodebook/reckon/earthwork'
import type { NotEnough } from '../answer.ts'
import type { Assume } from '../assumptions.ts'
import { buildAnswer } from '../build-answer.ts'
import { wordsOf } from '../read.ts'
import type { HeadingShape } from '../shapes.ts'
import { figure, length, plural } from '../words.ts'
import type { CrewUnits } from '../words.ts'
import type { Timber, Way } from './shapes.ts'

const wantsTimber = ['drummy', 'fresh fall', 'open joint', 'loose slab', 'rotten timber', 'crushed timber', 'no timber']
const cautions = ['Timber carries only what it is blocked tight against, and none of it while it is being set. Let someone who has set timber show you; never take out an old set before the new one carries.']

interface Noted { readonly entry: Entry, readonly point: Enu }

/** Sets and lagging for the stretches where the ground notes say that the ground wants them, from the sections taped there. */
export function timberOf(notes: readonly Noted[], ways: readonly Way[], shapes: readonly HeadingShape[], assume: Assume, units: CrewUnits): Timber | NotEnough {
  const [reach, spacing, board] = [assume('bad ground reaches'), assume('set spacing'), assume('lagging board')]
  const bad = notes.flatMap(({ entry, point }) => {
    const found = wordsOf(entry, 'found').filter(word => wantsTimber.includes(word))
    const spot = found.length === 0 ? undefined : nearestOn(point, ways, shapes)
    return spot ? [{ entry, found, ...spot }] : []
  })
  if (bad.length === 0) return { notEnough: true, sentence: 'No ground note along a walked heading asks for timber yet.', wanted: [{ kind: 'ground', why: 'where the back is drummy, slabs hang or old timber is rotten' }], cautions }
  const places = ways.flatMap((way) => {
    const own = bad.filter(b => b.way === way).sort((a, b) => a.at - b.at), last = way.stations.at(-1)!.at
    const stretches: { from: number, to: number, found: string[], entries: string[] }[] = []
    for (const one of own) {
      const [from, to] = [Math.max(0, one.at - reach.value), Math.min(last, one.at + reach.value)], before = stretches.at(-1)
      if (before && from <= before.to) {
        before.to = Math.max(before.to, to)
        before.found.push(...one.found)
        before.entries.push(one.entry.id)
      } else stretches.push({ from, to, found: [...one.found], entries: [one.entry.id] })
    }
    return stretches.map((s) => {
      const inside = way.stations.filter(w => w.at >= s.from - reach.value && w.at <= s.to + reach.value), section = inside.length > 0 ? inside : way.stations
      const clear = { width: Math.max(...section.map(w => w.width), 0.3), height: Math.max(...section.map(w => w.back - w.sill), 0.3) }
      return { ...s, heading: way.heading, clear, count: timberCount(s.to - s.from, spacing.value, clear, board.value) }
    })
  })
  const sum = (of: (p: typeof places[number]) => number) => places.reduce((total, p) => total + of(p), 0)
  const method = {
    name: 'three-piece sets with close lagging', page: 'timber',
    working: places.map(p => `${p.heading} ${length(p.from, units, 2)} to ${length(p.to, units, 2)} in, ${length(p.clear.width, units, 2)} by ${length(p.clear.height, units, 2)}: ${p.count.sets} sets, ${p.count.lagging} boards`),
  }
  const rest = { from: [...new Set(places.flatMap(p => p.entries))], assumed: [reach, spacing, board], method }
  const [sets, lagging, round] = [sum(p => p.count.sets), sum(p => p.count.lagging), sum(p => p.count.roundLength)]
  return {
    sentence: `Where the ground notes ask for it, ${plural(sets, 'set')} and ${plural(lagging, 'lagging board')} over ${length(sum(p => p.to - p.from), units, 2)} in ${plural(places.length, 'place')}.`,
    sets: buildAnswer({ id: 'access.timber.sets', value: sets, unit: 'sets', sentence: `${plural(sets, 'set')}: ${sets} caps, ${2 * sets} posts, ${sum(p => p.count.collars)} collars, ${2 * sets} foot blocks, ${4 * sets} wedges.`, ...rest }),
    lagging: buildAnswer({ id: 'access.timber.lagging', value: lagging, unit: 'boards', sentence: `${plural(lagging, 'board')} of ${length(board.value, units, 2)}, ${length(sum(p => p.count.boardLength), units, 3)} in all.`, ...rest }),
    round: buildAnswer({ id: 'access.timber.round', value: round, unit: 'm', sentence: `${length(round, units, 3)} of round timber in caps, posts and collars.`, ...rest }),
    places: places.map(p => ({ heading: p.heading, from: p.from, to: p.to, says: `${[...new Set(p.found)].join(', ')}: ${p.count.sets} sets, ${p.count.lagging} boards (${figure(p.count.roundLength, 2)})`.replace(/ \([^)]*\)$/, '') })),
  }
}

/** Notes further from every walked heading than this belong to something else, m. */
const beside = 2.5

function nearestOn(point: Enu, ways: readonly Way[], shapes: readonly HeadingShape[]): { readonly way: Way, readonly at: number } | undefined {
  const all = ways.flatMap((way) => {
    const shape = shapes.find(s => s.entry === way.entry)
    if (!shape) return []
    let at = 0
    return shape.sill.slice(1).map((b, i) => {
      const a = shape.sill[i]!, [e, n] = [b[0] - a[0], b[1] - a[1]], run = Math.hypot(e, n), start = at
      at += run
      const t = run > 0 ? Math.min(1, Math.max(0, ((point[0] - a[0]) * e + (point[1] - a[1]) * n) / run ** 2)) : 0
      return { way, at: start + t * run, off: Math.hypot(point[0] - a[0] - t * e, point[1] - a[1] - t * n) }
    })
  }).sort((a, b) => a.off - b.off)[0]
  return all && all.off <= beside ? all : undefined
}
