import type { Enu, VeinPoint } from '@lodebook/reckon'
import type { Random } from '../random.ts'
import { drive, type Drive } from './drive.ts'
import { makePath, type Path } from './path.ts'
import { stated } from './stated.ts'
import type { Vein } from './vein.ts'
import { add, azimuthOf, between, direction, length, minus, rightOf, times } from './vectors.ts'
import type { Leg, Station, Working } from './working.ts'

export interface Workings {
  readonly stations: ReadonlyMap<string, Station>
  readonly workings: readonly Working[]
  readonly legs: readonly Leg[]
  /** The old stope on the vein, corners in order, and the stations sighted at its corners. */
  readonly stope: readonly VeinPoint[]
  readonly stopeCorners: readonly string[]
}

/** Where the adit's sill ends, under the vein. */
export const aditEnd: Enu = add(add(stated.portal, times(direction(stated.adit.azimuth), stated.adit.length)), [0, 0, stated.adit.length * stated.adit.grade])
/** The vein crosses the adit's face this high above the sill. */
export const veinOrigin: Enu = add(aditEnd, [0, 0, 0.9])

/** Lays out the old workings about the vein and sets the crew's stations in them. */
export function makeWorkings(rng: Random, vein: Vein): Workings {
  const stations = new Map<string, Station>(), workings: Working[] = [], legs: Leg[] = []
  function open(d: Drive): Working {
    const made = drive(rng, d)
    for (const station of made.stations) stations.set(station.name, station)
    workings.push(made.working)
    const names = made.working.stations
    for (let i = 1; i < names.length; i++) legs.push({ from: names[i - 1]!, to: names[i]!, working: d.name, splay: false })
    return made.working
  }
  const small = { width: 1.15, height: 1.7, step: 2.9 }
  const sillOf = (name: string): Enu => { const s = stations.get(name)!; return add(s.point, [0, 0, -(s.offsets?.down ?? 0)]) }

  const adit = open({ name: 'Adit', sort: 'adit', letter: 'A', path: aditPath(rng), width: 1.4, height: 1.8, step: 3 })
  const face = adit.stations.at(-1)!
  const left = open({ name: 'Left drift', sort: 'drift', letter: 'L', first: face, vein, path: alongVein(rng, vein, 0, stated.leftDrift, aditEnd[2], 1.7), ...small })
  const right = open({ name: 'Right drift', sort: 'drift', letter: 'R', first: face, vein, path: alongVein(rng, vein, 0, stated.rightDrift, aditEnd[2], 1.7), ...small })

  const start = nearest(adit, 44), end = nearest(left, 24)
  const cross = [sillOf(start), between(sillOf(start), sillOf(end), 0.35), between(sillOf(start), sillOf(end), 0.7), sillOf(end)] as const
  const bent = cross.map((p, i) => i === 1 || i === 2 ? add(p, times(rightOf(azimuthOf(minus(cross[3], cross[0]))), rng.uniform(0.4, 1.2))) : p)
  open({ name: 'Left crosscut', sort: 'crosscut', letter: 'C', first: start, last: end, path: makePath(bent), ...small })

  const levelUp = aditEnd[2] + stated.sublevel.height
  const foot = (along: number) => nearest(left, -along)
  const raise = (name: string, letter: string, along: number) => open({ name, sort: 'raise', letter, first: foot(along), width: 1.2, height: 0.9, step: 3,
    path: upVein(vein, stations.get(foot(along))!.point, along, levelUp + 0.5) })
  const first = raise('First raise', 'U', stated.raises.first), second = raise('Second raise', 'V', stated.raises.second)
  const topFirst = first.stations.at(-1)!, topSecond = second.stations.at(-1)!
  open({ name: 'Sublevel', sort: 'drift', letter: 'B', first: topSecond, last: topFirst, vein, width: 1, height: 1.4, step: 2.7,
    path: alongVein(rng, vein, stated.raises.second, stated.raises.first, levelUp, 1.4) })
  open({ name: 'Sublevel, right end', sort: 'drift', letter: 'D', first: topFirst, vein, width: 1, height: 1.4, step: 2.7,
    path: alongVein(rng, vein, stated.raises.first, stated.sublevel.to, levelUp, 1.4) })
  open({ name: 'Winze', sort: 'winze', letter: 'W', first: foot(stated.winze.along), width: 1.1, height: 0.9, step: 1.8, path: downVein(vein, stations.get(foot(stated.winze.along))!.point) })

  const lost = nearest(right, 33)
  open({ name: 'Blind crosscut', sort: 'crosscut', letter: 'X', first: lost, ...small, step: 2.1,
    path: makePath([sillOf(lost), add(sillOf(lost), times(direction(stated.vein.strike - 90), 4.3))]) })
  open({ name: 'Hill', sort: 'surface', letter: 'S', first: 'A0', width: 0, height: 0, step: 8.6, path: hillPath(rng, vein) })

  const stope = stopeOutline(rng)
  const lookouts = [...first.stations, ...second.stations].filter(name => /^[UV]/.test(name))
  const stopeCorners = stope.map((corner, i) => {
    const name = `G${i + 1}`, point = vein.at(corner)
    const from = lookouts.reduce((a, b) => length(minus(stations.get(a)!.point, point)) < length(minus(stations.get(b)!.point, point)) ? a : b)
    stations.set(name, { name, point })
    legs.push({ from, to: name, working: 'Old stope', splay: true })
    return name
  })
  return { stations, workings, legs, stope, stopeCorners }
}

/** The station of a working nearest to so many metres from its start. */
function nearest(working: Working, distance: number): string {
  let best = 0
  working.chainage.forEach((mark, i) => { if (Math.abs(mark - distance) < Math.abs(working.chainage[best]! - distance)) best = i })
  return working.stations[best]!
}

function aditPath(rng: Random): Path {
  const aside = rightOf(stated.adit.azimuth)
  return makePath([0, 0.17, 0.38, 0.55, 0.74, 0.9, 1].map((share, i, all) => {
    const straight = between(stated.portal, aditEnd, share)
    return i === 0 || i === all.length - 1 ? straight : add(straight, times(aside, rng.uniform(-0.9, 0.9)))
  }))
}

/** The sill of a drift that keeps the vein near the middle of its back, wandering as men do who follow a vein. */
function alongVein(rng: Random, vein: Vein, from: number, to: number, sill: number, height: number): Path {
  const phase = rng.uniform(0, 2 * Math.PI), steps = Math.max(2, Math.round(Math.abs(to - from)))
  return makePath(Array.from({ length: steps + 1 }, (_, i) => {
    const along = from + (to - from) * i / steps, up = sill + 0.006 * Math.abs(along - from)
    const back = vein.unfaulted(vein.atLevel(along, up + height))
    const wander = 0.14 * Math.sin(0.45 * along + phase) + 0.08 * Math.sin(1.3 * along + 2 * phase)
    return add([back[0], back[1], up], times(direction(vein.strike + 90), wander))
  }))
}

/** A raise in the vein: out of the drift's back towards its own line, then straight up the dip. */
function upVein(vein: Vein, foot: Enu, along: number, top: number): Path {
  const from = vein.toVein(foot), start = from.down - 0.9, end = vein.atLevel(along, top).down
  return makePath([foot, ...Array.from({ length: 9 }, (_, i) => vein.at({ along, down: start + (end - start) * i / 8 }))])
}

function downVein(vein: Vein, above: Enu): Path {
  const { along } = vein.toVein(above), lip = vein.atLevel(along, aditEnd[2] + 0.1)
  return makePath([above, ...[0.3, 1, 2, stated.winze.depth].map(depth => vein.at({ along, down: lip.down + depth }))])
}

/** Up the hill from the portal to a trench on the vein's outcrop and a post beyond it. */
function hillPath(rng: Random, vein: Vein): Path {
  const trench = vein.at({ along: 8, down: -32 }), post = add(trench, [rng.uniform(8, 12), rng.uniform(9, 14), 2.5])
  const bend = add(between(stated.portal, trench, 0.45), [rng.uniform(6, 10), rng.uniform(4, 8), 1])
  return makePath([stated.portal, bend, trench, post])
}

/** The old stope between the raises, above a pillar over the drift. */
function stopeOutline(rng: Random): VeinPoint[] {
  const corners: readonly VeinPoint[] = [
    { along: -37.8, down: -2.8 }, { along: -33, down: -2.4 }, { along: -28, down: -2.9 }, { along: -27.3, down: -6.5 },
    { along: -29, down: -9 }, { along: -33.5, down: -9.6 }, { along: -37, down: -8.2 },
  ]
  return corners.map(p => ({ along: p.along + rng.uniform(-0.4, 0.4), down: p.down + rng.uniform(-0.35, 0.35) }))
}
